import { fileURLToPath } from "node:url";
import type { Position } from "../../scripts/geo/position.ts";
import type { ElevationGrid } from "../../scripts/terrain/elevationGrid.ts";
import { readElevationGrid } from "../../scripts/terrain/readElevationGrid.ts";

export const JACKSBORO_ASC = fileURLToPath(
  new URL("../fixtures/jacksboro/content/areas/quillmark-ridges/terrain.asc", import.meta.url),
);
export const JACKSBORO_CENTRE: Position = { lat: 36.303, lon: -84.2458 };

let read: Promise<ElevationGrid> | null = null;

/** The Jacksboro grid as the reader makes it; read once per test file. */
export function jacksboroGrid(): Promise<ElevationGrid> {
  read ??= readElevationGrid(JACKSBORO_ASC, JACKSBORO_CENTRE, {
    sideMax: 6000,
    holeCellsMax: 9,
    holeShareMax: 0.05,
    keepWithinM: null,
  });
  return read;
}

/** Centre of a cell of the file (its SOURCE.md, Geometry). */
export function jacksboroPosition(row: number, column: number): Position {
  return { lat: 36.44625 - (row + 0.5) / 1200, lon: -84.41375 + (column + 0.5) / 1200 };
}
