import { normalizeDeg } from "./bearings.ts";

/** The 16 points clockwise from north, 22.5 degrees apart. */
export const COMPASS_POINTS = [
  "N",
  "NNE",
  "NE",
  "ENE",
  "E",
  "ESE",
  "SE",
  "SSE",
  "S",
  "SSW",
  "SW",
  "WSW",
  "W",
  "WNW",
  "NW",
  "NNW",
] as const;

export type CompassPoint = (typeof COMPASS_POINTS)[number];

/**
 * The point whose 22.5 degree sector holds the bearing; a bearing on an edge belongs to the clockwise neighbour.
 *
 * @example compassPoint(11.25) // "NNE"
 */
export function compassPoint(bearingDeg: number): CompassPoint {
  return COMPASS_POINTS[Math.floor(normalizeDeg(bearingDeg + 11.25) / 22.5)]!;
}

/** Bearing of the middle of a point, 0 to 337.5. */
export function pointBearingDeg(point: CompassPoint): number {
  return COMPASS_POINTS.indexOf(point) * 22.5;
}
