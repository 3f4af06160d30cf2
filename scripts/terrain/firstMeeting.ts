import { type ElevationGrid, interpolate } from "./elevationGrid.ts";

/** A straight line over the grid, by horizontal distance. */
export interface GroundLine {
  row: number;
  column: number;
  southPerM: number;
  eastPerM: number;
  /** Elevation at distance 0. */
  startM: number;
  fallPerM: number;
}

export type Meeting =
  | { kind: "met"; distanceM: number; risePerM: number }
  | { kind: "unknown"; distanceM: number }
  | { kind: "none" };

// Crossings nearer together than this are one.
const SAME_PLACE_M = 1e-9;

/**
 * First distance at which a line is on or under the bilinear ground. Between two crossings of the grid's row and column lines the
 * ground along the line is a parabola, known by three heights, so that the meeting is the root of a quadratic.
 */
export function firstMeeting(
  grid: ElevationGrid,
  line: GroundLine,
  startsAtM: number,
  reachM: number,
): Meeting {
  const groundM = (distanceM: number): number =>
    interpolate(grid, line.row + line.southPerM * distanceM, line.column + line.eastPerM * distanceM);
  let from = startsAtM;
  let fromM = groundM(from);
  while (from < reachM) {
    if (Number.isNaN(fromM)) return { kind: "unknown", distanceM: from };
    const to = Math.min(
      reachM,
      nextCrossing(line.row, line.southPerM, from),
      nextCrossing(line.column, line.eastPerM, from),
    );
    const span = to - from;
    const middleM = groundM(from + span / 2);
    const toM = groundM(to);
    if (Number.isNaN(middleM)) return { kind: "unknown", distanceM: from };
    // Clearance of the line over the ground: a + b s + c s^2, s from 0 to 1.
    const lineM = line.startM - line.fallPerM * from;
    const end = Number.isNaN(toM) ? 2 * middleM - fromM : toM;
    const c = -(2 * fromM - 4 * middleM + 2 * end);
    const b = -line.fallPerM * span - (-3 * fromM + 4 * middleM - end);
    const s = firstRoot(lineM - fromM, b, c);
    if (s !== null) {
      const rise = (-3 * fromM + 4 * middleM - end + 2 * s * (2 * fromM - 4 * middleM + 2 * end)) / span;
      return { kind: "met", distanceM: from + s * span, risePerM: rise };
    }
    if (Number.isNaN(toM)) return { kind: "unknown", distanceM: to };
    from = to;
    fromM = toM;
  }
  return { kind: "none" };
}

/** Distance at which a coordinate next becomes a whole number. */
function nextCrossing(start: number, perM: number, afterM: number): number {
  if (perM === 0) return Number.POSITIVE_INFINITY;
  const here = start + perM * (afterM + SAME_PLACE_M);
  const line = perM > 0 ? Math.floor(here) + 1 : Math.ceil(here) - 1;
  return Math.max((line - start) / perM, afterM + SAME_PLACE_M);
}

/** Least s in 0 to 1 at which a + b s + c s^2 is 0 or less; null when it stays over 0. */
function firstRoot(a: number, b: number, c: number): number | null {
  if (a <= 0) return 0;
  if (c === 0) return b < 0 && -a / b <= 1 ? -a / b : null;
  const inside = b * b - 4 * a * c;
  if (inside < 0) return null;
  // The form that does not subtract near equals.
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(inside));
  const roots = [q / c, q === 0 ? Number.NaN : a / q].filter((s) => s > 0 && s <= 1);
  return roots.length === 0 ? null : Math.min(...roots);
}
