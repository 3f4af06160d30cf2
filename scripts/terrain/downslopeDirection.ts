// Facets of the 3 x 3 window (Tarboton 1997, table 1), as row and column offsets of the neighbour across a side and the one
// across a corner, with the quarter turn and the sense in which the angle of the facet runs. Angles count anticlockwise from east.
const FACETS: readonly (readonly [number, number, number, number, number, number])[] = [
  [0, 1, -1, 1, 0, 1],
  [-1, 0, -1, 1, 1, -1],
  [-1, 0, -1, -1, 1, 1],
  [0, -1, -1, -1, 2, -1],
  [0, -1, 1, -1, 2, 1],
  [1, 0, 1, -1, 3, -1],
  [1, 0, 1, 1, 3, 1],
  [0, 1, 1, 1, 4, -1],
];

/**
 * Direction of steepest descent from a cell (D-infinity): over the eight triangular facets around it, the steepest, along the
 * side of a facet where the gradient points outside it.
 *
 * @param heightsM   row-major metres
 * @returns grid bearing in degrees, clockwise from the top of the grid, 0 <= x < 360; null at the border, beside a void and
 *   where nothing lies lower
 * @source D. G. Tarboton, "A new method for the determination of flow directions and upslope areas in grid digital elevation
 *   models", Water Resources Research 33 (1997), 309-319, equations 1 to 5
 */
export function downslopeDirectionDeg(
  raster: { rows: number; columns: number; heightsM: Float32Array | Float64Array },
  row: number,
  column: number,
): number | null {
  const { rows, columns, heightsM } = raster;
  if (row < 1 || column < 1 || row > rows - 2 || column > columns - 2) return null;
  const e0 = heightsM[row * columns + column]!;
  let steepest = 0;
  let angleRad = 0;
  for (const [sideRow, sideColumn, cornerRow, cornerColumn, quarter, sense] of FACETS) {
    const e1 = heightsM[(row + sideRow) * columns + column + sideColumn]!;
    const e2 = heightsM[(row + cornerRow) * columns + column + cornerColumn]!;
    const s1 = e0 - e1;
    const s2 = e1 - e2;
    if (Number.isNaN(s1) || Number.isNaN(s2)) return null;
    let facetRad = Math.atan2(s2, s1);
    let slope = Math.sqrt(s1 * s1 + s2 * s2);
    if (facetRad < 0) {
      facetRad = 0;
      slope = s1;
    } else if (facetRad > Math.PI / 4) {
      facetRad = Math.PI / 4;
      slope = (e0 - e2) / Math.SQRT2;
    }
    if (slope > steepest) {
      steepest = slope;
      angleRad = sense * facetRad + (quarter * Math.PI) / 2;
    }
  }
  if (!(steepest > 0)) return null;
  return (450 - (angleRad * 180) / Math.PI) % 360;
}
