import type { UtmZone } from "../geo/utm.ts";
import type { ElevationFormat } from "./elevationGrid.ts";
import { TerrainError } from "./TerrainError.ts";

/** How the columns and rows of a file lie on the earth: WGS 84 degrees, or metres of a UTM zone. */
export type CoordinateSystem = { kind: "geographic" } | { kind: "utm"; zone: UtmZone };

/** Heights as a file holds them: north-up, row 0 in the north, with the file's own coordinates. */
export interface ElevationRaster {
  format: ElevationFormat;
  coordinates: CoordinateSystem;
  /** Centre of the cell of row 0, column 0: longitude and latitude in degrees, or easting and northing in metres. */
  westX: number;
  northY: number;
  /** Distance between cell centres, east and south, both positive, in degrees or metres. */
  stepX: number;
  stepY: number;
  rows: number;
  columns: number;
  /** Row-major metres; NaN where the file has no height. */
  heightsM: Float32Array;
}

/** Refuses a raster with more cells than a build can hold, before its heights are read. */
export function assertRasterSize(rows: number, columns: number, sideMax: number): void {
  if (rows > sideMax || columns > sideMax) {
    throw new TerrainError({
      code: "terrain-too-large",
      found: `${columns} x ${rows} cells`,
      expected: `at most ${sideMax} x ${sideMax} cells`,
      fix: "cut the file to the area and 15 km around it, or use larger cells",
    });
  }
  if (rows < 3 || columns < 3) {
    throw new TerrainError({
      code: "terrain-too-small",
      found: `${columns} x ${rows} cells`,
      expected: "at least 3 x 3 cells",
      fix: "use a file that covers the area",
    });
  }
}

// Lowest dry land is about -430 m, the highest summit 8849 m; mines and errors of the sensor get some room.
const LOWEST_M = -500;
const HIGHEST_M = 9000;

/**
 * Counts the voids of a raster.
 *
 * @throws {TerrainError} when nothing but voids is left, or a height is no ground height in metres: an undeclared no-data
 *   number must never be taken for ground
 */
export function countVoids(raster: { rows: number; columns: number; heightsM: Float32Array }): number {
  const { heightsM, columns } = raster;
  let voids = 0;
  for (let at = 0; at < heightsM.length; at++) {
    const heightM = heightsM[at]!;
    if (Number.isNaN(heightM)) {
      voids++;
    } else if (heightM < LOWEST_M || heightM > HIGHEST_M) {
      throw new TerrainError({
        code: "terrain-height",
        found: `${heightM} m at row ${Math.floor(at / columns)}, column ${at % columns} (counted from 0 in the north-west)`,
        expected: `heights of ${LOWEST_M} to ${HIGHEST_M} m, or the file's declared no-data number`,
        fix: "declare the no-data number in the file, or convert the heights to metres",
      });
    }
  }
  if (voids === heightsM.length) {
    throw new TerrainError({
      code: "terrain-all-void",
      found: "no height in any cell",
      expected: "ground heights",
      fix: "use a file that covers the area",
    });
  }
  return voids;
}
