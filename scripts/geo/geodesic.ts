import geographicLib from "geographiclib-geodesic";
import { normalizeDeg } from "./bearings.ts";
import { checkedPosition, type Position } from "./position.ts";

const wgs84 = geographicLib.Geodesic.WGS84;

/** The straight line between two places on the ellipsoid; bearings are true, 0 <= x < 360. */
export interface GeodesicLine {
  distanceM: number;
  bearingDeg: number;
  /** Bearing at b back to a: over long distances not simply the opposite of `bearingDeg`. */
  backBearingDeg: number;
}

/**
 * Shortest line from a to b on the WGS 84 ellipsoid, at height 0. Two equal positions have no bearing: the distance is
 * 0 and the bearings, 0 and 180, mean nothing.
 *
 * @source Karney 2013, Algorithms for geodesics, J. Geodesy 87:43
 */
export function distanceAndBearing(a: Position, b: Position): GeodesicLine {
  checkedPosition(a);
  checkedPosition(b);
  const { s12, azi1, azi2 } = wgs84.Inverse(a.lat, a.lon, b.lat, b.lon);
  if (s12 === undefined || azi1 === undefined || azi2 === undefined) {
    throw new RangeError(`no line from ${a.lat}, ${a.lon} to ${b.lat}, ${b.lon}`);
  }
  if (s12 === 0) return { distanceM: 0, bearingDeg: 0, backBearingDeg: 180 };
  return { distanceM: s12, bearingDeg: normalizeDeg(azi1), backBearingDeg: normalizeDeg(azi2 + 180) };
}

/**
 * The place a distance away along a true bearing, on the WGS 84 ellipsoid at height 0.
 *
 * @param distanceM   0 or more
 * @throws {RangeError} when the distance is negative or not a number
 * @source Karney 2013, Algorithms for geodesics, J. Geodesy 87:43
 */
export function destination(a: Position, bearingDeg: number, distanceM: number): Position {
  checkedPosition(a);
  if (!(distanceM >= 0 && Number.isFinite(distanceM))) {
    throw new RangeError(`distanceM must be 0 or more, found ${distanceM}`);
  }
  const { lat2, lon2 } = wgs84.Direct(a.lat, a.lon, normalizeDeg(bearingDeg), distanceM);
  if (lat2 === undefined || lon2 === undefined) {
    throw new RangeError(`no place ${distanceM} m from ${a.lat}, ${a.lon}`);
  }
  return { lat: lat2, lon: lon2 };
}
