import type { Position } from "../geo/position.ts";
import { gridConvergenceDeg, toUtm, type UtmZone } from "../geo/utm.ts";

/** Ground heights on one square metric grid, north-up in a UTM zone. Every terrain result is computed on this. */
export interface ElevationGrid {
  zone: UtmZone;
  /** Easting of the centres of column 0. */
  westM: number;
  /** Northing of the centres of row 0, the northernmost. */
  northM: number;
  cellSizeM: number;
  rows: number;
  columns: number;
  /** Row-major, row 0 in the north, metres above sea level; NaN where the ground is not known. */
  heightsM: Float32Array;
  /** 1 where the height was filled in from around a small hole; null when nothing was filled. */
  filled: Uint8Array | null;
  /** Ground size of a cell of the file, before it was brought to this grid. */
  sourceCellM: { eastM: number; northM: number };
  /** Voids and filled cells are counted in cells of the file. */
  source: { format: ElevationFormat; voids: number; filledCells: number };
}

export type ElevationFormat = "GeoTIFF" | "ESRI ASCII" | "SRTM HGT";

/** A place on the grid. Row and column are fractional, 0 at the centre of the first cell. */
export interface GridPlace {
  eastingM: number;
  northingM: number;
  row: number;
  column: number;
  /** Grid north east of true north when positive: true bearing = grid bearing + this. */
  convergenceDeg: number;
}

/** Whether the height of a cell is unknown. Cells outside the grid are unknown too. */
export function isVoid(grid: ElevationGrid, row: number, column: number): boolean {
  if (!(row >= 0 && row < grid.rows && column >= 0 && column < grid.columns)) return true;
  return Number.isNaN(grid.heightsM[row * grid.columns + column]!);
}

/**
 * Ground height by bilinear interpolation between the four nearest cell centres.
 *
 * @returns metres, or null outside the outermost cell centres and where a cell that has weight is void
 */
export function elevationAt(grid: ElevationGrid, eastingM: number, northingM: number): number | null {
  const heightM = interpolate(
    grid,
    (grid.northM - northingM) / grid.cellSizeM,
    (eastingM - grid.westM) / grid.cellSizeM,
  );
  return Number.isNaN(heightM) ? null : heightM;
}

/** Bilinear value of a row-major raster at a fractional row and column; NaN outside the cell centres or by a void. */
export function interpolate(
  raster: { rows: number; columns: number; heightsM: Float32Array | Float64Array },
  row: number,
  column: number,
): number {
  const { rows, columns, heightsM } = raster;
  if (!(row >= 0 && row <= rows - 1 && column >= 0 && column <= columns - 1)) return Number.NaN;
  const row0 = Math.min(Math.floor(row), Math.max(rows - 2, 0));
  const column0 = Math.min(Math.floor(column), Math.max(columns - 2, 0));
  const south = row - row0;
  const east = column - column0;
  const at = row0 * columns + column0;
  const north = mix(heightsM, at, at + 1, east);
  if (south === 0) return north;
  const southern = mix(heightsM, at + columns, at + columns + 1, east);
  return south === 1 ? southern : north + (southern - north) * south;
}

/** A cell without weight must not spread its void: 0 x NaN is NaN. */
function mix(heightsM: Float32Array | Float64Array, at: number, next: number, share: number): number {
  if (share === 0) return heightsM[at]!;
  if (share === 1) return heightsM[next]!;
  return heightsM[at]! + (heightsM[next]! - heightsM[at]!) * share;
}

/** Where a position lies on the grid, also when that is outside it. */
export function placeOnGrid(grid: ElevationGrid, position: Position): GridPlace {
  const { eastingM, northingM } = toUtm(position, grid.zone);
  return {
    eastingM,
    northingM,
    row: (grid.northM - northingM) / grid.cellSizeM,
    column: (eastingM - grid.westM) / grid.cellSizeM,
    convergenceDeg: gridConvergenceDeg(position, grid.zone),
  };
}

/** Ground height at a position, metres; null outside the grid or by a void. */
export function elevationAtPosition(grid: ElevationGrid, position: Position): number | null {
  const { eastingM, northingM } = placeOnGrid(grid, position);
  return elevationAt(grid, eastingM, northingM);
}

/** Whether the ground height is known at a position. */
export function coversPosition(grid: ElevationGrid, position: Position): boolean {
  return elevationAtPosition(grid, position) !== null;
}
