import { access, readFile } from "node:fs/promises";
import { basename } from "node:path";
import type { Position } from "../geo/position.ts";
import { utmZoneOf } from "../geo/utm.ts";
import type { ElevationGrid } from "./elevationGrid.ts";
import { type CoordinateSystem, countVoids, type ElevationRaster } from "./elevationRaster.ts";
import { fillHoles, type HoleRules } from "./fillHoles.ts";
import { metricGrid } from "./metricGrid.ts";
import { parseAsciiGrid } from "./parseAsciiGrid.ts";
import { parseHgt } from "./parseHgt.ts";
import { parseProjectionText } from "./parseProjectionText.ts";
import { cellOfPosition } from "./rasterCoordinates.ts";
import { readGeoTiff } from "./readGeoTiff.ts";
import { TerrainError } from "./TerrainError.ts";

export interface ElevationGridRules extends HoleRules {
  /** Most cells along a side of the file and of the grid. */
  sideMax: number;
  /** Keep only ground within this distance east, north, south and west of the area's centre; null keeps all of the file. */
  keepWithinM: number | null;
}

/**
 * Reads an elevation file (GeoTIFF `.tif`, `.tiff`; ESRI ASCII `.asc`, with its `.prj` when there is one; SRTM `.hgt`) onto
 * one square metric grid in the UTM zone of the area's centre. Small holes are filled and marked, larger ones stay void.
 *
 * @throws {TerrainError} when the file is at fault, with what was found, what was expected and what to do
 */
export async function readElevationGrid(
  path: string,
  areaCentre: Position,
  rules: ElevationGridRules,
): Promise<ElevationGrid> {
  const raster = await readRaster(path, rules.sideMax);
  return gridOfRaster(raster, areaCentre, rules);
}

/** The metric grid of a raster that has been read; pure. Throws {TerrainError} as {@link readElevationGrid}. */
export function gridOfRaster(
  raster: ElevationRaster,
  areaCentre: Position,
  rules: ElevationGridRules,
): ElevationGrid {
  assertCovers(raster, areaCentre);
  const voids = countVoids(raster);
  const { heightsM, filled, filledCells } = fillHoles(raster, rules);
  const grid = metricGrid(
    { raster: { ...raster, heightsM }, filled, voids, filledCells },
    {
      zone: utmZoneOf(areaCentre),
      centre: areaCentre,
      sideMax: rules.sideMax,
      keepWithinM: rules.keepWithinM,
    },
  );
  countVoids(grid);
  return grid;
}

async function readRaster(path: string, sideMax: number): Promise<ElevationRaster> {
  const name = basename(path);
  const bytes = await readFile(path);
  if (/\.tiff?$/i.test(name)) return readGeoTiff(bytes, sideMax);
  if (/\.asc$/i.test(name)) return parseAsciiGrid(bytes, await projectionBeside(path), sideMax);
  if (/\.hgt$/i.test(name)) return parseHgt(bytes, name);
  throw new TerrainError({
    code: "terrain-format",
    found: name,
    expected: "a GeoTIFF (.tif), an ESRI ASCII grid (.asc) or an SRTM tile (.hgt)",
    fix: "convert the file, for example with gdal_translate",
  });
}

async function projectionBeside(path: string): Promise<CoordinateSystem | null> {
  for (const ending of [".prj", ".PRJ"]) {
    const beside = path.slice(0, -".asc".length) + ending;
    const exists = await access(beside).then(
      () => true,
      () => false,
    );
    if (exists) return parseProjectionText(await readFile(beside, "utf8"));
  }
  return null;
}

/** Most degrees of longitude that one UTM grid can show without gross distortion. */
const WIDEST_DEG = 6;

function assertCovers(raster: ElevationRaster, areaCentre: Position): void {
  const { rows, columns, stepX, stepY } = raster;
  if (raster.coordinates.kind === "geographic" && Math.max(columns * stepX, rows * stepY) > WIDEST_DEG) {
    throw new TerrainError({
      code: "terrain-too-large",
      found: `${(columns * stepX).toFixed(1)} by ${(rows * stepY).toFixed(1)} degrees`,
      expected: `at most ${WIDEST_DEG} degrees a side`,
      fix: "cut the file to the area and 15 km around it",
    });
  }
  if (!isInside(raster, areaCentre)) {
    const eastX = raster.westX + (columns - 1) * stepX;
    const southY = raster.northY - (rows - 1) * stepY;
    throw new TerrainError({
      code: "terrain-elsewhere",
      found: `a grid from ${raster.westX} to ${eastX} (east) and ${southY} to ${raster.northY} (north)`,
      expected: `one that covers the area's centre at ${areaCentre.lat}, ${areaCentre.lon}`,
      fix: "use the elevation file of this area, or mend the area's centre",
    });
  }
}

function isInside(raster: ElevationRaster, position: Position): boolean {
  try {
    const { row, column } = cellOfPosition(raster, position);
    return row >= 0 && row <= raster.rows - 1 && column >= 0 && column <= raster.columns - 1;
  } catch (error) {
    // A place too far from the raster's own zone has no coordinates in it.
    if (error instanceof RangeError) return false;
    throw error;
  }
}
