import type { Position } from "../geo/position.ts";
import { type ElevationGrid, elevationAt, placeOnGrid } from "./elevationGrid.ts";

export interface HorizonRules {
  /** Farthest ground that is looked at. */
  horizonReachM: number;
  /** A grid that ends nearer than this is said. */
  horizonNearM: number;
  /** Share of the Earth's curvature that refraction takes back (k). */
  refraction: number;
  earthRadiusM: number;
}

/** The skyline around a place, one value for each whole degree of true bearing, 0 to 359. */
export interface HorizonProfile {
  eyeHeightM: number;
  /** Elevation angle of the skyline, degrees; negative where all ground lies lower. */
  angleDeg: Float64Array;
  /** How far known ground reaches without a break. */
  reachM: Float64Array;
  /** Bearings on which a void interrupts the ground: their angle is the least that the skyline can be. */
  brokenBearingsDeg: number[];
  shortestReachM: number;
  /** Whether the ground known on some bearing ends under the near limit, so that the skyline may be too low. */
  endsNear: boolean;
}

export type HorizonResult = { horizon: HorizonProfile; why: null } | { horizon: null; why: string };

/** Bearings of a profile. */
export const HORIZON_BEARINGS = 360;

/**
 * Skyline of the bare ground from an eye over the ground: the greatest elevation angle along each bearing, out to the edge of
 * the grid or the reach, with the Earth's curvature and refraction. The ground is looked at every half cell, between cells
 * bilinearly. Does not see trees. Lengths are those of the grid, which differ from the ground's by at most 0.1 %.
 *
 * @param eyeHeightM   metres over the ground, 0 or more
 * @returns the profile, or null with the reason when the height of the place itself is unknown
 * @source curvature and refraction (1 - k) D^2 / 2R, k = 0.13: P. Yoeli, "The making of intervisibility maps with computer
 *   and plotter", Cartographica 22 (1985)
 */
export function horizonProfile(
  grid: ElevationGrid,
  position: Position,
  eyeHeightM: number,
  rules: HorizonRules,
): HorizonResult {
  if (!(eyeHeightM >= 0)) throw new RangeError(`eyeHeightM must be 0 or more, found ${eyeHeightM}`);
  const place = placeOnGrid(grid, position);
  const groundM = elevationAt(grid, place.eastingM, place.northingM);
  if (groundM === null)
    return { horizon: null, why: "the site lies outside the elevation grid or on a void" };

  const angleDeg = new Float64Array(HORIZON_BEARINGS);
  const reachM = new Float64Array(HORIZON_BEARINGS);
  const brokenBearingsDeg: number[] = [];
  const eyeM = groundM + eyeHeightM;
  for (let bearing = 0; bearing < HORIZON_BEARINGS; bearing++) {
    const gridBearingRad = ((bearing - place.convergenceDeg) * Math.PI) / 180;
    const ray = greatestTangent(grid, place, gridBearingRad, eyeM, rules);
    angleDeg[bearing] = (Math.atan(ray.tangent) * 180) / Math.PI;
    reachM[bearing] = ray.reachM;
    if (ray.broken) brokenBearingsDeg.push(bearing);
  }
  const shortestReachM = reachM.reduce((least, reach) => Math.min(least, reach), Number.POSITIVE_INFINITY);
  return {
    horizon: {
      eyeHeightM,
      angleDeg,
      reachM,
      brokenBearingsDeg,
      shortestReachM,
      endsNear: shortestReachM < rules.horizonNearM,
    },
    why: null,
  };
}

/** Marches outward in steps of half a cell. Without any ground on the ray the skyline is level (tangent 0, reach 0). */
function greatestTangent(
  grid: ElevationGrid,
  from: { row: number; column: number },
  gridBearingRad: number,
  eyeM: number,
  rules: HorizonRules,
): { tangent: number; reachM: number; broken: boolean } {
  const { rows, columns, heightsM, cellSizeM } = grid;
  const stepM = cellSizeM / 2;
  const east = Math.sin(gridBearingRad) / 2;
  const south = -Math.cos(gridBearingRad) / 2;
  const dropPerM2 = (1 - rules.refraction) / (2 * rules.earthRadiusM);
  const lastStep = Math.floor(rules.horizonReachM / stepM);
  const lastRow = rows - 1;
  const lastColumn = columns - 1;
  let tangent = Number.NEGATIVE_INFINITY;
  let reachM = 0;
  let unbroken = true;
  let broken = false;
  for (let step = 1; step <= lastStep; step++) {
    const row = from.row + south * step;
    const column = from.column + east * step;
    if (row < 0 || column < 0 || row > lastRow || column > lastColumn) break;
    const row0 = Math.min(row | 0, lastRow - 1);
    const column0 = Math.min(column | 0, lastColumn - 1);
    const at = row0 * columns + column0;
    const right = column - column0;
    const north = heightsM[at]! + (heightsM[at + 1]! - heightsM[at]!) * right;
    const below = at + columns;
    const southern = heightsM[below]! + (heightsM[below + 1]! - heightsM[below]!) * right;
    const heightM = north + (southern - north) * (row - row0);
    const distanceM = step * stepM;
    const candidate = (heightM - eyeM) / distanceM - distanceM * dropPerM2;
    if (candidate > tangent) tangent = candidate;
    if (Number.isNaN(heightM)) {
      unbroken = false;
    } else if (unbroken) {
      reachM = distanceM;
    } else {
      broken = true;
    }
  }
  return { tangent: tangent === Number.NEGATIVE_INFINITY ? 0 : tangent, reachM, broken };
}

/**
 * Skyline at any true bearing, linear between whole degrees.
 *
 * @returns degrees
 */
export function horizonAngleDeg(horizon: HorizonProfile, bearingDeg: number): number {
  const turned = ((bearingDeg % 360) + 360) % 360;
  const before = Math.floor(turned) % 360;
  const share = turned - Math.floor(turned);
  return horizon.angleDeg[before]! * (1 - share) + horizon.angleDeg[(before + 1) % 360]! * share;
}
