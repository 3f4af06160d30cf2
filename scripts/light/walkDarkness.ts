import type { Position } from "../geo/position.ts";
import { airlessSunAltitudeDeg, moonEdgeDeg, moonLight } from "./sunAndMoon.ts";
import type { TimeWindow } from "./timeWindows.ts";

export interface DarknessConstants {
  /** Lit share of the moon from which a moon above the horizon gives light to walk by, 0 to 1. */
  darkMoonShare: number;
  /** Altitude of the sun, without the bending of the air, below which it is night; degrees, negative. */
  firstLightSunDeg: number;
}

export interface WalkDarkness {
  /** Minutes without light to walk by. */
  darkMin: number;
  /** Minutes of night under a moon that lights the way, not in `darkMin`. */
  moonlitMin: number;
  /** The dark stretches, to the minute. */
  dark: TimeWindow[];
  moon: { isUpAtStart: boolean; isUpAtEnd: boolean; illuminated: number };
}

const STEP_MS = 60_000;
const LONGEST_MS = 24 * 3_600_000;

/**
 * How much of a walk is dark: the sun under its angle and the moon below the horizon or less than `darkMoonShare` lit.
 * Level horizon and clear sky: hills, trees and cloud make it darker, snow lighter; none of them is covered.
 *
 * @throws {RangeError} when the walk ends before it starts or lasts over 24 h
 */
export function walkDarkness(
  walk: { from: Date; to: Date; position: Position },
  constants: DarknessConstants,
): WalkDarkness {
  const { from, to, position } = walk;
  const lengthMs = to.getTime() - from.getTime();
  if (!(lengthMs >= 0 && lengthMs <= LONGEST_MS)) {
    throw new RangeError(`a walk must last 0 to 24 h, found ${lengthMs / 3_600_000} h`);
  }
  const dark: TimeWindow[] = [];
  let darkMs = 0;
  let moonlitMs = 0;
  for (let startMs = from.getTime(); startMs < to.getTime(); startMs += STEP_MS) {
    const endMs = Math.min(startMs + STEP_MS, to.getTime());
    const middle = new Date((startMs + endMs) / 2);
    if (airlessSunAltitudeDeg(middle, position) >= constants.firstLightSunDeg) continue;
    if (givesLight(middle, position, constants.darkMoonShare)) {
      moonlitMs += endMs - startMs;
      continue;
    }
    darkMs += endMs - startMs;
    const last = dark.at(-1);
    if (last?.end.getTime() === startMs) last.end = new Date(endMs);
    else dark.push({ start: new Date(startMs), end: new Date(endMs) });
  }
  return {
    darkMin: darkMs / STEP_MS,
    moonlitMin: moonlitMs / STEP_MS,
    dark,
    moon: {
      isUpAtStart: moonEdgeDeg(from, position) > 0,
      isUpAtEnd: moonEdgeDeg(to, position) > 0,
      illuminated: moonLight(from).illuminated,
    },
  };
}

function givesLight(at: Date, position: Position, darkMoonShare: number): boolean {
  return moonLight(at).illuminated >= darkMoonShare && moonEdgeDeg(at, position) > 0;
}
