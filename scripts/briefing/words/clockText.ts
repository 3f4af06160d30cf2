import { civilAt, resolveClock } from "../../time/civilTime.ts";

const MINUTE_MS = 60_000;

/**
 * The instant of an ISO 8601 text with its offset, as pack.json writes them.
 *
 * @throws {RangeError} when the text is no instant or has no offset
 */
export function instantOf(text: string): Date {
  const at = new Date(text);
  if (Number.isNaN(at.getTime()) || !/([+-]\d\d:\d\d|Z)$/.test(text)) {
    throw new RangeError(`an instant needs a date, a time and an offset, found ${JSON.stringify(text)}`);
  }
  return at;
}

/**
 * An instant moved to a whole step of the clock in its zone; already on a step, it stays.
 *
 * @param stepMin  1 to 60, divides 60
 * @param towards  "down" earlier, "up" later, "nearest" half a step up
 */
export function roundedInstant(
  at: Date,
  stepMin: number,
  towards: "down" | "up" | "nearest",
  timezone: string,
): Date {
  if (!Number.isInteger(stepMin) || stepMin < 1 || 60 % stepMin !== 0) {
    throw new RangeError(`stepMin must divide 60, found ${stepMin}`);
  }
  const round = { down: Math.floor, up: Math.ceil, nearest: Math.round }[towards];
  const offsetMs = civilAt(at, timezone).utcOffsetMin * MINUTE_MS;
  const stepMs = stepMin * MINUTE_MS;
  return new Date(round((at.getTime() + offsetMs) / stepMs) * stepMs - offsetMs);
}

/**
 * The clock of an instant, 24 hours, to the nearest minute. A reading that the clock shows twice in that night carries
 * its offset, so that it can not be taken for the other one.
 *
 * @example clockText(new Date("2027-11-07T06:30:00Z"), "America/New_York") // "01:30 (UTC-5)"
 */
export function clockText(at: Date, timezone: string): string {
  const moment = civilAt(roundedInstant(at, 1, "nearest", timezone), timezone);
  const resolved = resolveClock(moment.localDate, moment.clock, timezone);
  return resolved.kind === "repeated" ? `${moment.clock} (${utcOffsetText(moment.utcOffset)})` : moment.clock;
}

/**
 * An estimated time: "about" and the clock on a whole step.
 *
 * @example aboutClock(new Date("2026-10-14T07:26:00Z"), 15, "down", "Europe/Vienna") // "about 09:15"
 */
export function aboutClock(
  at: Date,
  stepMin: number,
  towards: "down" | "up" | "nearest",
  timezone: string,
): string {
  return `about ${clockText(roundedInstant(at, stepMin, towards, timezone), timezone)}`;
}

/** An offset in short: "+05:45" gives "UTC+5:45", "-04:00" gives "UTC-4". */
export function utcOffsetText(utcOffset: string): string {
  const [, sign, hours, minutes] = /^([+-])(\d\d):(\d\d)/.exec(utcOffset) ?? [];
  if (sign === undefined)
    throw new RangeError(`an offset is +HH:MM or -HH:MM, found ${JSON.stringify(utcOffset)}`);
  return `UTC${sign}${Number(hours)}${minutes === "00" ? "" : `:${minutes}`}`;
}
