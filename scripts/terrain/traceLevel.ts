import type { ContourSteps, HeightRaster } from "./contourSteps.ts";

export interface LevelTrace {
  raster: HeightRaster & { westM: number; northM: number; cellSizeM: number };
  steps: ContourSteps;
  /** Number of the contour, from 0. */
  contour: number;
  heightM: number;
  /** By edge, 1 + the number of the contour that passed it last; written to. */
  visited: Uint16Array;
}

// Headings, clockwise.
const NORTH = 0;
const EAST = 1;
const SOUTH = 2;
const WEST = 3;

/**
 * Follows the lines of one height from square to square with the higher ground on the left: first the open ones from where they
 * start at a border or void, then the rings.
 *
 * @param found   called with easting, northing, easting, northing ... of a line, an array that is the caller's to keep
 */
export function traceLevel(task: LevelTrace, found: (pointsM: Float64Array, isRing: boolean) => void): void {
  const { raster, steps, contour, heightM, visited } = task;
  const { columns, heightsM, westM, northM, cellSizeM } = raster;
  const { counts, stride } = steps;
  const edges = steps.edgesOf(contour);
  const mark = contour + 1;
  // A cell lies above the contour when its count is over this.
  const below = contour + 1;
  let points = new Float64Array(1024);
  let length = 0;

  for (const edge of steps.openEdgesOf(contour)) {
    if (visited[edge] !== mark && !isKnown(squareBefore(edge, headingAt(edge) ^ 2))) follow(edge);
  }
  for (let k = 0; k < edges.length; k++) {
    if (visited[edges[k]!] !== mark) follow(edges[k]!);
  }

  /** Which way a line passes an edge: the higher end lies on the left. */
  function headingAt(edge: number): number {
    const isHigh = counts[edge >> 1]! > below;
    return (edge & 1) === 0 ? (isHigh ? NORTH : SOUTH) : isHigh ? EAST : WEST;
  }

  /** Place of the north-west corner of the square that a heading leads into from an edge. */
  function squareBefore(edge: number, heading: number): number {
    const at = edge >> 1;
    return heading === NORTH ? at - stride : heading === WEST ? at - 1 : at;
  }

  function isKnown(square: number): boolean {
    return (
      counts[square] !== 0 &&
      counts[square + 1] !== 0 &&
      counts[square + stride] !== 0 &&
      counts[square + stride + 1] !== 0
    );
  }

  function follow(start: number): void {
    let edge = start;
    let heading = headingAt(start);
    let square = squareBefore(start, heading);
    let row = Math.floor((start >> 1) / stride) - 1;
    let column = (start >> 1) - (row + 1) * stride;
    let isRing = false;
    length = 0;
    addPoint(row, column, (start & 1) === 0);
    visited[start] = mark;
    if (heading === NORTH) row--;
    else if (heading === WEST) column--;
    while (isKnown(square)) {
      const nw = counts[square]! > below;
      const ne = counts[square + 1]! > below;
      const sw = counts[square + stride]! > below;
      const se = counts[square + stride + 1]! > below;
      // The two far corners, as met by a walker who has the higher near corner on the left.
      const left = heading === NORTH ? nw : heading === EAST ? ne : heading === SOUTH ? se : sw;
      const right = heading === NORTH ? ne : heading === EAST ? se : heading === SOUTH ? sw : nw;
      if (left) heading = right ? (heading + 1) & 3 : heading;
      else heading = (heading + (right && isSaddleAbove(row, column, nw) ? 1 : 3)) & 3;
      if (heading === NORTH) {
        edge = 2 * square;
        addPoint(row, column, true);
        square -= stride;
        row--;
      } else if (heading === SOUTH) {
        edge = 2 * (square + stride);
        addPoint(row + 1, column, true);
        square += stride;
        row++;
      } else if (heading === WEST) {
        edge = 2 * square + 1;
        addPoint(row, column, false);
        square--;
        column--;
      } else {
        edge = 2 * square + 3;
        addPoint(row, column + 1, false);
        square++;
        column++;
      }
      if (edge === start) {
        isRing = true;
        break;
      }
      visited[edge] = mark;
    }
    if (isRing) closeRing();
    // A summit or hollow exactly at the height has no extent.
    if (length >= (isRing ? 8 : 4)) found(points.slice(0, length), isRing);
  }

  /** Ends a ring on its first point also where equal points in a row were left out. */
  function closeRing(): void {
    if (length >= 4 && (points[0] !== points[length - 2] || points[1] !== points[length - 1])) {
      put(points[0]!, points[1]!);
    }
  }

  /** Whether the middle of a saddle lies above: where the bilinear surface is level. */
  function isSaddleAbove(row: number, column: number, isNorthWestHigh: boolean): boolean {
    const at = row * columns + column;
    const nw = heightsM[at]! - heightM;
    const ne = heightsM[at + 1]! - heightM;
    const sw = heightsM[at + columns]! - heightM;
    const se = heightsM[at + columns + 1]! - heightM;
    return isNorthWestHigh ? nw * se > ne * sw : ne * sw > nw * se;
  }

  function addPoint(row: number, column: number, isEastward: boolean): void {
    const at = row * columns + column;
    const here = heightsM[at]!;
    const there = heightsM[isEastward ? at + 1 : at + columns]!;
    let share = (heightM - here) / (there - here);
    // The height may be a rounding beyond the end it equals.
    if (share < 0) share = 0;
    else if (share > 1) share = 1;
    const x = westM + (isEastward ? column + share : column) * cellSizeM;
    const y = northM - (isEastward ? row : row + share) * cellSizeM;
    if (length === 0 || points[length - 2] !== x || points[length - 1] !== y) put(x, y);
  }

  function put(x: number, y: number): void {
    if (length + 2 > points.length) {
      const longer = new Float64Array(points.length * 2);
      longer.set(points);
      points = longer;
    }
    points[length++] = x;
    points[length++] = y;
  }
}
