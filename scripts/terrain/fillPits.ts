/**
 * Raises every pit of a surface until it drains: priority flood from the edge of the grid and of its voids inward, each cell
 * at least `epsilonM` over the one it drains to, so that flats get a way out too.
 *
 * @param heightsM   row-major metres, NaN where void
 * @returns new heights, every known cell with a lower neighbour or at the edge; and how many cells were raised
 * @source Barnes, Lehman and Mulla, "Priority-flood", Computers & Geosciences 62 (2014), 117-127, algorithm 3
 */
export function fillPits(
  raster: { rows: number; columns: number; heightsM: Float32Array | Float64Array },
  epsilonM: number,
): { heightsM: Float64Array; raisedCells: number } {
  const { rows, columns } = raster;
  const heightsM = Float64Array.from(raster.heightsM);
  const seen = new Uint8Array(heightsM.length);
  const queue = lowestFirst(heightsM);
  for (let at = 0; at < heightsM.length; at++) {
    if (Number.isNaN(heightsM[at]!)) {
      seen[at] = 1;
    } else if (isOutlet(heightsM, rows, columns, at)) {
      seen[at] = 1;
      queue.push(at);
    }
  }
  let raisedCells = 0;
  for (let at = queue.pop(); at !== -1; at = queue.pop()) {
    const row = Math.floor(at / columns);
    const column = at % columns;
    const leastM = heightsM[at]! + epsilonM;
    for (let r = Math.max(row - 1, 0); r <= Math.min(row + 1, rows - 1); r++) {
      for (let c = Math.max(column - 1, 0); c <= Math.min(column + 1, columns - 1); c++) {
        const next = r * columns + c;
        if (seen[next] === 1) continue;
        seen[next] = 1;
        if (heightsM[next]! < leastM) {
          heightsM[next] = leastM;
          raisedCells++;
        }
        queue.push(next);
      }
    }
  }
  return { heightsM, raisedCells };
}

function isOutlet(heightsM: Float64Array, rows: number, columns: number, at: number): boolean {
  const row = Math.floor(at / columns);
  const column = at % columns;
  if (row === 0 || column === 0 || row === rows - 1 || column === columns - 1) return true;
  for (let r = row - 1; r <= row + 1; r++) {
    for (let c = column - 1; c <= column + 1; c++) {
      if (Number.isNaN(heightsM[r * columns + c]!)) return true;
    }
  }
  return false;
}

/** Binary heap of cells, lowest height first; -1 when empty. Heights must not change while a cell is in it. */
function lowestFirst(heightsM: Float64Array): { push: (cell: number) => void; pop: () => number } {
  const heap = new Int32Array(heightsM.length);
  let size = 0;
  return {
    push(cell) {
      let at = size++;
      while (at > 0) {
        const parent = (at - 1) >> 1;
        if (heightsM[heap[parent]!]! <= heightsM[cell]!) break;
        heap[at] = heap[parent]!;
        at = parent;
      }
      heap[at] = cell;
    },
    pop() {
      if (size === 0) return -1;
      const top = heap[0]!;
      const last = heap[--size]!;
      let at = 0;
      for (;;) {
        let child = 2 * at + 1;
        if (child >= size) break;
        if (child + 1 < size && heightsM[heap[child + 1]!]! < heightsM[heap[child]!]!) child++;
        if (heightsM[heap[child]!]! >= heightsM[last]!) break;
        heap[at] = heap[child]!;
        at = child;
      }
      heap[at] = last;
      return top;
    },
  };
}
