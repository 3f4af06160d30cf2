import { coordinateSystemOfEpsg, unknownCoordinateSystem } from "./coordinateSystem.ts";
import type { CoordinateSystem } from "./elevationRaster.ts";
import { TerrainError } from "./TerrainError.ts";

/** GeoKeys by their names in the standard. */
export type GeoKeys = Readonly<Record<string, unknown>>;

const USER_DEFINED = 32767;
const MODEL_PROJECTED = 1;
const PIXEL_IS_POINT = 2;

/** The tags of a GeoTIFF that say where it lies; null where the file has none. */
export interface PlacementTags {
  pixelScale: readonly number[] | null;
  tiePoint: readonly number[] | null;
  transformation: readonly number[] | null;
}

/**
 * Centre of the first cell and the steps between centres, from the tie point and scale or the matrix.
 *
 * @throws {TerrainError} terrain-unplaced, terrain-rotated
 * @source OGC GeoTIFF 1.1 (19-008r4), 7.1 and 8: half a cell between the two raster types
 */
export function geoTiffPlacement(
  tags: PlacementTags,
  keys: GeoKeys,
): { westX: number; northY: number; stepX: number; stepY: number } {
  const { pixelScale: scale, tiePoint: tie, transformation: matrix } = tags;
  let corner: { x: number; y: number; stepX: number; stepY: number };
  if (scale !== null && tie !== null && scale.length >= 2 && tie.length === 6) {
    const [i, j, , x, y] = tie as [number, number, number, number, number, number];
    corner = { x: x - i * scale[0]!, y: y + j * scale[1]!, stepX: scale[0]!, stepY: scale[1]! };
  } else if (matrix !== null && matrix.length === 16) {
    if (matrix[1] !== 0 || matrix[4] !== 0) {
      throw fault(
        "terrain-rotated",
        "a turned grid",
        "rows that run east-west, north first",
        "straighten it with gdalwarp",
      );
    }
    corner = { x: matrix[3]!, y: matrix[7]!, stepX: matrix[0]!, stepY: -matrix[5]! };
  } else {
    throw fault(
      "terrain-unplaced",
      "no tie point and pixel scale",
      "a GeoTIFF that says where it lies",
      "export it again with its coordinates (a picture of a map is not enough)",
    );
  }
  if (!(corner.stepX > 0 && corner.stepY > 0 && Number.isFinite(corner.x) && Number.isFinite(corner.y))) {
    throw fault(
      "terrain-rotated",
      `cells of ${corner.stepX} by ${corner.stepY}`,
      "rows from north to south, columns from west to east",
      "straighten it with gdalwarp",
    );
  }
  const toCentre = Number(keys.GTRasterTypeGeoKey ?? 1) === PIXEL_IS_POINT ? 0 : 0.5;
  return {
    westX: corner.x + toCentre * corner.stepX,
    northY: corner.y - toCentre * corner.stepY,
    stepX: corner.stepX,
    stepY: corner.stepY,
  };
}

/**
 * Coordinate system that the keys name.
 *
 * @throws {TerrainError} terrain-unplaced when they name none, terrain-crs when it is not one that can be used
 */
export function geoTiffCoordinates(keys: GeoKeys): CoordinateSystem {
  const name = ["ProjectedCSTypeGeoKey", "PCSCitationGeoKey", "GTCitationGeoKey", "GeogCitationGeoKey"]
    .map((key) => keys[key])
    .find((value): value is string => typeof value === "string");
  const title = (name ?? "").replaceAll("\0", "").split("|")[0]!.trim();
  const isProjected = keys.GTModelTypeGeoKey === MODEL_PROJECTED || keys.ProjectedCSTypeGeoKey !== undefined;
  const code = isProjected ? keys.ProjectedCSTypeGeoKey : keys.GeographicTypeGeoKey;
  if (typeof code !== "number") {
    throw fault(
      "terrain-unplaced",
      title === "" ? "no coordinate system" : `a coordinate system without a code (${title})`,
      "WGS 84 degrees or UTM",
      "export it again with its coordinate system",
    );
  }
  if (code === USER_DEFINED) throw unknownCoordinateSystem(`a coordinate system of its own (${title})`);
  return coordinateSystemOfEpsg(code, title);
}

function fault(code: TerrainError["code"], found: string, expected: string, fix: string): TerrainError {
  return new TerrainError({ code, found, expected, fix });
}
