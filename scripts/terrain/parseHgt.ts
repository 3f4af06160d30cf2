import type { ElevationRaster } from "./elevationRaster.ts";
import { TerrainError } from "./TerrainError.ts";

const NAME = /^([NS])(\d{2})([EW])(\d{3})\.hgt$/i;
const VOID = -32768;

/**
 * SRTM tile: signed 16-bit big-endian metres, rows from north to south, 1201 or 3601 a side, void -32768. The corner
 * (centre of the south-west sample) stands only in the tile's name.
 *
 * @param name   file name without folder, as `N67E026.hgt` or `S46W073.hgt`, letters of any case
 * @throws {TerrainError} terrain-hgt-name, terrain-hgt-size
 * @source NASA/USGS, SRTM collection user guide (tile naming and sample layout)
 */
export function parseHgt(bytes: Uint8Array, name: string): ElevationRaster {
  const corner = cornerOf(name);
  const side = sideOf(bytes.byteLength);
  const heightsM = new Float32Array(side * side);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at < heightsM.length; at++) {
    const value = view.getInt16(at * 2, false);
    heightsM[at] = value === VOID ? Number.NaN : value;
  }
  const step = 1 / (side - 1);
  return {
    format: "SRTM HGT",
    coordinates: { kind: "geographic" },
    westX: corner.lon,
    northY: corner.lat + 1,
    stepX: step,
    stepY: step,
    rows: side,
    columns: side,
    heightsM,
  };
}

function cornerOf(name: string): { lat: number; lon: number } {
  const parts = NAME.exec(name);
  const lat = Number(parts?.[2]) * (parts?.[1]?.toUpperCase() === "S" ? -1 : 1);
  const lon = Number(parts?.[4]) * (parts?.[3]?.toUpperCase() === "W" ? -1 : 1);
  if (!(lat >= -90 && lat <= 89 && lon >= -180 && lon <= 179)) {
    throw new TerrainError({
      code: "terrain-hgt-name",
      found: name,
      expected: "a tile name as N67E026.hgt: the south-west corner in whole degrees",
      fix: "give the file its tile name back: the position stands nowhere else",
    });
  }
  return { lat, lon };
}

function sideOf(byteLength: number): 1201 | 3601 {
  if (byteLength === 1201 * 1201 * 2) return 1201;
  if (byteLength === 3601 * 3601 * 2) return 3601;
  throw new TerrainError({
    code: "terrain-hgt-size",
    found: `${byteLength} bytes`,
    expected: "2884802 bytes (1201 x 1201) or 25934402 bytes (3601 x 3601)",
    fix: "fetch the tile again and unpack it",
  });
}
