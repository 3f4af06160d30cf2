import { civilAt, clockChangeAt, noonOf, resolveClock } from "../time/civilTime.ts";

/** The clock a written time belongs to: winter time, summer time, or whatever the zone shows that day. */
export type ClockSystem = "standard" | "daylight" | "as-in-force";

export interface ClockReading {
  localDate: string;
  /** "HH:MM" */
  clock: string;
  timezone: string;
  system: ClockSystem;
  /** Which end of a window the time is: on a night of a clock change the reading that makes the window shorter is taken. */
  side: "start" | "end";
}

/**
 * The instant of a clock time that bounds a window. A time that the clock jumps over is the jump itself; of a time that
 * runs twice a start takes the second, an end the first.
 *
 * @returns null when the zone keeps no summer time in that year and the time is written in it
 * @throws {RangeError} when the date, the clock or the zone is none
 */
export function clockInstant(reading: ClockReading): Date | null {
  const { localDate, clock, timezone, system, side } = reading;
  const resolved = resolveClock(localDate, clock, timezone);
  if (system !== "as-in-force") {
    const offsetMin = yearOffsetMin(localDate, timezone, system);
    return offsetMin === null ? null : fixedOffsetInstant(localDate, clock, offsetMin);
  }
  if (resolved.kind === "one") return resolved.at;
  if (resolved.kind === "repeated") return side === "start" ? resolved.second : resolved.first;
  const jump = clockChangeAt(localDate, timezone);
  if (jump === null) throw new RangeError(`no clock change found on ${localDate} in ${timezone}`);
  return jump;
}

/** The least or greatest offset the zone uses at noon in the year; summer time lasts longer than a month wherever it is kept. */
function yearOffsetMin(localDate: string, timezone: string, system: "standard" | "daylight"): number | null {
  const year = localDate.slice(0, 4);
  const days = [localDate];
  for (let month = 1; month <= 12; month++) {
    const monthText = String(month).padStart(2, "0");
    days.push(`${year}-${monthText}-01`, `${year}-${monthText}-15`);
  }
  const offsets = days.map((day) => civilAt(noonOf(day, timezone), timezone).utcOffsetMin);
  const standardMin = Math.min(...offsets);
  const daylightMin = Math.max(...offsets);
  if (system === "standard") return standardMin;
  return daylightMin > standardMin ? daylightMin : null;
}

function fixedOffsetInstant(localDate: string, clock: string, offsetMin: number): Date {
  return new Date(Date.parse(`${localDate}T${clock}:00Z`) - offsetMin * 60_000);
}
