import { contourLines } from "./contourLines.ts";
import { SIGHT } from "./sightRules.ts";
import { simplifyLine } from "./simplifyLine.ts";
import type { Viewshed } from "./viewshed.ts";

export interface OutlineRules {
  /** Greatest distance of the drawn line from the edge of the cells. */
  toleranceM: number;
  /** Islands and holes smaller than this are left out: the outline is a drawing, counts come from the marks. */
  leastAreaM2: number;
}

/**
 * Outline of the ground in view, for a map: closed rings, filled by the even-odd rule. Halfway between visible cells and all
 * others; unknown ground is outside. Cells that touch at a corner only stay apart.
 *
 * @returns rings of easting, northing, ..., first point repeated at the end; islands run counterclockwise, holes clockwise
 */
export function viewshedOutline(view: Viewshed, rules: OutlineRules): Float64Array[] {
  const rows = view.rows + 2;
  const columns = view.columns + 2;
  // Two values with one line of a whole step halfway between them.
  const heightsM = new Float32Array(rows * columns).fill(0.5);
  for (let row = 0; row < view.rows; row++) {
    for (let column = 0; column < view.columns; column++) {
      if (view.sight[row * view.columns + column] !== SIGHT.visible) continue;
      heightsM[(row + 1) * columns + column + 1] = 1.5;
    }
  }
  const { cellSizeM } = view;
  const framed = {
    rows,
    columns,
    heightsM,
    cellSizeM,
    westM: view.westM - cellSizeM,
    northM: view.northM + cellSizeM,
  };
  return contourLines(framed, { intervalM: 1, indexEvery: 1 })
    .filter((line) => Math.abs(signedAreaM2(line.pointsM)) >= rules.leastAreaM2)
    .map((line) => simplifyLine(line.pointsM, rules.toleranceM));
}

/** Area within a ring, positive when it runs counterclockwise with east right and north up. */
export function signedAreaM2(ring: Float64Array): number {
  const x0 = ring[0] ?? 0;
  const y0 = ring[1] ?? 0;
  let sum = 0;
  for (let at = 2; at < ring.length; at += 2) {
    sum += (ring[at - 2]! - x0) * (ring[at + 1]! - y0) - (ring[at]! - x0) * (ring[at - 1]! - y0);
  }
  return sum / 2;
}
