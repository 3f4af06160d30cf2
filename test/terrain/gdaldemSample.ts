import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ElevationGrid } from "../../scripts/terrain/elevationGrid.ts";

/** One cell of a grid with the slope and aspect that gdaldem gives it; aspect null where gdaldem calls it flat. */
export interface GdaldemCell {
  row: number;
  column: number;
  slopeDeg: number;
  aspectDeg: number | null;
}

/**
 * Runs `gdaldem slope` and `gdaldem aspect` (Horn) on a grid written as raw 32-bit floats, and picks cells with a seeded
 * generator. Needs GDAL's programs on the path; the tests read the stored sample instead.
 */
export function gdaldemSample(grid: ElevationGrid, count: number, seed: number): GdaldemCell[] {
  const folder = mkdtempSync(join(tmpdir(), "gdaldem-"));
  try {
    writeFileSync(
      join(folder, "grid"),
      new Uint8Array(grid.heightsM.buffer, grid.heightsM.byteOffset, grid.heightsM.byteLength),
    );
    const west = grid.westM - grid.cellSizeM / 2;
    const north = grid.northM + grid.cellSizeM / 2;
    writeFileSync(
      join(folder, "grid.hdr"),
      `ENVI\nsamples = ${grid.columns}\nlines = ${grid.rows}\nbands = 1\nheader offset = 0\nfile type = ENVI Standard\n` +
        "data type = 4\ninterleave = bsq\nbyte order = 0\n" +
        `map info = {UTM, 1, 1, ${west}, ${north}, ${grid.cellSizeM}, ${grid.cellSizeM}, ${grid.zone.number}, North, WGS-84}\n` +
        "data ignore value = nan\n",
    );
    const slope = gdaldem("slope", folder);
    const aspect = gdaldem("aspect", folder);
    const random = mulberry32(seed);
    const cells: GdaldemCell[] = [];
    while (cells.length < count) {
      const row = Math.floor(random() * grid.rows);
      const column = Math.floor(random() * grid.columns);
      const slopeDeg = slope[row * grid.columns + column]!;
      const aspectDeg = aspect[row * grid.columns + column]!;
      if (slopeDeg === NO_DATA) continue;
      cells.push({ row, column, slopeDeg, aspectDeg: aspectDeg === NO_DATA ? null : aspectDeg });
    }
    return cells;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const NO_DATA = -9999;

function gdaldem(what: "slope" | "aspect", folder: string): Float32Array {
  execFileSync("gdaldem", [what, join(folder, "grid"), join(folder, what), "-of", "ENVI", "-q"]);
  const bytes = readFileSync(join(folder, what));
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
}

function mulberry32(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
