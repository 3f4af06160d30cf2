import type { GridExtent } from "./mapFrames.ts";
import { type MapScale, paperMm } from "./mapScale.ts";

/** A line of the grid: its easting or northing, and its distance from the left or the upper edge of the frame. */
export interface GridLine {
  valueM: number;
  atMm: number;
}

/** Figures of one line at one side of the frame; `atMm` from the left edge (north, south) or the upper edge (east, west). */
export interface GridFigure {
  side: "north" | "east" | "south" | "west";
  atMm: number;
  text: string;
  isFull: boolean;
}

/** The grid of one frame. Eastings rise to the right, northings rise upward. */
export interface MapGrid {
  spacingM: GridSpacing;
  eastings: GridLine[];
  northings: GridLine[];
  figures: GridFigure[];
}

export type GridSpacing = 100 | 1000;

const ROUNDING_M = 1e-6; // what arithmetic on metres can lose; a line on the edge of the frame must not fall out by it
const HUNDRED_KM_M = 100_000; // short figures name a line within its square of 100 km

/** Spacing of the grid at a scale: 100 m on the sketches of a site, 1 km on every other map. */
export function gridSpacing(scale: MapScale): GridSpacing {
  return scale === 5000 ? 100 : 1000;
}

/**
 * The lines of the UTM grid inside a frame, edges included, with their figures on all four sides. Short figures are whole
 * kilometres with 2 digits, or at 100 m spacing hundreds of metres with 3, both within the square of 100 km. In the
 * south-west corner the first easting (south side) and the first northing (west side) are written in full. A direction
 * without a line in the frame has no figures.
 *
 * Not covered: the lines of a neighbouring zone.
 *
 * @throws {RangeError} when the extent is not finite or turned round, or reaches below 0 of the grid
 */
export function gridLines(
  extent: GridExtent,
  scale: MapScale,
  spacingM: GridSpacing = gridSpacing(scale),
): MapGrid {
  const { westM, eastM, southM, northM } = extent;
  const eastings = valuesBetween(westM, eastM, spacingM).map((valueM) => ({
    valueM,
    atMm: paperMm(valueM - westM, scale),
  }));
  const northings = valuesBetween(southM, northM, spacingM).map((valueM) => ({
    valueM,
    atMm: paperMm(northM - valueM, scale),
  }));
  return {
    spacingM,
    eastings,
    northings,
    figures: [
      ...figuresOf("north", eastings, spacingM, null),
      ...figuresOf("east", northings, spacingM, null),
      ...figuresOf("south", eastings, spacingM, "m E"),
      ...figuresOf("west", northings, spacingM, "m N"),
    ],
  };
}

/**
 * The short figures of a line.
 *
 * @example shortFigures(5010900, 100) // "109"
 */
export function shortFigures(valueM: number, spacingM: GridSpacing): string {
  const withinM = valueM % HUNDRED_KM_M;
  return String(Math.floor(withinM / spacingM)).padStart(spacingM === 1000 ? 2 : 3, "0");
}

/**
 * The full figures of a line, digits in groups of three.
 *
 * @example fullFigures(5010900, "m N") // "5 010 900 m N"
 */
export function fullFigures(valueM: number, unit: "m E" | "m N"): string {
  return `${String(valueM).replace(/\B(?=(\d{3})+$)/g, " ")} ${unit}`;
}

function figuresOf(
  side: GridFigure["side"],
  lines: GridLine[],
  spacingM: GridSpacing,
  unitOfFirst: "m E" | "m N" | null,
): GridFigure[] {
  return lines.map(({ valueM, atMm }, place) => {
    const isFull = place === 0 && unitOfFirst !== null;
    const text = isFull ? fullFigures(valueM, unitOfFirst) : shortFigures(valueM, spacingM);
    return { side, atMm, text, isFull };
  });
}

function valuesBetween(fromM: number, toM: number, spacingM: GridSpacing): number[] {
  if (!(fromM >= 0 && toM >= fromM && Number.isFinite(toM))) {
    throw new RangeError(`an extent must run upward from 0 or more, found ${fromM} to ${toM}`);
  }
  const first = Math.ceil((fromM - ROUNDING_M) / spacingM);
  const last = Math.floor((toM + ROUNDING_M) / spacingM);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, place) => (first + place) * spacingM);
}
