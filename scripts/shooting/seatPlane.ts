import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";

/** Metres east and north (true) of a seat. */
export interface PlanePoint {
  eastM: number;
  northM: number;
}

export type PlaneLines = readonly (readonly PlanePoint[])[];

/** Positions as places on the plane of one seat; each position is worked out once. */
export type ToPlane = (position: Position) => PlanePoint;

/**
 * Positions as seen from a seat: distance and bearing of each are those of the ellipsoid; lines between them are straight, which
 * is good to centimetres over some kilometres.
 */
export function seatPlane(seat: Position): ToPlane {
  const known = new Map<Position, PlanePoint>();
  return (position) => {
    let point = known.get(position);
    if (point === undefined) {
      const { distanceM, bearingDeg } = distanceAndBearing(seat, position);
      const bearingRad = (bearingDeg * Math.PI) / 180;
      point = { eastM: Math.sin(bearingRad) * distanceM, northM: Math.cos(bearingRad) * distanceM };
      known.set(position, point);
    }
    return point;
  };
}

const SEAT: PlanePoint = { eastM: 0, northM: 0 };

/** Distance from a point (the seat) to the nearest point of a leg. */
export function legDistanceM(a: PlanePoint, b: PlanePoint, from: PlanePoint = SEAT): number {
  const east = b.eastM - a.eastM;
  const north = b.northM - a.northM;
  const toEast = from.eastM - a.eastM;
  const toNorth = from.northM - a.northM;
  const length2 = east * east + north * north;
  const share = length2 === 0 ? 0 : Math.min(1, Math.max(0, (toEast * east + toNorth * north) / length2));
  return Math.hypot(toEast - east * share, toNorth - north * share);
}

/** Distance from a point (the seat) to lines; infinite when they have no point. A line of one point is a place. */
export function linesDistanceM(lines: PlaneLines, from: PlanePoint = SEAT): number {
  let leastM = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    for (let at = 0; at < line.length; at++) {
      if (at > 0 && at === line.length - 1) break;
      const a = line[at]!;
      leastM = Math.min(leastM, legDistanceM(a, line[at + 1] ?? a, from));
    }
  }
  return leastM;
}

/** Whether a point (the seat) lies inside closed rings, by the even-odd rule: a ring inside a ring is a hole. */
export function isInside(rings: PlaneLines, from: PlanePoint = SEAT): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let at = 1; at < ring.length; at++) {
      const a = ring[at - 1]!;
      const b = ring[at]!;
      if (a.northM > from.northM === b.northM > from.northM) continue;
      const share = (from.northM - a.northM) / (b.northM - a.northM);
      if (a.eastM + share * (b.eastM - a.eastM) > from.eastM) inside = !inside;
    }
  }
  return inside;
}

/**
 * Distance from a point to the line around closed rings: positive inside them, negative outside, minus infinite without a ring.
 */
export function insideDistanceM(rings: PlaneLines, from: PlanePoint = SEAT): number {
  const distanceM = linesDistanceM(rings, from);
  return isInside(rings, from) ? distanceM : -distanceM;
}
