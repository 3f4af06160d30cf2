import { normalizeDeg, signedDifferenceDeg } from "../geo/bearings.ts";
import { legDistanceM, type PlanePoint } from "./seatPlane.ts";
import type { ShootingRules } from "./shootingRules.ts";

/** For each whole degree the nearest distance of what closes it; infinite where nothing does. */
export type BearingCover = Float64Array;

export function openCover(): BearingCover {
  return new Float64Array(360).fill(Number.POSITIVE_INFINITY);
}

const PIECE_MIN_M = 5;
const PIECES_PER_DISTANCE = 25;
const ROUNDING_DEG = 1e-6; // what a bearing loses on its way through the ellipsoid
const ON_THE_SEAT_M = 1;

/**
 * Half of what a protected thing closes on both sides of its bearing: `noShootMinHalfDeg`, or as much as keeps `noShootClearM` around
 * it clear when that is more. 180 at the seat itself.
 *
 * @example 15 degrees from 187 m on, 26.57 at 100 m, 45 at 50 m
 */
export function closedHalfDeg(
  distanceM: number,
  rules: Pick<ShootingRules, "noShootMinHalfDeg" | "noShootClearM">,
): number {
  if (distanceM < ON_THE_SEAT_M) return 180;
  const clearDeg = (Math.atan(rules.noShootClearM / distanceM) * 180) / Math.PI;
  return Math.max(rules.noShootMinHalfDeg, clearDeg);
}

/**
 * Closes the bearings of lines (or places) within a distance, both ends rounded outward to whole degrees.
 *
 * @param part   which parts of the lines count, by their nearest distance to the seat
 */
export function closeLines(
  cover: BearingCover,
  lines: readonly (readonly PlanePoint[])[],
  part: { fromM: number; toM: number },
  rules: Pick<ShootingRules, "noShootMinHalfDeg" | "noShootClearM">,
): void {
  for (const line of lines) {
    line.forEach((a, at) => {
      const b = line[at + 1] ?? (line.length === 1 ? a : null);
      if (b !== null && legDistanceM(a, b) <= part.toM) closeLeg(cover, a, b, part, rules);
    });
  }
}

/** Piece by piece, each so short that it is seen under few degrees. */
function closeLeg(
  cover: BearingCover,
  a: PlanePoint,
  b: PlanePoint,
  part: { fromM: number; toM: number },
  rules: Pick<ShootingRules, "noShootMinHalfDeg" | "noShootClearM">,
): void {
  const lengthM = Math.hypot(b.eastM - a.eastM, b.northM - a.northM);
  const pointAt = (alongM: number): PlanePoint => {
    const share = lengthM === 0 ? 0 : alongM / lengthM;
    return {
      eastM: a.eastM + (b.eastM - a.eastM) * share,
      northM: a.northM + (b.northM - a.northM) * share,
    };
  };
  let alongM = 0;
  let start = a;
  do {
    const stepM = Math.max(PIECE_MIN_M, Math.hypot(start.eastM, start.northM) / PIECES_PER_DISTANCE);
    alongM = Math.min(lengthM, alongM + stepM);
    const end = pointAt(alongM);
    const distanceM = legDistanceM(start, end);
    if (distanceM > part.fromM && distanceM <= part.toM) closePiece(cover, start, end, distanceM, rules);
    start = end;
  } while (alongM < lengthM);
}

function closePiece(
  cover: BearingCover,
  a: PlanePoint,
  b: PlanePoint,
  distanceM: number,
  rules: Pick<ShootingRules, "noShootMinHalfDeg" | "noShootClearM">,
): void {
  const halfDeg = closedHalfDeg(distanceM, rules);
  const aDeg = bearingOf(a);
  const turnDeg = signedDifferenceDeg(aDeg, bearingOf(b));
  const from = Math.floor(Math.min(aDeg, aDeg + turnDeg) - halfDeg + ROUNDING_DEG);
  const to = Math.ceil(Math.max(aDeg, aDeg + turnDeg) + halfDeg - ROUNDING_DEG);
  for (let deg = from; deg <= Math.min(to, from + 359); deg++) {
    const at = normalizeDeg(deg);
    if (distanceM < cover[at]!) cover[at] = distanceM;
  }
}

function bearingOf({ eastM, northM }: PlanePoint): number {
  return normalizeDeg((Math.atan2(eastM, northM) * 180) / Math.PI);
}
