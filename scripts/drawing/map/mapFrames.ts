import type { UtmPosition } from "../../geo/utm.ts";
import { groundM, type MapScale, type MapWindow, paperMm, SHEET_SCALES } from "./mapScale.ts";

/** A rectangle of one UTM zone, grid metres: west <= east, south <= north. */
export interface GridExtent {
  westM: number;
  eastM: number;
  southM: number;
  northM: number;
}

/** One sheet: its name (row letter from the north, column number from the west), its ground and the sheets beside it. */
export interface MapSheet {
  name: string;
  row: number;
  column: number;
  extent: GridExtent;
  beside: Record<"north" | "east" | "south" | "west", string | null>;
}

/** The sheets of an area at one scale, all of one size. */
export interface MapFrames {
  scale: MapScale;
  widthMm: number;
  heightMm: number;
  /** Names as the sheets lie: rows from the north, each from the west. */
  index: string[][];
  sheets: MapSheet[];
  /** Ground that any two neighbours share at least, metres; null where there are none to the side, or above and below. */
  overlapM: { sideways: number | null; upDown: number | null };
}

const STEP_M = 100; // sheets begin and end on whole 100 m, so that their edges are lines of the grid
const LEAST_OVERLAP_M = 100; // common practice, no source: a place on an edge is seen whole on one sheet
const ROUNDING_M = 1e-6; // what arithmetic on millimetres can lose; a window of 4500 m must hold 4500 m

/**
 * The least number of sheets that show an extent at a scale, in rows and columns, spread evenly over it. Each begins and
 * ends on whole 100 m, fits the window and fills it to 100 m. One row or column has the extent in its middle.
 *
 * Not covered: windows turned on their side, sheets at an angle, an extent that reaches over the edge of its zone's grid.
 *
 * @param extent         of one UTM zone; a single point is an extent too
 * @param leastOverlapM  what neighbours must share, metres, 0 or more; taken up to whole 100 m
 * @throws {RangeError}  when the extent is not finite or turned round, or the window is too small for the overlap
 */
export function mapFrames(
  extent: GridExtent,
  scale: MapScale,
  window: MapWindow,
  leastOverlapM: number = LEAST_OVERLAP_M,
): MapFrames {
  const { westM, eastM, southM, northM } = checkedExtent(extent);
  if (!(leastOverlapM >= 0 && Number.isFinite(leastOverlapM))) {
    throw new RangeError(`leastOverlapM must be 0 or more, found ${leastOverlapM}`);
  }
  const overlapM = upToStep(leastOverlapM);
  const widthM = sheetSide(window.widthMm, scale, overlapM, "widthMm");
  const heightM = sheetSide(window.heightMm, scale, overlapM, "heightMm");
  const westEdges = sheetStarts(westM, eastM, widthM, overlapM);
  const southEdges = sheetStarts(southM, northM, heightM, overlapM).reverse(); // row A is the northern one
  const index = southEdges.map((_, row) => westEdges.map((_, column) => sheetName(row, column)));
  const sheets = southEdges.flatMap((south, row) =>
    westEdges.map((west, column) => ({
      name: sheetName(row, column),
      row,
      column,
      extent: { westM: west, eastM: west + widthM, southM: south, northM: south + heightM },
      beside: {
        north: index[row - 1]?.[column] ?? null,
        east: index[row]?.[column + 1] ?? null,
        south: index[row + 1]?.[column] ?? null,
        west: index[row]?.[column - 1] ?? null,
      },
    })),
  );
  return {
    scale,
    widthMm: paperMm(widthM, scale),
    heightMm: paperMm(heightM, scale),
    index,
    sheets,
    overlapM: { sideways: leastShared(westEdges, widthM), upDown: leastShared(southEdges, heightM) },
  };
}

/**
 * The sheets of an area at the scale of most detail that needs one sheet only; where none does, the several sheets of the
 * scale of least detail. A sketch scale is never chosen.
 *
 * @throws {RangeError} as mapFrames does
 */
export function chosenFrames(extent: GridExtent, window: MapWindow, leastOverlapM?: number): MapFrames {
  const tried = SHEET_SCALES.map((scale) => mapFrames(extent, scale, window, leastOverlapM));
  const chosen = tried.find((frames) => frames.sheets.length === 1) ?? tried.at(-1);
  if (chosen === undefined) throw new RangeError("no scale of a map sheet is known");
  return chosen;
}

/** Names of the sheets that show a place, their edges included, in the order of the index; none when it lies outside. */
export function sheetsShowing(frames: MapFrames, place: UtmPosition): string[] {
  return frames.sheets.filter(({ extent }) => holds(extent, place)).map(({ name }) => name);
}

/** Where a place lies on the paper of a sheet, millimetres from the left and the upper edge of its frame. */
export function placeOnSheet(
  extent: GridExtent,
  scale: MapScale,
  place: UtmPosition,
): { xMm: number; yMm: number } {
  return {
    xMm: paperMm(place.eastingM - extent.westM, scale),
    yMm: paperMm(extent.northM - place.northingM, scale),
  };
}

function holds(extent: GridExtent, { eastingM, northingM }: UtmPosition): boolean {
  return (
    eastingM >= extent.westM &&
    eastingM <= extent.eastM &&
    northingM >= extent.southM &&
    northingM <= extent.northM
  );
}

function checkedExtent(extent: GridExtent): GridExtent {
  const { westM, eastM, southM, northM } = extent;
  if (![westM, eastM, southM, northM].every(Number.isFinite) || westM > eastM || southM > northM) {
    throw new RangeError(
      `an extent must be finite, west <= east and south <= north, found ${westM}, ${eastM}, ${southM}, ${northM}`,
    );
  }
  return extent;
}

/** The most whole 100 m that a side of the window holds. */
function sheetSide(windowMm: number, scale: MapScale, overlapM: number, name: string): number {
  const sideM = Math.floor((groundM(windowMm, scale) + ROUNDING_M) / STEP_M) * STEP_M;
  if (!(Number.isFinite(sideM) && sideM > overlapM)) {
    throw new RangeError(
      `${name} must hold more than the overlap of ${overlapM} m at 1:${scale}, found ${windowMm} mm`,
    );
  }
  return sideM;
}

/** Where the sheets of one direction begin, rising: as few as can be, evenly over the stretch. */
function sheetStarts(fromM: number, toM: number, sideM: number, overlapM: number): number[] {
  const startM = Math.floor(fromM / STEP_M) * STEP_M;
  const lengthM = upToStep(toM) - startM;
  if (lengthM <= sideM) return [startM - Math.floor((sideM - lengthM) / 2 / STEP_M) * STEP_M];
  const count = Math.ceil((lengthM - overlapM) / (sideM - overlapM));
  // Multiplied before it is divided, so that the last sheet ends on the end and not a rounding short of it.
  return Array.from(
    { length: count },
    (_, place) => startM + Math.floor((place * (lengthM - sideM)) / (count - 1) / STEP_M) * STEP_M,
  );
}

function leastShared(starts: number[], sideM: number): number | null {
  const shared = starts.slice(1).map((start, place) => sideM - Math.abs(start - (starts[place] ?? start)));
  return shared.length === 0 ? null : Math.min(...shared);
}

function upToStep(valueM: number): number {
  return Math.ceil(valueM / STEP_M) * STEP_M;
}

/** "A1"; the row after Z is AA. */
function sheetName(row: number, column: number): string {
  let letters = "";
  for (let left = row; left >= 0; left = Math.floor(left / 26) - 1) {
    letters = String.fromCharCode(65 + (left % 26)) + letters;
  }
  return `${letters}${column + 1}`;
}
