import type { WeatherRow } from "../air/slopeSite.ts";
import type { TripContent } from "../content/areaContent.ts";
import type { ForecastFile, ForecastRow } from "../content/schema/tripSchema.ts";
import { normalizeDeg } from "../geo/bearings.ts";
import { type CompassPoint, pointBearingDeg } from "../geo/compassPoints.ts";
import { resolveClock } from "../time/civilTime.ts";

/** One row of a forecast in metric units; it holds until the next of its day. Null is not known. */
export interface ForecastHour {
  at: Date;
  localDate: string;
  /** degrees the wind blows from; null when calm, variable or not known */
  windFromDeg: number | null;
  wind: "from" | "calm" | "variable" | "not known";
  windSpeedMps: number | null;
  gustMps: number | null;
  cloudShare: number | null;
  tempC: number | null;
  rainMmPerH: number | null;
  thunder: boolean | null;
  freezingRain: boolean | null;
  issuedAt: Date;
}

const MPS: Record<ForecastFile["units"]["speed"], number> = {
  mps: 1,
  kmh: 1 / 3.6,
  mph: 0.44704,
  kn: 0.514444,
};
const MM_PER_IN = 25.4;

/**
 * The rows of a trip's forecast in order of time, in metric units. Where a row of an hour and a row of a session begin together,
 * the one of the session.
 *
 * @param sessionStart  when the named session of a day begins, for rows that name a session; null when it does not take place
 */
export function forecastHours(
  trip: TripContent,
  timezone: string,
  sessionStart: (localDate: string, session: string) => Date | null,
): ForecastHour[] {
  const forecast = trip.facts.forecast;
  if (forecast === undefined) return [];
  const isOfSession = (row: ForecastRow): boolean => row.session !== undefined;
  const hourFirst = [
    ...forecast.rows.filter((row) => !isOfSession(row)),
    ...forecast.rows.filter((row) => isOfSession(row)),
  ];
  const hours = new Map<number, ForecastHour>();
  for (const row of hourFirst) {
    const at = rowStart(row, timezone, sessionStart);
    if (at !== null) hours.set(at.getTime(), metricRow(row, at, forecast));
  }
  return [...hours.values()].sort((a, b) => a.at.getTime() - b.at.getTime());
}

/** Cloud and temperature of one day for the slope air: rows without a cloud share are left out. Empty when none is known. */
export function weatherOfDay(hours: readonly ForecastHour[], localDate: string): WeatherRow[] {
  return hours
    .filter((hour) => hour.localDate === localDate && hour.cloudShare !== null)
    .map((hour) => ({
      at: hour.at,
      cloudShare: hour.cloudShare ?? 0,
      airTempC: hour.tempC,
      relativeHumidity: null,
    }));
}

function rowStart(
  row: ForecastRow,
  timezone: string,
  sessionStart: (localDate: string, session: string) => Date | null,
): Date | null {
  if (row.session !== undefined) return sessionStart(row.localDate, row.session);
  const clock = resolveClock(row.localDate, row.hour ?? "00:00", timezone);
  if (clock.kind === "one") return clock.at;
  return clock.kind === "repeated" ? clock.first : null;
}

function metricRow(row: ForecastRow, at: Date, forecast: ForecastFile): ForecastHour {
  const speed = MPS[forecast.units.speed];
  const inMps = (value: number | null): number | null => (value === null ? null : value * speed);
  const isCalm = row.windFrom === "calm";
  const windSpeedMps = isCalm ? 0 : inMps(row.windSpeed);
  return {
    at,
    localDate: row.localDate,
    windFromDeg: windFromDeg(row.windFrom),
    wind:
      row.windFrom === null
        ? "not known"
        : row.windFrom === "calm" || row.windFrom === "variable"
          ? row.windFrom
          : "from",
    windSpeedMps,
    gustMps: inMps(row.gust),
    cloudShare: row.cloudShare,
    tempC: row.temp === null ? null : forecast.units.temp === "C" ? row.temp : ((row.temp - 32) * 5) / 9,
    rainMmPerH:
      row.rain === null || row.rain === undefined
        ? null
        : row.rain * (forecast.units.rain === "in" ? MM_PER_IN : 1),
    thunder: row.thunder ?? null,
    freezingRain: row.freezingRain ?? null,
    issuedAt: new Date(row.issuedAt ?? forecast.issuedAt),
  };
}

function windFromDeg(windFrom: ForecastRow["windFrom"]): number | null {
  if (windFrom === null || windFrom === "calm" || windFrom === "variable") return null;
  return typeof windFrom === "number" ? normalizeDeg(windFrom) : pointBearingDeg(windFrom as CompassPoint);
}
