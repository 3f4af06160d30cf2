import type { Position } from "../geo/position.ts";
import { type HeightCurve, heightCurve } from "./heightCurve.ts";
import { airlessSunAltitudeDeg } from "./sunAndMoon.ts";

const GRAZING_DEG = 0.5;

/** The sun's airless altitude over a place between two instants. */
export function sunCurve(position: Position, fromMs: number, toMs: number): HeightCurve {
  return heightCurve((ms) => airlessSunAltitudeDeg(new Date(ms), position), fromMs, toMs);
}

/**
 * Whether the sun turns back within 0.5 degrees of an angle just before or just after an instant: its passage is then
 * slow, and a small error in angle is a large one in time.
 */
export function isGrazing(curve: HeightCurve, sunDeg: number, at: Date): boolean {
  const before = curve.turns.filter((turn) => turn.ms <= at.getTime()).at(-1);
  const after = curve.turns.find((turn) => turn.ms > at.getTime());
  return [before, after].some(
    (turn) => turn !== undefined && Math.abs(turn.heightDeg - sunDeg) <= GRAZING_DEG,
  );
}

/** Whether the sun turns back within 0.5 degrees of an angle anywhere between two instants, reaching it or not. */
export function isNearMiss(curve: HeightCurve, sunDeg: number, fromMs: number, toMs: number): boolean {
  return curve.turns.some(
    (turn) => turn.ms >= fromMs && turn.ms <= toMs && Math.abs(turn.heightDeg - sunDeg) <= GRAZING_DEG,
  );
}
