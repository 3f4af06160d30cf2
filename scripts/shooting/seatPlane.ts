import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";

/** Metres east and north (true) of a seat. */
export interface PlanePoint {
  eastM: number;
  northM: number;
}

/**
 * Positions as seen from a seat: distance and bearing of each are those of the ellipsoid; lines between them are straight, which
 * is good to centimetres over some kilometres.
 */
export function seatPlane(seat: Position): (position: Position) => PlanePoint {
  return (position) => {
    const { distanceM, bearingDeg } = distanceAndBearing(seat, position);
    const bearingRad = (bearingDeg * Math.PI) / 180;
    return { eastM: Math.sin(bearingRad) * distanceM, northM: Math.cos(bearingRad) * distanceM };
  };
}

/** Distance from the seat to the nearest point of a leg. */
export function legDistanceM(a: PlanePoint, b: PlanePoint): number {
  const { eastM, northM } = nearestOnLeg(a, b);
  return Math.hypot(eastM, northM);
}

/** Distance from the seat to the nearest point of lines; null when there is no point. A line of one point is a place. */
export function linesDistanceM(lines: readonly (readonly PlanePoint[])[]): number | null {
  const distances = lines.flatMap((line) =>
    line.map((point, at) => legDistanceM(point, line[at + 1] ?? point)),
  );
  return distances.length === 0 ? null : Math.min(...distances);
}

/** Whether the seat lies inside closed rings, by the even-odd rule: a ring inside a ring is a hole. */
export function isInside(rings: readonly (readonly PlanePoint[])[]): boolean {
  let inside = false;
  for (const ring of rings) {
    ring.forEach((a, at) => {
      const b = ring[at + 1];
      if (b === undefined || a.northM > 0 === b.northM > 0) return;
      if (a.eastM - (a.northM * (b.eastM - a.eastM)) / (b.northM - a.northM) > 0) inside = !inside;
    });
  }
  return inside;
}

function nearestOnLeg(a: PlanePoint, b: PlanePoint): PlanePoint {
  const east = b.eastM - a.eastM;
  const north = b.northM - a.northM;
  const length2 = east * east + north * north;
  const share = length2 === 0 ? 0 : -(a.eastM * east + a.northM * north) / length2;
  const at = Math.min(1, Math.max(0, share));
  return { eastM: a.eastM + east * at, northM: a.northM + north * at };
}
