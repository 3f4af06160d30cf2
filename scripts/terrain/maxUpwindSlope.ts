import type { Position } from "../geo/position.ts";
import { type ElevationGrid, elevationAt, type GridPlace, placeOnGrid } from "./elevationGrid.ts";

export interface UpwindRules {
  /** How far upwind the ground is looked at. */
  sxDistanceM: number;
  sxStepM: number;
  /** Half-width of the window of bearings, and the step inside it. */
  sxWindowDeg: number;
  sxWindowStepDeg: number;
}

/** Directions of a site's table: every 22.5 degrees from north. */
export const WIND_DIRECTIONS = 16;

/**
 * Greatest slope from a place up to the ground upwind of it, degrees: positive when sheltered, negative when exposed.
 *
 * @param upwindHeightsM   ground heights at one, two, three ... steps upwind
 * @source Winstral, Elder and Davis, "Spatial snow modeling of wind-redistributed snow using terrain-based parameters",
 *   Journal of Hydrometeorology 3 (2002), 524-538, equation 1
 * @example greatestUpwindSlopeDeg(100, [102, 110, 125, 120], 30) // 15.524
 */
export function greatestUpwindSlopeDeg(
  ownHeightM: number,
  upwindHeightsM: readonly number[],
  stepM: number,
): number {
  if (upwindHeightsM.length === 0)
    throw new RangeError("upwindHeightsM must hold at least one height, found none");
  let tangent = Number.NEGATIVE_INFINITY;
  upwindHeightsM.forEach((heightM, at) => {
    tangent = Math.max(tangent, (heightM - ownHeightM) / ((at + 1) * stepM));
  });
  return (Math.atan(tangent) * 180) / Math.PI;
}

/**
 * Terrain shelter (Sx) for wind from one direction: the mean over a window of bearings of the greatest upwind slope.
 *
 * @param windFromDeg   true bearing the wind comes from
 * @returns degrees, or null when a void or the edge of the grid lies within the distance upwind
 * @source Winstral, Elder and Davis (2002), as {@link greatestUpwindSlopeDeg}
 */
export function maxUpwindSlope(
  grid: ElevationGrid,
  position: Position,
  windFromDeg: number,
  rules: UpwindRules,
): number | null {
  return meanOverWindow(grid, placeOnGrid(grid, position), windFromDeg, rules);
}

/** {@link maxUpwindSlope} for the 16 wind directions N, NNE, NE ... in this order; null where it is not known. */
export function maxUpwindSlopes(
  grid: ElevationGrid,
  position: Position,
  rules: UpwindRules,
): (number | null)[] {
  const place = placeOnGrid(grid, position);
  return Array.from({ length: WIND_DIRECTIONS }, (_, at) =>
    meanOverWindow(grid, place, (at * 360) / WIND_DIRECTIONS, rules),
  );
}

function meanOverWindow(
  grid: ElevationGrid,
  place: GridPlace,
  windFromDeg: number,
  rules: UpwindRules,
): number | null {
  const ownHeightM = elevationAt(grid, place.eastingM, place.northingM);
  if (ownHeightM === null) return null;
  const steps = Math.floor(rules.sxDistanceM / rules.sxStepM);
  const halfCount = Math.floor(rules.sxWindowDeg / rules.sxWindowStepDeg);
  let sumDeg = 0;
  for (let offset = -halfCount; offset <= halfCount; offset++) {
    const gridBearingDeg = windFromDeg + offset * rules.sxWindowStepDeg - place.convergenceDeg;
    const heightsM = heightsAlong(grid, place, gridBearingDeg, rules.sxStepM, steps);
    if (heightsM === null) return null;
    sumDeg += greatestUpwindSlopeDeg(ownHeightM, heightsM, rules.sxStepM);
  }
  return sumDeg / (2 * halfCount + 1);
}

function heightsAlong(
  grid: ElevationGrid,
  place: GridPlace,
  gridBearingDeg: number,
  stepM: number,
  steps: number,
): number[] | null {
  const east = Math.sin((gridBearingDeg * Math.PI) / 180) * stepM;
  const north = Math.cos((gridBearingDeg * Math.PI) / 180) * stepM;
  const heightsM: number[] = [];
  for (let step = 1; step <= steps; step++) {
    const heightM = elevationAt(grid, place.eastingM + east * step, place.northingM + north * step);
    if (heightM === null) return null;
    heightsM.push(heightM);
  }
  return heightsM;
}
