import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { ElevationGrid } from "../terrain/elevationGrid.ts";

/** Writes a grid as raw 32-bit floats with the header that GDAL's programs read; returns the path of the raw file. */
export function writeRawGrid(folder: string, name: string, grid: ElevationGrid): string {
  const path = join(folder, name);
  const { heightsM, cellSizeM, zone } = grid;
  writeFileSync(path, new Uint8Array(heightsM.buffer, heightsM.byteOffset, heightsM.byteLength));
  const west = grid.westM - cellSizeM / 2;
  const north = grid.northM + cellSizeM / 2;
  const hemisphere = zone.hemisphere === "N" ? "North" : "South";
  writeFileSync(
    `${path}.hdr`,
    `ENVI\nsamples = ${grid.columns}\nlines = ${grid.rows}\nbands = 1\nheader offset = 0\nfile type = ENVI Standard\n` +
      "data type = 4\ninterleave = bsq\nbyte order = 0\n" +
      `map info = {UTM, 1, 1, ${west}, ${north}, ${cellSizeM}, ${cellSizeM}, ${zone.number}, ${hemisphere}, WGS-84}\n` +
      "data ignore value = nan\n",
  );
  return path;
}

/** Bytes of a raw raster that one of GDAL's programs wrote. */
export function readRawBytes(path: string): Uint8Array {
  return new Uint8Array(readFileSync(path));
}
