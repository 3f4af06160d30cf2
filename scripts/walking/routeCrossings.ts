import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";

/** A line on the map that a route may cross, such as a stream or a deer trail. */
export interface MapLine {
  id: string;
  points: readonly Position[];
}

export interface RouteCrossing {
  featureId: string;
  at: Position;
  /** Distance from the start of the route over the map. */
  alongM: number;
}

const SAME_PLACE_M = 1;
const CORNER_SHARE = 1e-9; // a meeting at a corner must not fall between two parts by rounding

/**
 * Where a route meets lines on the map, in the order walked. A touch counts; a meeting at a corner of either line counts
 * once. Lines are as drawn: what is not drawn is not found, and a stretch walked along a line is met only where the two
 * part or join.
 */
export function routeCrossings(route: readonly Position[], lines: readonly MapLine[]): RouteCrossing[] {
  const found: RouteCrossing[] = [];
  let startM = 0;
  for (let leg = 1; leg < route.length; leg++) {
    const from = route[leg - 1]!;
    const to = route[leg]!;
    for (const line of lines) {
      for (let part = 1; part < line.points.length; part++) {
        const at = meeting(from, to, line.points[part - 1]!, line.points[part]!);
        if (at)
          found.push({ featureId: line.id, at, alongM: startM + distanceAndBearing(from, at).distanceM });
      }
    }
    startM += distanceAndBearing(from, to).distanceM;
  }
  found.sort((a, b) => a.alongM - b.alongM);
  return found.filter((crossing, at) => !found.slice(0, at).some((before) => isSame(before, crossing)));
}

function isSame(a: RouteCrossing, b: RouteCrossing): boolean {
  return a.featureId === b.featureId && Math.abs(a.alongM - b.alongM) < SAME_PLACE_M;
}

/** Where two straight parts meet. Meeting is the same in degrees as in metres: the two differ by a stretch of the axes. */
function meeting(a: Position, b: Position, c: Position, d: Position): Position | null {
  const [abLat, abLon] = [b.lat - a.lat, eastDeg(a, b)];
  const [cdLat, cdLon] = [d.lat - c.lat, eastDeg(c, d)];
  const [acLat, acLon] = [c.lat - a.lat, eastDeg(a, c)];
  const cross = abLat * cdLon - abLon * cdLat;
  if (cross === 0) return null;
  const alongAb = (acLat * cdLon - acLon * cdLat) / cross;
  const alongCd = (acLat * abLon - acLon * abLat) / cross;
  const isOn = (share: number) => share >= -CORNER_SHARE && share <= 1 + CORNER_SHARE;
  if (!isOn(alongAb) || !isOn(alongCd)) return null;
  return { lat: a.lat + alongAb * abLat, lon: ((a.lon + alongAb * abLon + 540) % 360) - 180 };
}

/** Degrees of longitude from a to b, the short way. */
function eastDeg(a: Position, b: Position): number {
  return ((((b.lon - a.lon + 180) % 360) + 360) % 360) - 180;
}
