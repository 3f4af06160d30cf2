import { dayStartMs, stretchesBetween, wallInstants } from "./zoneRules.ts";
import { zoneStretches } from "./zoneStretches.ts";

export { isTimezone } from "./zoneRules.ts";

// Civil days are "YYYY-MM-DD" in an IANA zone, clocks "HH:MM" (24 h), instants are `Date` (UTC).

/** What a wall clock reading stands for: one instant, none (the clock jumps over it), or two (it runs twice). */
export type ResolvedClock =
  | { kind: "one"; at: Date }
  | { kind: "gap" }
  | { kind: "repeated"; first: Date; second: Date };

/** An instant as a clock in a zone shows it; `clock` is cut, not rounded, to the minute. */
export interface CivilMoment {
  localDate: string;
  clock: string;
  utcOffset: string;
  utcOffsetMin: number;
}

export type Weekday = "mon" | "tue" | "wed" | "thu" | "fri" | "sat" | "sun";

const WEEKDAYS: readonly Weekday[] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const TIME_OF_ISO = "T00:00:00.000Z";
const A_MONDAY = "1970-01-05";
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const OFFSETS_APART_MS = 32 * HOUR_MS; // no zone was ever 16 h from UTC

const stretchAt = zoneStretches(stretchesBetween);

/** Whether the text is a real civil date, "YYYY-MM-DD"; 29 February only in a leap year. */
export function isLocalDate(text: string): boolean {
  return utcMidnightMs(text) !== null;
}

/**
 * First instant of the civil day. Where the clock jumps over midnight it is the first instant after the jump; where
 * the zone skipped the whole date (Samoa, 30 December 2011) it equals the start of the next day.
 *
 * @throws {RangeError} when the date or the zone is none
 * @example startOfDay("2026-09-06", "America/Santiago") // 2026-09-06T04:00:00Z, 01:00 on the clock
 */
export function startOfDay(localDate: string, timezone: string): Date {
  return new Date(ordinaryInstantMs(dateMs(localDate), timezone) ?? dayStartMs(localDate, timezone));
}

/** First instant of the next civil day; the day is startOfDay <= at < endOfDay and lasts 23, 24, 24.5 or 25 h. */
export function endOfDay(localDate: string, timezone: string): Date {
  return startOfDay(addDays(localDate, 1), timezone);
}

/** 12:00 of the civil day on the zone's clock. It is the request a sun library answers with that day's solar noon. */
export function noonOf(localDate: string, timezone: string): Date {
  const noon = resolveClock(localDate, "12:00", timezone);
  if (noon.kind === "one") return noon.at;
  return noon.kind === "repeated" ? noon.first : new Date(wallInstants(localDate, "12:00", timezone).laterMs);
}

/**
 * The instant of a wall clock reading, or that there is none (spring) or two (autumn).
 *
 * @param clock   "HH:MM", 00:00 to 23:59
 * @throws {RangeError} when the date, the clock or the zone is none
 */
export function resolveClock(localDate: string, clock: string, timezone: string): ResolvedClock {
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(clock)) {
    throw new RangeError(`clock must be HH:MM from 00:00 to 23:59, found ${JSON.stringify(clock)}`);
  }
  const [hours, minutes] = [Number(clock.slice(0, 2)), Number(clock.slice(3))];
  const ordinaryMs = ordinaryInstantMs(dateMs(localDate) + (hours * 60 + minutes) * 60_000, timezone);
  if (ordinaryMs !== null) return { kind: "one", at: new Date(ordinaryMs) };
  const { earlierMs, laterMs, isGap } = wallInstants(localDate, clock, timezone);
  if (earlierMs === laterMs) return { kind: "one", at: new Date(earlierMs) };
  if (isGap) return { kind: "gap" };
  return { kind: "repeated", first: new Date(earlierMs), second: new Date(laterMs) };
}

/** Date, clock and offset that are read in the zone at an instant. */
export function civilAt(at: Date, timezone: string): CivilMoment {
  const atMs = instantMs(at);
  const { offsetMs, utcOffset } = stretchAt(atMs, timezone);
  const wall = new Date(atMs + offsetMs).toISOString();
  const localDate = wall.slice(0, -TIME_OF_ISO.length);
  const clock = wall.slice(1 - TIME_OF_ISO.length, 6 - TIME_OF_ISO.length);
  return { localDate, clock, utcOffset, utcOffsetMin: offsetMs / 60_000 };
}

/**
 * ISO 8601 text of an instant to the nearest second, with the offset then in force.
 *
 * @example isoInZone(new Date("2026-04-03T17:31:12Z"), "Pacific/Auckland") // "2026-04-04T06:31:12+13:00"
 */
export function isoInZone(at: Date, timezone: string): string {
  const nearestSecondMs = Math.round(instantMs(at) / 1000) * 1000;
  const { offsetMs, isoOffset } = stretchAt(nearestSecondMs, timezone);
  return new Date(nearestSecondMs + offsetMs).toISOString().slice(0, -".000Z".length) + isoOffset;
}

/**
 * First instant of a new offset inside the civil day, or null on an ordinary day. A jump over midnight belongs to the
 * day that it shortens at its start.
 */
export function clockChangeAt(localDate: string, timezone: string): Date | null {
  const startMs = startOfDay(localDate, timezone).getTime();
  const endMs = endOfDay(localDate, timezone).getTime();
  for (let fromMs = startMs; fromMs < endMs; ) {
    const stretch = stretchAt(fromMs, timezone);
    if (stretch.startsAtChange && stretch.fromMs >= startMs) return new Date(stretch.fromMs);
    fromMs = stretch.toMs;
  }
  return null;
}

/** The civil date n days later (earlier when n is negative). */
export function addDays(localDate: string, n: number): string {
  if (!Number.isInteger(n)) throw new RangeError(`n must be a whole number of days, found ${n}`);
  return new Date(dateMs(localDate) + n * DAY_MS).toISOString().slice(0, -TIME_OF_ISO.length);
}

/** Civil days from a to b; negative when b is earlier. */
export function daysBetween(a: string, b: string): number {
  return (dateMs(b) - dateMs(a)) / DAY_MS;
}

/** Day of the year, 1 to 366. */
export function dayOfYear(localDate: string): number {
  return daysBetween(`${localDate.slice(0, 4)}-01-01`, localDate) + 1;
}

/** Day of the week of a civil date. */
export function weekday(localDate: string): Weekday {
  const days = daysBetween(A_MONDAY, localDate);
  return WEEKDAYS[((days % 7) + 7) % 7]!;
}

/**
 * Every civil date from the first to the last, both included.
 *
 * @throws {RangeError} when the last comes before the first
 */
export function eachDay(from: string, to: string): string[] {
  const length = daysBetween(from, to) + 1;
  if (length < 1) throw new RangeError(`the last day must not come before the first, found ${from} to ${to}`);
  return Array.from({ length }, (_, n) => addDays(from, n));
}

/** Midnight UTC of a civil date, null when there is no such date. */
function utcMidnightMs(localDate: string): number | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(localDate)) return null;
  const midnight = new Date(`${localDate}T00:00:00Z`); // the 30th of February becomes a day of March
  return midnight.getUTCDate() === Number(localDate.slice(-2)) ? midnight.getTime() : null;
}

function dateMs(localDate: string): number {
  const ms = utcMidnightMs(localDate);
  if (ms !== null) return ms;
  throw new RangeError(`localDate must be a real date YYYY-MM-DD, found ${JSON.stringify(localDate)}`);
}

function instantMs(at: Date): number {
  const ms = at.getTime();
  if (Number.isNaN(ms)) throw new RangeError("the instant must be a valid Date, found an invalid one");
  return ms;
}

/**
 * The instant of a wall clock reading, written as if it were UTC, when no clock change is near; null when one is, so that
 * the reading may be none or two.
 */
function ordinaryInstantMs(wallMs: number, timezone: string): number | null {
  const stretch = stretchAt(wallMs, timezone);
  const ms = wallMs - stretch.offsetMs;
  const isFarFromChange = ms - stretch.fromMs > OFFSETS_APART_MS && stretch.toMs - ms > OFFSETS_APART_MS;
  return isFarFromChange ? ms : null;
}
