import type { ElevationGrid } from "./elevationGrid.ts";

/** Steepness and the way the ground faces, downhill. */
export interface SlopeAspect {
  /** 0 (flat) to 90 (cliff). */
  slopeDeg: number;
  /** Clockwise from north, 0 <= x < 360; null on ground too flat to face anywhere. */
  aspectDeg: number | null;
}

/** Nine heights around a cell, metres, row by row from the north-west. */
export type Window3x3 = readonly [number, number, number, number, number, number, number, number, number];

const DEG = 180 / Math.PI;

/**
 * Slope and aspect of the middle of nine cells by Horn's weighted differences. The aspect is from the north of the rows (grid
 * north on a grid). Null when one of the nine heights is unknown.
 *
 * @param cellM             side of a cell east-west and north-south, which differ on a grid of degrees
 * @param aspectFromSlopeDeg  under this slope the aspect is null
 * @source B. K. P. Horn, "Hill shading and the reflectance map", Proceedings of the IEEE 69 (1981), 14-47
 * @example hornSlopeAspect([50, 45, 50, 30, 30, 30, 8, 10, 10], { eastM: 5, northM: 5 }, 0.5) // slope 75.26, aspect 180.75
 */
export function hornSlopeAspect(
  window: Window3x3,
  cellM: { eastM: number; northM: number },
  aspectFromSlopeDeg: number,
): SlopeAspect | null {
  const [a, b, c, d, , f, g, h, i] = window;
  const towardsEast = (c + 2 * f + i - (a + 2 * d + g)) / (8 * cellM.eastM);
  const towardsSouth = (g + 2 * h + i - (a + 2 * b + c)) / (8 * cellM.northM);
  // The middle height has no weight, but over a hole the result would be no measurement.
  if (window.some(Number.isNaN)) return null;
  return slopeAspectOfGradient(towardsEast, -towardsSouth, aspectFromSlopeDeg);
}

/**
 * Slope and aspect of ground that rises by the given metres per metre towards east and north.
 */
export function slopeAspectOfGradient(
  risePerMEast: number,
  risePerMNorth: number,
  aspectFromSlopeDeg: number,
): SlopeAspect {
  const slopeDeg = Math.atan(Math.hypot(risePerMEast, risePerMNorth)) * DEG;
  if (slopeDeg < aspectFromSlopeDeg || slopeDeg === 0) return { slopeDeg, aspectDeg: null };
  const aspectDeg = Math.atan2(-risePerMEast, -risePerMNorth) * DEG;
  return { slopeDeg, aspectDeg: aspectDeg < 0 ? (aspectDeg + 360) % 360 : aspectDeg };
}

/** Slope and aspect (from grid north) at one cell of a grid; null on its border and beside a void. */
export function slopeAspectAtCell(
  grid: ElevationGrid,
  row: number,
  column: number,
  aspectFromSlopeDeg: number,
): SlopeAspect | null {
  if (!(row >= 1 && row <= grid.rows - 2 && column >= 1 && column <= grid.columns - 2)) return null;
  const { heightsM: z, columns } = grid;
  const at = row * columns + column;
  const north = at - columns;
  const south = at + columns;
  return hornSlopeAspect(
    [
      z[north - 1]!,
      z[north]!,
      z[north + 1]!,
      z[at - 1]!,
      z[at]!,
      z[at + 1]!,
      z[south - 1]!,
      z[south]!,
      z[south + 1]!,
    ],
    { eastM: grid.cellSizeM, northM: grid.cellSizeM },
    aspectFromSlopeDeg,
  );
}

/**
 * Slope and aspect of every cell, row-major like the grid.
 *
 * @returns `slopeDeg` NaN on the border and beside voids; `aspectGridDeg` from grid north, NaN there too and under the slope
 *   from which an aspect is given. Add the grid convergence for true bearings.
 * @source Horn (1981), as {@link hornSlopeAspect}
 */
export function slopeAspectGrid(
  grid: ElevationGrid,
  aspectFromSlopeDeg: number,
): { slopeDeg: Float32Array; aspectGridDeg: Float32Array } {
  const { rows, columns, heightsM: z, cellSizeM } = grid;
  const slopeDeg = new Float32Array(z.length).fill(Number.NaN);
  const aspectGridDeg = new Float32Array(z.length).fill(Number.NaN);
  const scale = 8 * cellSizeM;
  for (let row = 1; row < rows - 1; row++) {
    for (let column = 1; column < columns - 1; column++) {
      const at = row * columns + column;
      const north = at - columns;
      const south = at + columns;
      const a = z[north - 1]!;
      const c = z[north + 1]!;
      const g = z[south - 1]!;
      const i = z[south + 1]!;
      const towardsEast = (c + 2 * z[at + 1]! + i - (a + 2 * z[at - 1]! + g)) / scale;
      const towardsSouth = (g + 2 * z[south]! + i - (a + 2 * z[north]! + c)) / scale;
      const slope = Math.atan(Math.sqrt(towardsEast * towardsEast + towardsSouth * towardsSouth)) * DEG;
      if (Number.isNaN(slope) || Number.isNaN(z[at]!)) continue;
      slopeDeg[at] = slope;
      if (slope < aspectFromSlopeDeg || slope === 0) continue;
      const aspect = Math.fround(Math.atan2(-towardsEast, towardsSouth) * DEG);
      const turned = Math.fround(aspect < 0 ? aspect + 360 : aspect);
      aspectGridDeg[at] = turned >= 360 ? 0 : turned;
    }
  }
  return { slopeDeg, aspectGridDeg };
}
