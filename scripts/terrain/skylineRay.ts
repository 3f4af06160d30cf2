import type { ElevationGrid } from "./elevationGrid.ts";
import type { GroundTops } from "./groundTops.ts";

/** Where a skyline is looked at from. */
export interface SkylineRay {
  /** Fractional place on the grid. */
  row: number;
  column: number;
  eyeM: number;
  reachM: number;
  /** Fall below a level line by curvature and refraction, per metre squared. */
  dropPerM2: number;
}

export interface SkylinePoint {
  /** Greatest rise over run; 0 without any ground on the ray. */
  tangent: number;
  /** How far known ground reaches without a break. */
  reachM: number;
  /** Whether known ground lies beyond a void. */
  isBroken: boolean;
  /** Half cells to the ground that makes the skyline; 0 without any. */
  atStep: number;
}

// What a bilinear height may exceed its greatest corner by, as rise over run, in rounding.
const ROUNDING = 1e-12;

/**
 * Greatest rise over run of the ground along a grid bearing, looked at every half cell. With tops, tiles that can not rise over what
 * is already seen are passed over: the result is the same.
 *
 * @param likelyStep   where the skyline of a neighbouring bearing stands: looked at first, more is passed over when it is right
 */
export function skylineAlong(
  grid: ElevationGrid,
  ray: SkylineRay,
  gridBearingRad: number,
  tops: GroundTops | null,
  likelyStep: number,
): SkylinePoint {
  const { columns, heightsM, cellSizeM } = grid;
  const { eyeM, dropPerM2 } = ray;
  const stepM = cellSizeM / 2;
  const east = Math.sin(gridBearingRad) / 2;
  const south = -Math.cos(gridBearingRad) / 2;
  const lastRow = grid.rows - 1;
  const lastColumn = columns - 1;
  const lastStep = lastStepInside(ray, { east, south, lastRow, lastColumn }, Math.floor(ray.reachM / stepM));
  const levels = tops?.levels ?? [];
  let level = levels.length > 0 ? 0 : -1;
  let tangent = Number.NEGATIVE_INFINITY;
  let atStep = 0;
  let reachM = 0;
  let isUnbroken = true;
  let isBroken = false;
  let step = 1;
  for (let near = Math.max(1, likelyStep - 2); near <= Math.min(likelyStep + 2, lastStep); near++) {
    const candidate = riseTo(near);
    if (!(candidate > tangent)) continue;
    tangent = candidate;
    atStep = near;
  }
  while (step <= lastStep) {
    let end = lastStep;
    if (level >= 0) {
      const { shift, topsM, columns: tiles } = levels[level]!;
      const row0 = Math.min((ray.row + south * step) | 0, lastRow - 1);
      const column0 = Math.min((ray.column + east * step) | 0, lastColumn - 1);
      const tileRow = row0 >> shift;
      const tileColumn = column0 >> shift;
      const leaves = Math.min(
        stepsTo(south, tileRow << shift, (tileRow + 1) << shift, ray.row),
        stepsTo(east, tileColumn << shift, (tileColumn + 1) << shift, ray.column),
      );
      // The step before the one at which the ray is out of the tile, kept clear of rounding.
      end = Math.min(lastStep, Math.max(step, Math.floor(leaves - 1e-6)));
      const overEyeM = topsM[tileRow * tiles + tileColumn]! - eyeM;
      const nearM = step * stepM;
      const most = overEyeM / (overEyeM > 0 ? nearM : end * stepM) - nearM * dropPerM2;
      if (most < tangent - ROUNDING) {
        if (isUnbroken) reachM = end * stepM;
        else isBroken = true;
        step = end + 1;
        if (level < levels.length - 1) level++;
        continue;
      }
      if (level > 0) {
        level--;
        continue;
      }
    }
    for (; step <= end; step++) {
      const candidate = riseTo(step);
      if (candidate > tangent) {
        tangent = candidate;
        atStep = step;
      }
      if (Number.isNaN(candidate)) isUnbroken = false;
      else if (isUnbroken) reachM = step * stepM;
      else isBroken = true;
    }
  }
  return { tangent: tangent === Number.NEGATIVE_INFINITY ? 0 : tangent, reachM, isBroken, atStep };

  /** Rise over run to the ground at a step; NaN by a void. */
  function riseTo(at: number): number {
    const row = ray.row + south * at;
    const column = ray.column + east * at;
    const row0 = Math.min(row | 0, lastRow - 1);
    const column0 = Math.min(column | 0, lastColumn - 1);
    const cell = row0 * columns + column0;
    const right = column - column0;
    const north = heightsM[cell]! + (heightsM[cell + 1]! - heightsM[cell]!) * right;
    const below = cell + columns;
    const southern = heightsM[below]! + (heightsM[below + 1]! - heightsM[below]!) * right;
    const heightM = north + (southern - north) * (row - row0);
    const distanceM = at * stepM;
    return (heightM - eyeM) / distanceM - distanceM * dropPerM2;
  }
}

/** Steps along one axis until a ray leaves the span from `low` up to, not with, `high`. */
function stepsTo(perStep: number, low: number, high: number, from: number): number {
  if (perStep > 0) return (high - from) / perStep;
  return perStep < 0 ? (low - from) / perStep : Number.POSITIVE_INFINITY;
}

/** The last step whose place lies within the outermost cell centres. */
function lastStepInside(
  ray: SkylineRay,
  by: { east: number; south: number; lastRow: number; lastColumn: number },
  most: number,
): number {
  const isInside = (step: number): boolean => {
    const row = ray.row + by.south * step;
    const column = ray.column + by.east * step;
    return row >= 0 && column >= 0 && row <= by.lastRow && column <= by.lastColumn;
  };
  const leaves = Math.min(
    stepsTo(by.south, 0, by.lastRow, ray.row),
    stepsTo(by.east, 0, by.lastColumn, ray.column),
  );
  let step = Math.min(most, Math.floor(leaves) + 1);
  while (step > 0 && !isInside(step)) step--;
  return step;
}
