import { Temporal } from "temporal-polyfill";
import type { ZoneStretch } from "./zoneStretches.ts";

/** Whether the text is an IANA zone name this machine knows, in its own capitals; a bare offset is none. */
export function isTimezone(text: string): boolean {
  if (!/^[A-Za-z]/.test(text)) return false;
  try {
    return inZone(0, text).timeZoneId === text;
  } catch {
    return false;
  }
}

/** First instant of a civil day, in milliseconds; the date and the zone must be real ones. */
export function dayStartMs(localDate: string, timezone: string): number {
  return Temporal.PlainDate.from(localDate).toZonedDateTime(timezone).epochMilliseconds;
}

/**
 * The instants of a wall clock reading, in milliseconds: equal when there is one. In a gap (`isGap`) they lie before and
 * after it, as far from its ends as the reading is inside.
 */
export function wallInstants(
  localDate: string,
  clock: string,
  timezone: string,
): { earlierMs: number; laterMs: number; isGap: boolean } {
  const wall = Temporal.PlainDate.from(localDate).toPlainDateTime(Temporal.PlainTime.from(clock));
  const earlier = wall.toZonedDateTime(timezone, { disambiguation: "earlier" });
  const later = wall.toZonedDateTime(timezone, { disambiguation: "later" });
  return {
    earlierMs: earlier.epochMilliseconds,
    laterMs: later.epochMilliseconds,
    isGap: !earlier.toPlainDateTime().equals(wall),
  };
}

/**
 * Every stretch of a zone between two instants, in order and without a gap.
 *
 * @param toMs   no more than three years after `fromMs`: changes farther off are not looked for
 * @throws {RangeError} when the zone is none
 */
export function stretchesBetween(timezone: string, fromMs: number, toMs: number): ZoneStretch[] {
  if (!isTimezone(timezone)) {
    throw new RangeError(`timezone must be an IANA zone name, found ${JSON.stringify(timezone)}`);
  }
  const stretches: ZoneStretch[] = [];
  let startMs = fromMs;
  let startsAtChange = false;
  let changeMs = nextChangeMs(Math.max(fromMs - 1000, -8.64e15), timezone);
  while (changeMs !== null && changeMs < toMs) {
    if (changeMs > startMs) stretches.push(stretch(startMs, changeMs, startsAtChange, timezone));
    startMs = changeMs;
    startsAtChange = true;
    changeMs = nextChangeMs(changeMs, timezone);
  }
  return [...stretches, stretch(startMs, toMs, startsAtChange, timezone)];
}

function nextChangeMs(ms: number, timezone: string): number | null {
  return inZone(ms, timezone).getTimeZoneTransition("next")?.epochMilliseconds ?? null;
}

function stretch(fromMs: number, toMs: number, startsAtChange: boolean, timezone: string): ZoneStretch {
  const there = inZone(fromMs, timezone);
  const text = there.toString({ timeZoneName: "never", smallestUnit: "second" });
  return {
    fromMs,
    toMs,
    startsAtChange,
    offsetMs: there.offsetNanoseconds / 1e6,
    utcOffset: there.offset,
    isoOffset: text.slice(-"+00:00".length),
  };
}

function inZone(ms: number, timezone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timezone);
}
