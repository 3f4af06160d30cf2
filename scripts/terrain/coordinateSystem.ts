import type { CoordinateSystem } from "./elevationRaster.ts";
import { TerrainError } from "./TerrainError.ts";

// Datums that lie within 2 m of WGS 84 (2026): far less than a cell, so their coordinates are taken as WGS 84.
const GEOGRAPHIC = new Set([4326, 4269, 4258, 4167, 7844]); // WGS 84, NAD83, ETRS89, NZGD2000, GDA2020

/** UTM codes: [first, last, number of the first zone, hemisphere]. */
const UTM: readonly (readonly [number, number, number, "N" | "S"])[] = [
  [32601, 32660, 1, "N"], // WGS 84
  [32701, 32760, 1, "S"], // WGS 84
  [26901, 26923, 1, "N"], // NAD83
  [25828, 25838, 28, "N"], // ETRS89
  [7846, 7859, 46, "S"], // GDA2020 (MGA)
];

/**
 * Coordinate system of an EPSG code: WGS 84 degrees or UTM, or those of a datum within 2 m of it.
 *
 * @param name   what the file calls it, for the message
 * @throws {TerrainError} terrain-crs for every other code
 */
export function coordinateSystemOfEpsg(code: number, name: string): CoordinateSystem {
  if (GEOGRAPHIC.has(code)) return { kind: "geographic" };
  for (const [first, last, firstZone, hemisphere] of UTM) {
    if (code >= first && code <= last) {
      return { kind: "utm", zone: { number: firstZone + code - first, hemisphere } };
    }
  }
  throw unknownCoordinateSystem(`EPSG:${code}${name === "" ? "" : ` (${name})`}`);
}

/** The refusal of a coordinate system, by its name. */
export function unknownCoordinateSystem(found: string): TerrainError {
  return new TerrainError({
    code: "terrain-crs",
    found,
    expected: "WGS 84 latitude and longitude, or a WGS 84 UTM zone",
    fix: "convert the file, for example: gdalwarp -t_srs EPSG:4326 -r bilinear old.tif new.tif",
  });
}
