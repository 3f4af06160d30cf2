import { assertRasterSize, type CoordinateSystem, type ElevationRaster } from "./elevationRaster.ts";
import { readAsciiHeights, wordAt } from "./readAsciiHeights.ts";
import { TerrainError } from "./TerrainError.ts";

const NODATA_DEFAULT = -9999;
const KEYS = /^(ncols|nrows|xllcorner|xllcenter|yllcorner|yllcenter|cellsize|nodata_value|dx|dy)$/;

/**
 * ESRI ASCII grid: keys in any letter case and order, corner or centre of the south-west cell, rows from north to south.
 *
 * @param coordinates   what the `.prj` file beside it says, or null without one: then a grid whose corner lies within
 *   180 by 90 is taken as WGS 84 degrees and any other is refused, since metres without a zone lie anywhere
 * @param sideMax       most cells along a side
 * @throws {TerrainError} terrain-format, terrain-truncated, terrain-unplaced, terrain-not-square, terrain-too-large
 */
export function parseAsciiGrid(
  bytes: Uint8Array,
  coordinates: CoordinateSystem | null,
  sideMax: number,
): ElevationRaster {
  const header = readHeader(bytes);
  const rows = count(header.values, "nrows");
  const columns = count(header.values, "ncols");
  assertRasterSize(rows, columns, sideMax);
  if (header.values.has("dx") || header.values.has("dy")) {
    throw new TerrainError({
      code: "terrain-not-square",
      found: "dx and dy",
      expected: "one cellsize: cells of this format are square",
      fix: "write the file again with square cells, or as GeoTIFF",
    });
  }
  const step = numberOf(header.values, "cellsize");
  if (step === null || !(step > 0))
    throw badHeader("cellsize", header.values.get("cellsize"), "a number over 0");
  const westX = firstCentre(header.values, "x", step);
  const southY = firstCentre(header.values, "y", step);
  const noData = header.values.has("nodata_value") ? numberOf(header.values, "nodata_value") : NODATA_DEFAULT;
  if (noData === null) throw badHeader("NODATA_value", header.values.get("nodata_value"), "a number");
  return {
    format: "ESRI ASCII",
    coordinates: coordinates ?? assumedCoordinates(westX, southY),
    westX,
    northY: southY + (rows - 1) * step,
    stepX: step,
    stepY: step,
    rows,
    columns,
    heightsM: readAsciiHeights(bytes, header.endsAt, rows, columns, noData),
  };
}

function assumedCoordinates(westX: number, southY: number): CoordinateSystem {
  if (Math.abs(westX) <= 180 && Math.abs(southY) <= 90) return { kind: "geographic" };
  throw new TerrainError({
    code: "terrain-unplaced",
    found: `corner at ${westX}, ${southY} and no .prj file`,
    expected: "degrees, or a .prj file that names the UTM zone",
    fix: "put the .prj file that came with the grid beside it, under the same name",
  });
}

function readHeader(bytes: Uint8Array): { values: Map<string, string>; endsAt: number } {
  const values = new Map<string, string>();
  let at = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  for (;;) {
    const key = wordAt(bytes, at);
    if (key === null || !/^[a-z]/i.test(key.text) || /^nan$/i.test(key.text)) break;
    const name = key.text.toLowerCase();
    const value = wordAt(bytes, key.endsAt);
    if (!KEYS.test(name) || value === null || values.has(name)) {
      throw new TerrainError({
        code: "terrain-format",
        found: `"${key.text.slice(0, 40)}" in the head of the file`,
        expected:
          "ncols, nrows, xllcorner or xllcenter, yllcorner or yllcenter, cellsize, NODATA_value, each once",
        fix: "write the file again as ESRI ASCII grid",
      });
    }
    values.set(name, value.text);
    at = value.endsAt;
  }
  return { values, endsAt: at };
}

function numberOf(values: Map<string, string>, key: string): number | null {
  const text = values.get(key);
  if (text === undefined) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : null;
}

function count(values: Map<string, string>, key: string): number {
  const value = numberOf(values, key);
  if (value === null || !Number.isInteger(value) || value < 1)
    throw badHeader(key, values.get(key), "a whole number over 0");
  return value;
}

function firstCentre(values: Map<string, string>, axis: "x" | "y", step: number): number {
  const centre = numberOf(values, `${axis}llcenter`);
  const corner = numberOf(values, `${axis}llcorner`);
  if ((centre === null) === (corner === null)) {
    throw badHeader(
      `${axis}llcorner`,
      values.get(`${axis}llcorner`),
      `one of ${axis}llcorner and ${axis}llcenter`,
    );
  }
  return centre ?? corner! + step / 2;
}

function badHeader(key: string, found: string | undefined, expected: string): TerrainError {
  return new TerrainError({
    code: key.startsWith("x") || key.startsWith("y") ? "terrain-unplaced" : "terrain-format",
    found: found === undefined ? `no ${key}` : `${key} ${found}`,
    expected,
    fix: "write the file again as ESRI ASCII grid",
  });
}
