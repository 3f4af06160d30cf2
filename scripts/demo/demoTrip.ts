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

/** The trip file, with a forecast row for every hour. */
export function tripFileOf({ facts, forecast }: DemoTrip): Partial<TripFile> {
  const rows: ForecastRow[] = forecast.days.flatMap(({ localDate, rows: text, issuedAt }) =>
    forecastRows(localDate, text).map((row) => (issuedAt === undefined ? row : { ...row, issuedAt })),
  );
  const { source, issuedAt, units } = forecast;
  return { ...facts, forecast: { source, issuedAt, units, rows } };
}
