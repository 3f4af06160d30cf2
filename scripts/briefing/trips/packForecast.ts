import type { PackTrip } from "../../content/schema/packSchema.ts";
import type { ForecastHour } from "../forecastSeries.ts";
import { packInstant } from "../packInstant.ts";
import { packBearing, packShare, packSpeed, rounded } from "../packNumbers.ts";
import type { SessionForecast } from "./sessionForecast.ts";

type PackForecast = PackTrip["days"][number]["sessions"][number]["forecast"];

/** The forecast of a session as pack.json holds it: the row in force at its start; null without one. */
export function packForecast(
  { first, issuedAt, isOld }: SessionForecast,
  source: string | null,
  timezone: string,
): PackForecast {
  if (first === null || issuedAt === null || source === null) return null;
  const why: Record<string, string> = {};
  if (first.windFromDeg === null) why.windFromDeg = windWhy(first);
  for (const key of ["windSpeedMps", "gustMps", "cloudShare", "tempC"] as const) {
    if (first[key] === null) why[key] = "not in the forecast given";
  }
  return {
    windFromDeg: first.windFromDeg === null ? null : packBearing(first.windFromDeg),
    windSpeedMps: first.windSpeedMps === null ? null : packSpeed(first.windSpeedMps),
    gustMps: first.gustMps === null ? null : packSpeed(first.gustMps),
    cloudShare: first.cloudShare === null ? null : packShare(first.cloudShare),
    tempC: first.tempC === null ? null : rounded(first.tempC, 1),
    source,
    issuedAt: packInstant(issuedAt, timezone),
    old: isOld,
    why,
  };
}

function windWhy({ wind }: ForecastHour): string {
  if (wind === "calm") return "calm";
  return wind === "variable" ? "the wind is variable" : "not in the forecast given";
}
