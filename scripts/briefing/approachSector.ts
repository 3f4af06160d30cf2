import type { Approach } from "../air/reachShare.ts";
import type { ApproachFile } from "../content/schema/siteSchema.ts";
import { normalizeDeg } from "../geo/bearings.ts";
import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";
import type { MapShape } from "./mapShapes.ts";
import { densified } from "./mapShapes.ts";

const STEP_M = 10;
const NO_BEARING_M = 1; // nearer than this a place is the site itself

/**
 * An approach as the air model wants it. A map feature it runs along gives the sector: all of the feature within the stated
 * distance, as seen from the site; it wins over bearings typed by hand.
 *
 * @returns null when the approach has neither bearings nor a feature within its distance
 */
export function approachOf(approach: ApproachFile, site: Position, shape: MapShape | null): Approach | null {
  const drawn = shape === null ? null : sectorOf(shape, site, approach.distanceM);
  const bearingsDeg = drawn ?? approach.bearingsDeg ?? null;
  if (bearingsDeg === null) return null;
  const named = approach.name === undefined ? {} : { name: approach.name };
  return { id: approach.id, bearingsDeg, distanceM: approach.distanceM, use: approach.use, ...named };
}

/** The narrowest sector that holds every part of a shape between two distances; null when no part lies there. */
export function sectorOf(
  shape: MapShape,
  site: Position,
  distanceM: readonly [number, number],
): [number, number] | null {
  const bearings = densified(shape, STEP_M)
    .map((position) => distanceAndBearing(site, position))
    .filter(
      (line) => line.distanceM >= Math.max(NO_BEARING_M, distanceM[0]) && line.distanceM <= distanceM[1],
    )
    .map((line) => normalizeDeg(line.bearingDeg))
    .sort((a, b) => a - b);
  const first = bearings[0];
  if (first === undefined) return null;
  let widestGapDeg = 0;
  let fromDeg = first;
  let toDeg = first;
  bearings.forEach((bearing, at) => {
    const next = bearings[(at + 1) % bearings.length] as number;
    const gapDeg = bearings.length === 1 ? 360 : normalizeDeg(next - bearing);
    if (gapDeg > widestGapDeg) {
      widestGapDeg = gapDeg;
      fromDeg = next;
      toDeg = bearing;
    }
  });
  return [fromDeg, toDeg];
}
