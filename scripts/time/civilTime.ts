import { Temporal } from "temporal-polyfill";

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

/** Whether the text is a real civil date, "YYYY-MM-DD"; 29 February only in a leap year. */
export function isLocalDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  try {
    Temporal.PlainDate.from(text);
    return true;
  } catch {
    return false;
  }
}

/** Whether the text is an IANA zone name this machine knows, in its own capitals; a bare offset is none. */
export function isTimezone(text: string): boolean {
  if (!/^[A-Za-z]/.test(text)) return false;
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(text).timeZoneId === text;
  } catch {
    return false;
  }
}

/**
 * First instant of the civil day. Where the clock jumps over midnight it is the first instant after the jump; where
 * the zone skipped the whole date (Samoa, 30 December 2011) it equals the start of the next day.
 *
 * @throws {RangeError} when the date or the zone is none
 * @example startOfDay("2026-09-06", "America/Santiago") // 2026-09-06T04:00:00Z, 01:00 on the clock
 */
export function startOfDay(localDate: string, timezone: string): Date {
  return instantOf(plainDate(localDate).toZonedDateTime(zone(timezone)));
}

/** First instant of the next civil day; the day is startOfDay <= at < endOfDay and lasts 23, 24, 24.5 or 25 h. */
export function endOfDay(localDate: string, timezone: string): Date {
  return startOfDay(addDays(localDate, 1), timezone);
}

/** 12:00 of the civil day on the zone's clock. It is the request a sun library answers with that day's solar noon. */
export function noonOf(localDate: string, timezone: string): Date {
  return instantOf(
    plainDate(localDate).toZonedDateTime({
      timeZone: zone(timezone),
      plainTime: Temporal.PlainTime.from("12:00"),
    }),
  );
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
  const wall = plainDate(localDate).toPlainDateTime(Temporal.PlainTime.from(clock));
  const timeZone = zone(timezone);
  const earlier = wall.toZonedDateTime(timeZone, { disambiguation: "earlier" });
  const later = wall.toZonedDateTime(timeZone, { disambiguation: "later" });
  if (earlier.epochMilliseconds === later.epochMilliseconds) return { kind: "one", at: instantOf(earlier) };
  if (!earlier.toPlainDateTime().equals(wall)) return { kind: "gap" };
  return { kind: "repeated", first: instantOf(earlier), second: instantOf(later) };
}

/** Date, clock and offset that are read in the zone at an instant. */
export function civilAt(at: Date, timezone: string): CivilMoment {
  const there = inZone(at, timezone);
  return {
    localDate: there.toPlainDate().toString(),
    clock: there.toPlainTime().toString({ smallestUnit: "minute", roundingMode: "floor" }),
    utcOffset: there.offset,
    utcOffsetMin: there.offsetNanoseconds / 6e10,
  };
}

/**
 * ISO 8601 text of an instant to the nearest second, with the offset then in force.
 *
 * @example isoInZone(new Date("2026-04-03T17:31:12Z"), "Pacific/Auckland") // "2026-04-04T06:31:12+13:00"
 */
export function isoInZone(at: Date, timezone: string): string {
  const nearestSecond = new Date(Math.round(at.getTime() / 1000) * 1000);
  return inZone(nearestSecond, timezone).toString({ timeZoneName: "never", smallestUnit: "second" });
}

/**
 * First instant of a new offset inside the civil day, or null on an ordinary day. A jump over midnight belongs to the
 * day that it shortens at its start.
 */
export function clockChangeAt(localDate: string, timezone: string): Date | null {
  const start = plainDate(localDate).toZonedDateTime(zone(timezone));
  const change = start.subtract({ nanoseconds: 1 }).getTimeZoneTransition("next");
  if (change === null) return null;
  return change.epochMilliseconds < endOfDay(localDate, timezone).getTime() ? instantOf(change) : null;
}

/** The civil date n days later (earlier when n is negative). */
export function addDays(localDate: string, n: number): string {
  if (!Number.isInteger(n)) throw new RangeError(`n must be a whole number of days, found ${n}`);
  return plainDate(localDate).add({ days: n }).toString();
}

/** Civil days from a to b; negative when b is earlier. */
export function daysBetween(a: string, b: string): number {
  return plainDate(a).until(plainDate(b), { largestUnit: "day" }).days;
}

/** Day of the year, 1 to 366. */
export function dayOfYear(localDate: string): number {
  return plainDate(localDate).dayOfYear;
}

/** Day of the week of a civil date. */
export function weekday(localDate: string): Weekday {
  return WEEKDAYS[plainDate(localDate).dayOfWeek - 1]!;
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

function plainDate(localDate: string): Temporal.PlainDate {
  if (!isLocalDate(localDate)) {
    throw new RangeError(`localDate must be a real date YYYY-MM-DD, found ${JSON.stringify(localDate)}`);
  }
  return Temporal.PlainDate.from(localDate);
}

function zone(timezone: string): string {
  if (!isTimezone(timezone)) {
    throw new RangeError(`timezone must be an IANA zone name, found ${JSON.stringify(timezone)}`);
  }
  return timezone;
}

function inZone(at: Date, timezone: string): Temporal.ZonedDateTime {
  if (Number.isNaN(at.getTime()))
    throw new RangeError("the instant must be a valid Date, found an invalid one");
  return Temporal.Instant.fromEpochMilliseconds(at.getTime()).toZonedDateTimeISO(zone(timezone));
}

function instantOf(moment: Temporal.ZonedDateTime): Date {
  return new Date(moment.epochMilliseconds);
}
