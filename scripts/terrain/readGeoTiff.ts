import { fromArrayBuffer, type GeoTIFFImage } from "geotiff";
import { assertRasterSize, type ElevationRaster } from "./elevationRaster.ts";
import {
  type GeoKeys,
  geoTiffCoordinates,
  geoTiffPlacement,
  type PlacementTags,
} from "./geoTiffPlacement.ts";
import { TerrainError } from "./TerrainError.ts";

const METRE = 9001;
const DEGREE = 9102;

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
  const place = geoTiffPlacement(await placementTags(image), keys);
  const coordinates = geoTiffCoordinates(keys);
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

async function placementTags(image: GeoTIFFImage): Promise<PlacementTags> {
  const directory = image.getFileDirectory();
  const tag = async (
    name: "ModelPixelScale" | "ModelTiepoint" | "ModelTransformation",
  ): Promise<number[] | null> => (directory.hasTag(name) ? numbers(await directory.loadValue(name)) : null);
  return {
    pixelScale: await tag("ModelPixelScale"),
    tiePoint: await tag("ModelTiepoint"),
    transformation: await tag("ModelTransformation"),
  };
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
