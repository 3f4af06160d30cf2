import type { Position } from "../geo/position.ts";
import { sunPosition } from "./sunAndMoon.ts";

/** Sun positions at equal steps; entry i belongs to `startsAt` plus i times `stepMin`. Angles as in `sunPosition`. */
export interface SunTable {
  startsAt: Date;
  stepMin: number;
  altitudeDeg: Float64Array;
  azimuthDeg: Float64Array;
}

/**
 * The sun's path over a place in equal steps, for work that asks for it thousands of times.
 *
 * @param stepMin   minutes between entries, above 0
 * @param count     number of entries, the first at `startsAt`
 * @throws {RangeError} when the step or the count is none
 */
export function sunTable(position: Position, startsAt: Date, stepMin: number, count: number): SunTable {
  if (!(stepMin > 0 && Number.isFinite(stepMin)))
    throw new RangeError(`stepMin must be above 0, found ${stepMin}`);
  if (!(Number.isInteger(count) && count >= 0))
    throw new RangeError(`count must be 0 or more, found ${count}`);
  const altitudeDeg = new Float64Array(count);
  const azimuthDeg = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const sun = sunPosition(new Date(startsAt.getTime() + i * stepMin * 60_000), position);
    altitudeDeg[i] = sun.altitudeDeg;
    azimuthDeg[i] = sun.azimuthDeg;
  }
  return { startsAt, stepMin, altitudeDeg, azimuthDeg };
}
