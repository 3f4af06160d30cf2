/**
 * A line with fewer points that stays within a distance of the line given. Keeps both ends; a ring stays a ring of at least three
 * points. Lines that lay closer together than twice the distance may cross afterwards.
 *
 * @param points      x, y, x, y ...; a ring repeats its first point at the end
 * @param tolerance   greatest distance of a dropped point from the new line, in the unit of the points; 0 drops only points on
 *   straight stretches
 * @source D. H. Douglas and T. K. Peucker, "Algorithms for the reduction of the number of points required to represent a
 *   digitized line or its caricature", The Canadian Cartographer 10 (1973)
 */
export function simplifyLine(points: Float64Array, tolerance: number): Float64Array {
  if (!(tolerance >= 0)) throw new RangeError(`tolerance must be 0 or more, found ${tolerance}`);
  const count = points.length / 2;
  if (count < 3) return points.slice();
  const keep = new Uint8Array(count);
  keep[0] = 1;
  keep[count - 1] = 1;
  const isRing = points[0] === points[points.length - 2] && points[1] === points[points.length - 1];
  if (isRing) {
    // The two halves of a ring end at its first point and at the one farthest from it; a third point keeps it from folding flat.
    const far = farthest(points, 0, count - 1).at;
    keep[far] = 1;
    keepWithin(points, 0, far, tolerance, keep);
    keepWithin(points, far, count - 1, tolerance, keep);
    if (keep.reduce((sum, kept) => sum + kept, 0) < 4) {
      const [before, after] = [farthest(points, 0, far), farthest(points, far, count - 1)];
      keep[before.distance >= after.distance ? before.at : after.at] = 1;
    }
  } else {
    keepWithin(points, 0, count - 1, tolerance, keep);
  }
  const kept = new Float64Array(2 * keep.reduce((sum, isKept) => sum + isKept, 0));
  let length = 0;
  for (let at = 0; at < count; at++) {
    if (keep[at] !== 1) continue;
    kept[length++] = points[2 * at]!;
    kept[length++] = points[2 * at + 1]!;
  }
  return kept;
}

/** Marks the points between two that must stay. A list of stretches instead of recursion: a contour may have 100 000 points. */
function keepWithin(
  points: Float64Array,
  from: number,
  to: number,
  tolerance: number,
  keep: Uint8Array,
): void {
  const stretches = [from, to];
  while (stretches.length > 0) {
    const last = stretches.pop()!;
    const first = stretches.pop()!;
    if (last - first < 2) continue;
    const { at, distance } = farthest(points, first, last);
    if (distance <= tolerance) continue;
    keep[at] = 1;
    stretches.push(first, at, at, last);
  }
}

/** The point between two others that lies farthest from the straight stretch that joins them. */
function farthest(points: Float64Array, first: number, last: number): { at: number; distance: number } {
  const x = points[2 * first]!;
  const y = points[2 * first + 1]!;
  const dx = points[2 * last]! - x;
  const dy = points[2 * last + 1]! - y;
  const length2 = dx * dx + dy * dy;
  let at = Math.min(first + 1, last);
  let most = -1;
  for (let k = first + 1; k < last; k++) {
    const px = points[2 * k]! - x;
    const py = points[2 * k + 1]! - y;
    const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length2));
    const ax = px - along * dx;
    const ay = py - along * dy;
    const distance2 = ax * ax + ay * ay;
    if (distance2 > most) {
      most = distance2;
      at = k;
    }
  }
  return { at, distance: Math.sqrt(Math.max(most, 0)) };
}
