import type { Position } from "../geo/position.ts";
import { type ElevationGrid, elevationAt, placeOnGrid } from "./elevationGrid.ts";
import type { GroundTops } from "./groundTops.ts";
import { type SkylineRay, skylineAlong } from "./skylineRay.ts";

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
 * @param tops   tops of the same grid: lower ground is then passed over in tiles, with the same result in less time
 * @returns the profile, or null with the reason when the height of the place itself is unknown
 * @source curvature and refraction (1 - k) D^2 / 2R, k = 0.13: P. Yoeli, "The making of intervisibility maps with computer
 *   and plotter", Cartographica 22 (1985)
 */
export function horizonProfile(
  grid: ElevationGrid,
  position: Position,
  eyeHeightM: number,
  rules: HorizonRules,
  tops: GroundTops | null = null,
): HorizonResult {
  if (!(eyeHeightM >= 0)) throw new RangeError(`eyeHeightM must be 0 or more, found ${eyeHeightM}`);
  const place = placeOnGrid(grid, position);
  const groundM = elevationAt(grid, place.eastingM, place.northingM);
  if (groundM === null)
    return { horizon: null, why: "the site lies outside the elevation grid or on a void" };

  const angleDeg = new Float64Array(HORIZON_BEARINGS);
  const reachM = new Float64Array(HORIZON_BEARINGS);
  const brokenBearingsDeg: number[] = [];
  const ray: SkylineRay = {
    row: place.row,
    column: place.column,
    eyeM: groundM + eyeHeightM,
    reachM: rules.horizonReachM,
    dropPerM2: (1 - rules.refraction) / (2 * rules.earthRadiusM),
  };
  let likelyStep = 0;
  for (let bearing = 0; bearing < HORIZON_BEARINGS; bearing++) {
    const gridBearingRad = ((bearing - place.convergenceDeg) * Math.PI) / 180;
    const skyline = skylineAlong(grid, ray, gridBearingRad, tops, likelyStep);
    likelyStep = tops === null ? 0 : skyline.atStep;
    angleDeg[bearing] = (Math.atan(skyline.tangent) * 180) / Math.PI;
    reachM[bearing] = skyline.reachM;
    if (skyline.isBroken) brokenBearingsDeg.push(bearing);
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
