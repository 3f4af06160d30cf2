import type { ContourLine } from "./contourLines.ts";

/** Where the height of a contour is written. */
export interface ContourLabel {
  eastingM: number;
  northingM: number;
  /** Grid bearing in which the figures are read; their tops then point to higher ground. */
  readsTowardDeg: number;
  /** Whether they stand upright on a north-up sheet; a lone north-facing slope has no place where they do. */
  isUpright: boolean;
}

export interface ContourLabelRules {
  /** Length of the figures on the ground. */
  labelLengthM: number;
  /** Least distance along the line between two labels. */
  spacingM: number;
  /** Straight distance over distance along the line, under the figures: 0 to 1. */
  leastStraightness: number;
}

/**
 * Places for the figures of a contour, tops towards high ground: the straightest stretches, those that read upright first.
 *
 * @returns labels from the best place down; none for a line that is too short or too crooked
 */
export function contourLabels(line: ContourLine, rules: ContourLabelRules): ContourLabel[] {
  const { labelLengthM, spacingM, leastStraightness } = rules;
  if (!(labelLengthM > 0)) throw new RangeError(`labelLengthM must be over 0, found ${labelLengthM}`);
  const along = lengthsAlong(line.pointsM);
  const totalM = along.at(-1) ?? 0;
  const candidates: { atM: number; score: number; label: ContourLabel }[] = [];
  for (let atM = labelLengthM; atM + labelLengthM <= totalM; atM += labelLengthM / 2) {
    const from = pointAlong(line.pointsM, along, atM - labelLengthM / 2);
    const to = pointAlong(line.pointsM, along, atM + labelLengthM / 2);
    const east = to.x - from.x;
    const north = to.y - from.y;
    const chordM = Math.hypot(east, north);
    if (!(chordM >= leastStraightness * labelLengthM)) continue;
    const middle = pointAlong(line.pointsM, along, atM);
    const readsTowardDeg = ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
    candidates.push({
      atM,
      score: chordM / labelLengthM + (east > 0 ? 1 : 0) + east / chordM / 2,
      label: { eastingM: middle.x, northingM: middle.y, readsTowardDeg, isUpright: east > 0 },
    });
  }
  candidates.sort((a, b) => b.score - a.score || a.atM - b.atM);
  const chosen: typeof candidates = [];
  for (const candidate of candidates) {
    if (chosen.length > 0 && !candidate.label.isUpright) break;
    const isFree = chosen.every((other) => {
      const gapM = Math.abs(candidate.atM - other.atM);
      return (line.isRing ? Math.min(gapM, totalM - gapM) : gapM) >= spacingM;
    });
    if (isFree) chosen.push(candidate);
  }
  return chosen.map((candidate) => candidate.label);
}

function lengthsAlong(points: Float64Array): Float64Array {
  const along = new Float64Array(points.length / 2);
  for (let at = 1; at < along.length; at++) {
    along[at] =
      along[at - 1]! +
      Math.hypot(points[2 * at]! - points[2 * at - 2]!, points[2 * at + 1]! - points[2 * at - 1]!);
  }
  return along;
}

function pointAlong(points: Float64Array, along: Float64Array, distanceM: number): { x: number; y: number } {
  let low = 0;
  let high = along.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (along[middle]! <= distanceM) low = middle;
    else high = middle;
  }
  const legM = along[high]! - along[low]!;
  const share = legM === 0 ? 0 : (distanceM - along[low]!) / legM;
  return {
    x: points[2 * low]! + (points[2 * high]! - points[2 * low]!) * share,
    y: points[2 * low + 1]! + (points[2 * high + 1]! - points[2 * low + 1]!) * share,
  };
}
