import type { Position } from "../geo/position.ts";
import {
  bendsAround,
  type Crossing,
  crossings,
  type HeightCurve,
  heightCurve,
  type MsSpan,
  turnsNear,
} from "./heightCurve.ts";
import { airlessSunAltitudeDeg, sunEdgeOverCentreDeg } from "./sunAndMoon.ts";
import type { SunMark } from "./sunEvents.ts";

/** The sun's way over a place between two instants: its centre without air, and its upper edge over the horizon. */
export interface SunCurve {
  centre: HeightCurve;
  edge: HeightCurve;
}

const GRAZING_DEG = 0.5;

/** Follows the sun over a place from one instant to another. */
export function sunCurve(position: Position, fromMs: number, toMs: number): SunCurve {
  const known = new Map<number, number>(); // both curves look at the same hours
  const centreDegAt = (ms: number): number => {
    const centreDeg = known.get(ms) ?? airlessSunAltitudeDeg(new Date(ms), position);
    known.set(ms, centreDeg);
    return centreDeg;
  };
  const edgeDegAt = (ms: number): number => sunEdgeOverCentreDeg(new Date(ms), centreDegAt(ms));
  return { centre: heightCurve(centreDegAt, fromMs, toMs), edge: heightCurve(edgeDegAt, fromMs, toMs) };
}

/** Every passage of the sun through a mark in a stretch of the curve, up or down as asked, in order of time. */
export function sunPassages(curve: SunCurve, mark: SunMark, climbs: boolean, span?: MsSpan): Crossing[] {
  return crossings(curve[mark.of], levelDeg(mark), span).filter((crossing) => crossing.climbs === climbs);
}

/** Whether the sun stands at or above a mark. */
export function isSunAbove(curve: SunCurve, mark: SunMark, ms: number): boolean {
  return curve[mark.of].heightDegAt(ms) >= levelDeg(mark);
}

/**
 * Whether the sun turns back within 0.5 degrees of a mark just before or just after an instant: its passage is then
 * slow, and a small error in angle is a large one in time.
 */
export function isGrazing(curve: SunCurve, mark: SunMark, at: Date): boolean {
  const bends = bendsAround(curve[mark.of], at.getTime());
  return bends.some((bend) => turnsNear(bend, levelDeg(mark), GRAZING_DEG));
}

/** Whether the sun turns back within 0.5 degrees of a mark anywhere between two instants, reaching it or not. */
export function isNearMiss(curve: SunCurve, mark: SunMark, fromMs: number, toMs: number): boolean {
  return curve[mark.of].turns.some(
    (turn) =>
      turn.ms >= fromMs && turn.ms <= toMs && Math.abs(turn.heightDeg - levelDeg(mark)) <= GRAZING_DEG,
  );
}

function levelDeg(mark: SunMark): number {
  return mark.of === "edge" ? 0 : mark.sunDeg;
}
