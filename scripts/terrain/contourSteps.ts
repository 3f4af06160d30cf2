export interface HeightRaster {
  rows: number;
  columns: number;
  /** Row-major; NaN where not known. */
  heightsM: Float32Array | Float64Array;
}

/** How many contours lie at or below each height, framed by voids so that a neighbour is never missing. */
export interface ContourSteps {
  /** Cells of a framed row: the void after its last column also stands before the first of the next row. */
  stride: number;
  /** Place of row r and column c: (r + 1) x stride + c. 0 is a void, 1 lies under all contours. */
  counts: Uint16Array;
  /** Whole intervals over sea level of the lowest contour: those of a contour are this plus its number, from 0. */
  firstStep: number;
  contours: number;
  /** Edges that a contour crosses: 2 x place for the edge to the east, 2 x place + 1 for the edge to the south. */
  edgesOf: (contour: number) => Int32Array;
  /** Those of them that have no square on one side: a border or a void. */
  openEdgesOf: (contour: number) => readonly number[];
}

const CONTOURS_MAX = 65534;

/**
 * Sorts the edges between cells by the contours that cross them. Counts first, so that all lists are stretches of one array.
 *
 * @throws {RangeError} when the interval is so small that there are more than 65 534 contours
 */
export function contourSteps(raster: HeightRaster, intervalM: number): ContourSteps {
  const { rows, columns, heightsM } = raster;
  let lowestM = Number.POSITIVE_INFINITY;
  let highestM = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < heightsM.length; at++) {
    const heightM = heightsM[at]!;
    if (heightM < lowestM) lowestM = heightM;
    if (heightM > highestM) highestM = heightM;
  }
  const base = Math.floor(lowestM / intervalM);
  const contours = highestM >= lowestM ? Math.floor(highestM / intervalM) - base : 0;
  if (contours > CONTOURS_MAX) {
    throw new RangeError(`intervalM must leave at most ${CONTOURS_MAX} contours, found ${contours}`);
  }
  const stride = columns + 1;
  const counts = new Uint16Array(contours === 0 ? 0 : (rows + 2) * stride + 1);
  const ends = new Int32Array(contours);
  if (contours > 0) countCrossings(raster, intervalM, base, counts, ends);
  for (let at = 1; at < ends.length; at++) ends[at]! += ends[at - 1]!;
  const edges = new Int32Array(ends.at(-1) ?? 0);
  const open = new Map<number, number[]>();
  listCrossings(counts, stride, { ends, edges, open });
  return {
    stride,
    counts,
    firstStep: base + 1,
    contours,
    edgesOf: (contour) => edges.subarray(ends[contour]!, ends[contour + 1] ?? edges.length),
    openEdgesOf: (contour) => open.get(contour) ?? [],
  };
}

/** Fills in the counts of the cells, and how many edges each contour crosses. */
function countCrossings(
  { rows, columns, heightsM }: HeightRaster,
  intervalM: number,
  base: number,
  counts: Uint16Array,
  crossings: Int32Array,
): void {
  const stride = columns + 1;
  for (let row = 0; row < rows; row++) {
    const framed = (row + 1) * stride;
    let west = 0;
    for (let column = 0; column < columns; column++) {
      const heightM = heightsM[row * columns + column]!;
      if (Number.isNaN(heightM)) {
        west = 0;
        continue;
      }
      const here = Math.floor(heightM / intervalM) - base + 1;
      const at = framed + column;
      counts[at] = here;
      if (west !== here && west !== 0) {
        const high = Math.max(west, here);
        for (let count = Math.min(west, here); count < high; count++) crossings[count - 1]!++;
      }
      const north = counts[at - stride]!;
      if (north !== here && north !== 0) {
        const high = Math.max(north, here);
        for (let count = Math.min(north, here); count < high; count++) crossings[count - 1]!++;
      }
      west = here;
    }
  }
}

interface CrossingLists {
  /** Where the list of each contour ends; where it begins once it is filled, from the end backwards. */
  ends: Int32Array;
  edges: Int32Array;
  open: Map<number, number[]>;
}

function listCrossings(counts: Uint16Array, stride: number, lists: CrossingLists): void {
  const end = counts.length - stride - 1;
  for (let at = stride; at < end; at++) {
    const here = counts[at]!;
    if (here === 0) continue;
    const east = counts[at + 1]!;
    if (east !== here && east !== 0) list(counts, at, here, east, 0, stride, lists);
    const south = counts[at + stride]!;
    if (south !== here && south !== 0) list(counts, at, here, south, 1, stride, lists);
  }
}

/** Lists one edge under each contour that crosses it. */
function list(
  counts: Uint16Array,
  at: number,
  here: number,
  there: number,
  side: 0 | 1,
  stride: number,
  lists: CrossingLists,
): void {
  const { ends, edges, open } = lists;
  const along = side === 0 ? 1 : stride;
  const across = side === 0 ? stride : 1;
  const isOpen =
    counts[at - across] === 0 ||
    counts[at - across + along] === 0 ||
    counts[at + across] === 0 ||
    counts[at + across + along] === 0;
  const edge = 2 * at + side;
  const high = Math.max(here, there);
  for (let count = Math.min(here, there); count < high; count++) {
    const contour = count - 1;
    edges[--ends[contour]!] = edge;
    if (!isOpen) continue;
    const known = open.get(contour);
    if (known === undefined) open.set(contour, [edge]);
    else known.push(edge);
  }
}
