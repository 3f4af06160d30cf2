export interface HeightRaster {
  rows: number;
  columns: number;
  /** Row-major; NaN where not known. */
  heightsM: Float32Array | Float64Array;
}

/** Whole intervals at or below each height, framed by voids so that a neighbour is never missing. */
export interface ContourSteps {
  /** Cells of a framed row: the void after its last column also stands before the first of the next row. */
  stride: number;
  /** Place of row r and column c: (r + 1) x stride + c. */
  steps: Int32Array;
  /** Least step of a contour, and the greatest; least above greatest when there is none. */
  first: number;
  last: number;
  /** Edges that the contour of a step crosses: 2 x place for the edge to the east, 2 x place + 1 for the edge to the south. */
  edgesAt: (step: number) => Int32Array;
  /** Those of them that have no square on one side: a border or a void. */
  openEdgesAt: (step: number) => readonly number[];
}

/** Stands for the steps of a void: below every other. */
export const VOID_STEP = -2147483648;

/** Sorts the edges between cells by the contours that cross them. Counts first, so that all lists are stretches of one array. */
export function contourSteps(raster: HeightRaster, intervalM: number): ContourSteps {
  const { rows, columns, heightsM } = raster;
  const stride = columns + 1;
  const steps = new Int32Array((rows + 2) * stride + 1).fill(VOID_STEP);
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < rows; row++) {
    const framed = (row + 1) * stride;
    for (let column = 0; column < columns; column++) {
      const heightM = heightsM[row * columns + column]!;
      if (Number.isNaN(heightM)) continue;
      const step = Math.floor(heightM / intervalM);
      steps[framed + column] = step;
      if (step < least) least = step;
      if (step > most) most = step;
    }
  }
  if (!(most > least)) {
    return { stride, steps, first: 0, last: -1, edgesAt: () => new Int32Array(0), openEdgesAt: () => [] };
  }
  const ends = new Int32Array(most - least);
  countCrossings(steps, stride, least + 1, ends);
  for (let at = 1; at < ends.length; at++) ends[at]! += ends[at - 1]!;
  const edges = new Int32Array(ends.at(-1)!);
  const open = new Map<number, number[]>();
  listCrossings(steps, stride, least + 1, { ends, edges, open });
  return {
    stride,
    steps,
    first: least + 1,
    last: most,
    edgesAt: (step) => edges.subarray(ends[step - least - 1]!, ends[step - least] ?? edges.length),
    openEdgesAt: (step) => open.get(step) ?? [],
  };
}

function countCrossings(steps: Int32Array, stride: number, first: number, counts: Int32Array): void {
  const end = steps.length - stride - 1;
  for (let at = stride; at < end; at++) {
    const here = steps[at]!;
    if (here === VOID_STEP) continue;
    for (let side = 0; side < 2; side++) {
      const there = steps[side === 0 ? at + 1 : at + stride]!;
      if (there === here || there === VOID_STEP) continue;
      const high = Math.max(there, here);
      for (let step = Math.min(there, here) + 1; step <= high; step++) counts[step - first]!++;
    }
  }
}

interface CrossingLists {
  /** Where the list of each step ends; where it begins once it is filled, from the end backwards. */
  ends: Int32Array;
  edges: Int32Array;
  open: Map<number, number[]>;
}

function listCrossings(steps: Int32Array, stride: number, first: number, lists: CrossingLists): void {
  const { ends, edges, open } = lists;
  const end = steps.length - stride - 1;
  for (let at = stride; at < end; at++) {
    const here = steps[at]!;
    if (here === VOID_STEP) continue;
    for (let side = 0; side < 2; side++) {
      const along = side === 0 ? 1 : stride;
      const there = steps[at + along]!;
      if (there === here || there === VOID_STEP) continue;
      const across = side === 0 ? stride : 1;
      const isOpen =
        steps[at - across] === VOID_STEP ||
        steps[at - across + along] === VOID_STEP ||
        steps[at + across] === VOID_STEP ||
        steps[at + across + along] === VOID_STEP;
      const edge = 2 * at + side;
      const high = Math.max(there, here);
      for (let step = Math.min(there, here) + 1; step <= high; step++) {
        edges[--ends[step - first]!] = edge;
        if (!isOpen) continue;
        const known = open.get(step);
        if (known === undefined) open.set(step, [edge]);
        else known.push(edge);
      }
    }
  }
}
