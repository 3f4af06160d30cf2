import { normalizeDeg } from "../geo/bearings.ts";
import { type Backstop, type BackstopGround, backstop } from "./backstop.ts";
import { groundProfile, type HeightAt } from "./groundProfile.ts";
import type { ShootingRules } from "./shootingRules.ts";

export interface Lane {
  id: string;
  /** Middle of the lane, true. */
  bearingDeg: number;
  widthDeg: number;
  maxRangeM: number;
  isSeenOnGround: boolean;
}

/** One whole degree of a lane with the worst ground behind an animal at any of its ranges. */
export interface LineOfFire {
  lane: string;
  /** A whole degree, true. */
  bearingDeg: number;
  worst: Backstop;
  /** One a range step, from near to far. */
  ranges: Backstop[];
  isSeenOnGround: boolean;
}

export interface SeatFacts {
  /** Ground around the seat, by metres east and north of it. */
  heightAt: HeightAt;
  /** Distance between samples of it. */
  stepM: number;
  muzzleHeightM: number;
  gridErrorM: number;
  /** Longest shot of the weapon. */
  laneLimitM: number;
}

/**
 * Lines of fire of a lane, one for each whole degree of it, both ends rounded outward. A degree is as good as its worst range step:
 * none before far before earth, then the ground farther behind.
 */
export function linesOfFire(lane: Lane, seat: SeatFacts, rules: ShootingRules): LineOfFire[] {
  const ranges = rangeSteps(lane, seat.laneLimitM, rules);
  const reachM = ranges.at(-1)! + Math.max(rules.backstopLookM, rules.backstopFarM);
  return laneBearings(lane).map((bearingDeg) => {
    const profile = groundProfile(seat.heightAt, bearingDeg, reachM, seat.stepM);
    const behind = ranges.map((rangeM) => backstop(profile, { ...seat, rangeM }, rules));
    return {
      lane: lane.id,
      bearingDeg,
      worst: behind.reduce((worst, other) => (isWorse(other, worst) ? other : worst)),
      ranges: behind,
      isSeenOnGround: lane.isSeenOnGround,
    };
  });
}

/** The whole degrees that a lane touches, clockwise; 360 of them at most. */
export function laneBearings({ bearingDeg, widthDeg }: Lane): number[] {
  const from = Math.floor(bearingDeg - widthDeg / 2 + 1e-9);
  const to = Math.ceil(bearingDeg + widthDeg / 2 - 1e-9);
  return Array.from({ length: Math.min(360, to - from + 1) }, (_, at) => normalizeDeg(from + at));
}

/** Length of a lane for a weapon: its own, the weapon's limit, or as far as lines are checked, whichever is shortest. */
export function laneLengthM(
  { maxRangeM }: { maxRangeM: number },
  laneLimitM: number,
  { laneCheckToM }: Pick<ShootingRules, "laneCheckToM">,
): number {
  return Math.min(maxRangeM, laneLimitM, laneCheckToM);
}

function rangeSteps(lane: Lane, laneLimitM: number, rules: ShootingRules): number[] {
  const lengthM = laneLengthM(lane, laneLimitM, rules);
  const steps = Array.from(
    { length: Math.floor(lengthM / rules.laneStepM) },
    (_, at) => (at + 1) * rules.laneStepM,
  );
  return steps.at(-1) === lengthM ? steps : [...steps, lengthM];
}

const ORDER: readonly BackstopGround[] = ["earth", "far", "none"];

function isWorse(a: Backstop, b: Backstop): boolean {
  if (a.ground !== b.ground) return ORDER.indexOf(a.ground) > ORDER.indexOf(b.ground);
  return (a.beyondM ?? Number.POSITIVE_INFINITY) > (b.beyondM ?? Number.POSITIVE_INFINITY);
}
