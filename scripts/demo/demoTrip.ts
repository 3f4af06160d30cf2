import type { ForecastFile, ForecastRow, TripFile } from "../content/schema/tripSchema.ts";
import { forecastRows } from "./forecastRows.ts";

/** One trip; its forecast days are written "05 NW 3 g6 .1 30; 09 ...": hour, wind from, mean, gust, cloud share, temperature. */
export interface DemoTrip {
  id: string;
  facts: Partial<TripFile>;
  forecast: { source: string; issuedAt: string; units: ForecastFile["units"]; days: DemoForecastDay[] };
}

export interface DemoForecastDay {
  localDate: string;
  rows: string;
  /** when this day's rows were issued; the forecast's own instant when absent */
  issuedAt?: string;
}

/**
 * The owner's sits in short form: each line a day and a session, then "hunter site walk-in" with commas between. A choice that
 * a check will stop is written like any other.
 */
export function demoSits(lines: readonly string[]): TripFile["sits"] {
  return lines.flatMap((line) => {
    const [localDate = "", session = "", ...rest] = line.split(" ");
    return rest
      .join(" ")
      .split(", ")
      .map((text) => {
        const [hunter = "", site = "", walkIn = ""] = text.split(" ");
        return { localDate, session, hunter, site, walkIn };
      });
  });
}

/** The trip file, with a forecast row for every hour. */
export function tripFileOf({ facts, forecast }: DemoTrip): Partial<TripFile> {
  const rows: ForecastRow[] = forecast.days.flatMap(({ localDate, rows: text, issuedAt }) =>
    forecastRows(localDate, text).map((row) => (issuedAt === undefined ? row : { ...row, issuedAt })),
  );
  const { source, issuedAt, units } = forecast;
  return { ...facts, forecast: { source, issuedAt, units, rows } };
}
