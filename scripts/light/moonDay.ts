import type { Position } from "../geo/position.ts";
import { civilAt, endOfDay, noonOf, startOfDay } from "../time/civilTime.ts";
import { type Crossing, crossings, heightCurve, nearestCrossing } from "./heightCurve.ts";
import { moonEdgeDeg, moonLight, solarNoonNear } from "./sunAndMoon.ts";

/** The eight phases in order from new moon. */
export const MOON_PHASES = [
  "new moon",
  "waxing crescent",
  "first quarter",
  "waxing gibbous",
  "full moon",
  "waning gibbous",
  "last quarter",
  "waning crescent",
] as const;

export type MoonPhase = (typeof MOON_PHASES)[number];

/** The moon of one civil day; `why` says in a sentence why a null is one. */
export interface MoonDay {
  /** Lit share of the disc at 12:00 local, 0 to 1. */
  illuminated: number;
  /** Phase at 12:00 local: each name covers an eighth of the cycle, about 3.7 days. */
  phaseName: MoonPhase;
  rise: Date | null;
  set: Date | null;
  why: Record<string, string>;
}

const DAY_MS = 24 * 3_600_000;

interface CivilSpan {
  position: Position;
  timezone: string;
  startMs: number;
  endMs: number;
}

const MOON_EVENTS = [
  { name: "rise", label: "moonrise", climbs: true },
  { name: "set", label: "moonset", climbs: false },
] as const;

/**
 * Moonrise and moonset inside a civil day (of two of one kind the one nearer the day's solar noon), and how much of the
 * moon is lit. Upper edge on a level horizon, observer at height 0, average air. Does not cover hills or weather.
 *
 * @returns instants within 60 s of an almanac, unless the moon only just clears the horizon
 * @throws {RangeError} when date, position or zone is none
 */
export function moonDay(localDate: string, position: Position, timezone: string): MoonDay {
  const startMs = startOfDay(localDate, timezone).getTime();
  const endMs = endOfDay(localDate, timezone).getTime();
  const noon = noonOf(localDate, timezone);
  const solarNoonMs = solarNoonNear(noon, position).getTime();
  const { illuminated, cycle } = moonLight(noon);
  const phaseName = MOON_PHASES[Math.round(cycle * 8) % 8]!;
  const moon: MoonDay = { illuminated, phaseName, rise: null, set: null, why: {} };
  const inside = moonCrossings(position, startMs, endMs).filter(
    ({ at }) => at.getTime() >= startMs && at.getTime() < endMs,
  );
  for (const event of MOON_EVENTS) {
    const { name, climbs } = event;
    const ofKind = inside.filter((crossing) => crossing.climbs === climbs);
    moon[name] = nearestCrossing(ofKind, solarNoonMs);
    if (moon[name] !== null) continue;
    if (startMs === endMs) moon.why[name] = "the clock skipped this date";
    else if (inside.length > 0) moon.why[name] = elsewhere(event, { position, timezone, startMs, endMs });
    else {
      const side = isMoonUp(new Date(startMs), position) ? "above" : "below";
      moon.why[name] = `the moon stays ${side} the horizon all day`;
    }
  }
  return moon;
}

/** Whether the moon's upper edge is above a level horizon; false at the instant before moonrise, true at moonrise. */
export function isMoonUp(at: Date, position: Position): boolean {
  return moonEdgeDeg(at, position) >= 0;
}

/** Lit share of the moon's disc, 0 (new) to 1 (full); the same everywhere on Earth. */
export function moonIlluminatedShare(at: Date): number {
  return moonLight(at).illuminated;
}

function moonCrossings(position: Position, fromMs: number, toMs: number): Crossing[] {
  return crossings(
    heightCurve((ms) => moonEdgeDeg(new Date(ms), position), fromMs, toMs),
    0,
  );
}

function elsewhere({ label, climbs }: { label: string; climbs: boolean }, day: CivilSpan): string {
  const { position, startMs, endMs, timezone } = day;
  const ofKind = moonCrossings(position, startMs - DAY_MS, endMs + DAY_MS).filter(
    (found) => found.climbs === climbs,
  );
  const nearest = nearestCrossing(ofKind, (startMs + endMs) / 2);
  if (nearest === null) return `no ${label} on this date, the day before or the day after`;
  const { localDate, clock } = civilAt(nearest, timezone);
  return `no ${label} falls on this date: the nearest is at ${clock} on ${localDate}`;
}
