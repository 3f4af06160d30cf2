/** Which holes may be filled; see `data/model.json`. */
export interface HoleRules {
  /** Most cells of one hole. */
  holeCellsMax: number;
  /** Holes that may be filled must together be under this share of all cells, 0 to 1. */
  holeShareMax: number;
}

/**
 * Fills small holes from the ground around them and marks what was filled. A hole is a group of void cells that touch by a
 * side or a corner. One that reaches the edge has ground on one side only and stays void, as does a larger one, and all of
 * them when they add up to too much of the grid. The filled surface is smooth and never above or below the rim of its hole;
 * on a plane it is the plane.
 *
 * @param heightsM   row-major metres, NaN where void; not changed
 * @returns          new heights, `filled` 1 where a cell was filled (null when none was), and how many
 */
export function fillHoles(
  raster: { rows: number; columns: number; heightsM: Float32Array },
  rules: HoleRules,
): { heightsM: Float32Array; filled: Uint8Array | null; filledCells: number } {
  const holes = smallHoles(raster, rules.holeCellsMax);
  const filledCells = holes.reduce((sum, hole) => sum + hole.length, 0);
  if (filledCells === 0 || filledCells >= rules.holeShareMax * raster.heightsM.length) {
    return { heightsM: raster.heightsM, filled: null, filledCells: 0 };
  }
  const heightsM = raster.heightsM.slice();
  const filled = new Uint8Array(heightsM.length);
  for (const hole of holes) {
    fillHole(heightsM, raster.columns, hole);
    for (const at of hole) filled[at] = 1;
  }
  return { heightsM, filled, filledCells };
}

function smallHoles(
  raster: { rows: number; columns: number; heightsM: Float32Array },
  cellsMax: number,
): number[][] {
  const { rows, columns, heightsM } = raster;
  const seen = new Uint8Array(heightsM.length);
  const holes: number[][] = [];
  for (let start = 0; start < heightsM.length; start++) {
    if (seen[start] === 1 || !Number.isNaN(heightsM[start]!)) continue;
    const cells = [start];
    seen[start] = 1;
    let enclosed = true;
    for (let next = 0; next < cells.length; next++) {
      const row = Math.floor(cells[next]! / columns);
      const column = cells[next]! % columns;
      if (row === 0 || column === 0 || row === rows - 1 || column === columns - 1) enclosed = false;
      for (let r = Math.max(row - 1, 0); r <= Math.min(row + 1, rows - 1); r++) {
        for (let c = Math.max(column - 1, 0); c <= Math.min(column + 1, columns - 1); c++) {
          const at = r * columns + c;
          if (seen[at] === 1 || !Number.isNaN(heightsM[at]!)) continue;
          seen[at] = 1;
          cells.push(at);
        }
      }
    }
    if (enclosed && cells.length <= cellsMax) holes.push(cells);
  }
  return holes;
}

const MILLIMETRE = 0.001;

/** Every cell of the hole becomes the mean of its four neighbours (Laplace's equation, by relaxation). */
function fillHole(heightsM: Float32Array, columns: number, hole: readonly number[]): void {
  const values = new Map<number, number>();
  const rim = new Set(
    hole.flatMap((at) => [at - 1, at + 1, at - columns, at + columns]).filter((at) => !hole.includes(at)),
  );
  const start = [...rim].reduce((sum, at) => sum + heightsM[at]!, 0) / rim.size;
  for (const at of hole) values.set(at, start);
  const valueAt = (at: number): number => values.get(at) ?? heightsM[at]!;
  let largestStep = Number.POSITIVE_INFINITY;
  while (largestStep > MILLIMETRE / 100) {
    largestStep = 0;
    for (const at of hole) {
      const mean = (valueAt(at - 1) + valueAt(at + 1) + valueAt(at - columns) + valueAt(at + columns)) / 4;
      largestStep = Math.max(largestStep, Math.abs(mean - values.get(at)!));
      values.set(at, mean);
    }
  }
  for (const at of hole) heightsM[at] = values.get(at)!;
}
