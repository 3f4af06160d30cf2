import type { Position } from "../geo/position.ts";
import { cellsWithin } from "./broadSlope.ts";
import { type ElevationGrid, elevationAt, placeOnGrid } from "./elevationGrid.ts";

export interface LandformRules {
  /** Ground at least this steep is a slope. */
  flatSlopeDeg: number;
  /** Flat ground this far over or under the mean height around it is a crest or a floor. */
  landformHeightM: number;
  /** Radius of that mean. */
  landformRadiusM: number;
}

export type Landform = "slope" | "crest" | "floor" | "flat";

export type LandformResult = { landform: Landform; why: null } | { landform: null; why: string };

/**
 * What kind of ground a site stands on, which decides what air it has of its own.
 *
 * @param slopeDeg   the broad slope at the position
 * @returns the landform, or null with the reason when the ground around flat ground is not known
 */
export function landform(
  grid: ElevationGrid,
  position: Position,
  slopeDeg: number,
  rules: LandformRules,
): LandformResult {
  if (slopeDeg >= rules.flatSlopeDeg) return { landform: "slope", why: null };
  const place = placeOnGrid(grid, position);
  const ownHeightM = elevationAt(grid, place.eastingM, place.northingM);
  const around = cellsWithin(grid, place, rules.landformRadiusM);
  if (ownHeightM === null || around === null || around.length === 0) {
    return {
      landform: null,
      why: `ground within ${rules.landformRadiusM} m is missing from the elevation grid`,
    };
  }
  let sumM = 0;
  for (let at = 2; at < around.length; at += 3) sumM += around[at]!;
  const overMeanM = ownHeightM - sumM / (around.length / 3);
  if (overMeanM >= rules.landformHeightM) return { landform: "crest", why: null };
  if (overMeanM <= -rules.landformHeightM) return { landform: "floor", why: null };
  return { landform: "flat", why: null };
}
