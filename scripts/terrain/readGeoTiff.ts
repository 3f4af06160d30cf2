import { fromArrayBuffer, type GeoTIFFImage } from "geotiff";
import { coordinateSystemOfEpsg, unknownCoordinateSystem } from "./coordinateSystem.ts";
import { assertRasterSize, type CoordinateSystem, type ElevationRaster } from "./elevationRaster.ts";
import { TerrainError } from "./TerrainError.ts";

type GeoKeys = Readonly<Record<string, unknown>>;

const METRE = 9001;
const DEGREE = 9102;
const USER_DEFINED = 32767;
const MODEL_PROJECTED = 1;
const PIXEL_IS_POINT = 2;

/**
 * Heights of a GeoTIFF with one band, north-up, in WGS 84 degrees or a UTM zone. Void where the value is NaN or the
 * declared no-data number (GDAL_NODATA). The tie point is a corner (PixelIsArea) or the centre (PixelIsPoint) of a cell.
 *
 * @param sideMax   most cells along a side
 * @throws {TerrainError} when the file is cut short, is not placed on the earth, is turned, or is in other units
 * @source OGC GeoTIFF 1.1 (19-008r4), 7.1; GDAL GeoTIFF driver notes (tag 42113)
 */
export async function readGeoTiff(bytes: Uint8Array, sideMax: number): Promise<ElevationRaster> {
  try {
    return await readRaster(bytes, sideMax);
  } catch (error) {
    if (error instanceof TerrainError) throw error;
    throw new TerrainError(
      {
        code: "terrain-format",
        found: `a file that can not be read as GeoTIFF (${error instanceof Error ? error.message : String(error)})`,
        expected: "a whole GeoTIFF",
        fix: "fetch or write the file again",
      },
      { cause: error },
    );
  }
}

async function readRaster(bytes: Uint8Array, sideMax: number): Promise<ElevationRaster> {
  const tiff = await fromArrayBuffer(new Uint8Array(bytes).buffer);
  const image = await tiff.getImage(0);
  const rows = image.getHeight();
  const columns = image.getWidth();
  assertRasterSize(rows, columns, sideMax);
  const bands = image.getSamplesPerPixel();
  if (bands !== 1) {
    throw fault(
      "terrain-format",
      `${bands} bands`,
      "one band with heights in metres",
      "export the elevation band alone",
    );
  }
  const keys: GeoKeys = image.getGeoKeys() ?? {};
  const place = await placeOf(image, keys);
  const coordinates = coordinatesOf(keys);
  await assertPlainMetres(image, keys);
  await assertWhole(image, bytes.byteLength);
  const [values] = await image.readRasters({ interleave: false });
  if (values === undefined || values.length !== rows * columns) {
    throw fault("terrain-truncated", "too few heights", `${rows * columns} heights`, "fetch the file again");
  }
  return {
    format: "GeoTIFF",
    coordinates,
    ...place,
    rows,
    columns,
    heightsM: heightsOf(values, await noDataOf(image)),
  };
}

function heightsOf(values: ArrayLike<number>, noData: number | null): Float32Array {
  const heightsM = Float32Array.from(values);
  if (noData === null) return heightsM;
  // A no-data number such as -3.4e38 is written in more digits than a 32-bit height can hold.
  const rounded = Math.fround(noData);
  for (let at = 0; at < heightsM.length; at++) {
    if (heightsM[at] === rounded) heightsM[at] = Number.NaN;
  }
  return heightsM;
}

async function noDataOf(image: GeoTIFFImage): Promise<number | null> {
  const directory = image.getFileDirectory();
  if (!directory.hasTag("GDAL_NODATA")) return null;
  const text = String(await directory.loadValue("GDAL_NODATA"))
    .replaceAll("\0", "")
    .trim();
  const value = Number(text);
  if (text !== "" && (Number.isFinite(value) || /^[+-]?(nan|inf)/i.test(text)))
    return Number.isFinite(value) ? value : null;
  throw fault(
    "terrain-format",
    `no-data number "${text}"`,
    "a number",
    "set the no-data number with gdal_edit -a_nodata",
  );
}

async function placeOf(
  image: GeoTIFFImage,
  keys: GeoKeys,
): Promise<{ westX: number; northY: number; stepX: number; stepY: number }> {
  const directory = image.getFileDirectory();
  const scale = directory.hasTag("ModelPixelScale")
    ? numbers(await directory.loadValue("ModelPixelScale"))
    : null;
  const tie = directory.hasTag("ModelTiepoint") ? numbers(await directory.loadValue("ModelTiepoint")) : null;
  const matrix = directory.hasTag("ModelTransformation")
    ? numbers(await directory.loadValue("ModelTransformation"))
    : null;
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

function coordinatesOf(keys: GeoKeys): CoordinateSystem {
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

async function assertPlainMetres(image: GeoTIFFImage, keys: GeoKeys): Promise<void> {
  const units: readonly (readonly [string, number, string])[] = [
    ["VerticalUnitsGeoKey", METRE, "heights in metres"],
    ["ProjLinearUnitsGeoKey", METRE, "coordinates in metres"],
    ["GeogAngularUnitsGeoKey", DEGREE, "coordinates in degrees"],
  ];
  for (const [key, wanted, meaning] of units) {
    const unit = keys[key];
    if (unit !== undefined && unit !== wanted) {
      throw fault("terrain-units", `${key} ${unit}`, `${wanted} (${meaning})`, "convert the file to metres");
    }
  }
  const metadata = { ...(await image.getGDALMetadata(null)), ...(await image.getGDALMetadata(0)) };
  const scale = metadata.SCALE ?? 1;
  const offset = metadata.OFFSET ?? 0;
  if (Number(scale) !== 1 || Number(offset) !== 0) {
    throw fault(
      "terrain-units",
      `heights stored with scale ${scale} and offset ${offset}`,
      "plain metres",
      "convert it with gdal_translate -unscale -ot Float32",
    );
  }
  const unit = metadata.UNITTYPE;
  if (typeof unit === "string" && !/^(m|metre|meter|metres|meters)$/i.test(unit.trim())) {
    throw fault(
      "terrain-units",
      `heights in ${unit.trim()}`,
      "heights in metres",
      "convert the heights to metres",
    );
  }
}

/** The library reads past the end of a file as an empty block, and fills blocks that were never written with zero. */
async function assertWhole(image: GeoTIFFImage, byteLength: number): Promise<void> {
  const directory = image.getFileDirectory();
  const [offsetTag, lengthTag] = image.isTiled
    ? (["TileOffsets", "TileByteCounts"] as const)
    : (["StripOffsets", "StripByteCounts"] as const);
  const offsets = numbers(await directory.loadValue(offsetTag));
  const lengths = numbers(await directory.loadValue(lengthTag));
  for (let block = 0; block < offsets.length; block++) {
    const endsAt = offsets[block]! + lengths[block]!;
    if (!(endsAt <= byteLength)) {
      throw fault(
        "terrain-truncated",
        `a file of ${byteLength} bytes`,
        `at least ${endsAt} bytes`,
        "fetch the file again: it was cut short",
      );
    }
    if (!(lengths[block]! > 0)) {
      throw fault(
        "terrain-format",
        "blocks that were never written",
        "a height or the no-data number in every cell",
        "write it whole with gdal_translate",
      );
    }
  }
}

function numbers(value: unknown): number[] {
  if (typeof value === "number" || typeof value === "bigint") return [Number(value)];
  return Array.from(value as ArrayLike<number>, Number);
}

function fault(code: TerrainError["code"], found: string, expected: string, fix: string): TerrainError {
  return new TerrainError({ code, found, expected, fix });
}
