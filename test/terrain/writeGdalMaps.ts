// Writes gdal-hillshade.csv, gdal-contours.csv and viewsheds.json in test/fixtures/jacksboro anew:
// npx tsx test/terrain/writeGdalMaps.ts (needs the programs of GDAL and GRASS).
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import { readRawBytes, writeRawGrid } from "../../scripts/bench/rawGrid.ts";
import { type ElevationGrid, isVoid } from "../../scripts/terrain/elevationGrid.ts";
import { jacksboroGrid } from "./jacksboro.ts";
import { seededRandom } from "./seededRandom.ts";
import { thirtyMetreGrid } from "./thirtyMetreGrid.ts";

const grid = await jacksboroGrid();
const folder = mkdtempSync(join(tmpdir(), "gdal-maps-"));
const write = (name: string, text: string): void =>
  writeFileSync(new URL(`../fixtures/jacksboro/${name}`, import.meta.url), text);
try {
  const raw = writeRawGrid(folder, "grid", grid);
  const run = (program: string, ...words: string[]): void => {
    execFileSync(program, words, { stdio: "pipe" });
  };

  const shaded = join(folder, "shaded");
  run("gdaldem", "hillshade", raw, shaded, "-of", "ENVI", "-q");
  const greys = readRawBytes(shaded);
  const random = seededRandom(315);
  const cells: string[] = [];
  while (cells.length < 2000) {
    const row = Math.floor(random() * grid.rows);
    const column = Math.floor(random() * grid.columns);
    cells.push(`${row},${column},${greys[row * grid.columns + column]}`);
  }
  write("gdal-hillshade.csv", `row,column,grey\n${cells.join("\n")}\n`);

  const lines = join(folder, "lines.gmt");
  run("gdal_contour", "-i", "20", "-a", "elev", "-f", "OGR_GMT", raw, lines);
  write("gdal-contours.csv", contourTable(readFileSync(lines, "utf8")));

  const fine = thirtyMetreGrid(grid);
  const fineRaw = writeRawGrid(folder, "fine", fine);
  const places = Array.from({ length: 20 }, () => ({
    row: Math.floor((0.15 + 0.7 * random()) * fine.rows),
    column: Math.floor((0.15 + 0.7 * random()) * fine.columns),
  }));
  const observers = places.map(({ row, column }) => {
    const easting = fine.westM + column * fine.cellSizeM;
    const northing = fine.northM - row * fine.cellSizeM;
    const seen = join(folder, "gdal-seen");
    // -cc: 1 - k
    const heights = ["-oz", "6", "-tz", "1", "-md", "2000", "-cc", "0.87"];
    run("gdal_viewshed", "-ox", `${easting}`, "-oy", `${northing}`, ...heights, "-of", "ENVI", fineRaw, seen);
    const cut = cutOf(fine, row, column);
    const gdal = visibleBits(seen, fine, cut, (value) => value === 255);
    const script = join(folder, "grass.sh");
    writeFileSync(
      script,
      `set -e\nr.in.gdal -o --q input=${fineRaw} output=fine\ng.region raster=fine\n` +
        `r.viewshed -b -c -r --q input=fine output=seen coordinates=${easting},${northing} observer_elevation=6 ` +
        "target_elevation=1 max_distance=2000 refraction_coeff=0.13\n" +
        `r.out.gdal -c -f --q --overwrite input=seen output=${join(folder, "grass-seen")} format=ENVI type=Byte nodata=255\n`,
    );
    execFileSync("grass", ["--tmp-location", fineRaw, "--exec", "sh", script], { stdio: "pipe" });
    const grass = visibleBits(join(folder, "grass-seen"), fine, cut, (value) => value === 1);
    return { row, column, gdal, grass };
  });
  write(
    "viewsheds.json",
    `${JSON.stringify({ eyeHeightM: 6, targetHeightM: 1, reachM: 2000, observers })}\n`,
  );
} finally {
  rmSync(folder, { recursive: true });
}

/** Height, number of lines and length of all lines of one height. */
function contourTable(text: string): string {
  const levels = new Map<number, { lines: number; lengthM: number }>();
  let level = Number.NaN;
  let before: [number, number] | null = null;
  for (const line of text.split("\n")) {
    if (line.startsWith("# @D")) {
      level = Number(line.split("|").at(-1));
      const known = levels.get(level) ?? { lines: 0, lengthM: 0 };
      known.lines++;
      levels.set(level, known);
    } else if (line.startsWith(">")) {
      before = null;
    } else if (/^[-\d]/.test(line)) {
      const [x = Number.NaN, y = Number.NaN] = line.split(/\s+/).map(Number);
      if (before !== null) levels.get(level)!.lengthM += lengthInside(before, [x, y]);
      before = [x, y];
    }
  }
  const rows = [...levels].sort((a, b) => a[0] - b[0]);
  return `heightM,lines,lengthM\n${rows.map(([h, { lines, lengthM }]) => `${h},${lines},${lengthM.toFixed(1)}`).join("\n")}\n`;
}

/**
 * Length of a stretch of a line, 0 outside the squares of four known heights: GDAL draws on for half a cell, to the outer edge of
 * the border cells and into voids.
 */
function lengthInside(a: [number, number], b: [number, number]): number {
  const row = Math.floor((grid.northM - (a[1] + b[1]) / 2) / grid.cellSizeM);
  const column = Math.floor(((a[0] + b[0]) / 2 - grid.westM) / grid.cellSizeM);
  const isVoidSquare = [0, 1].some((r) => [0, 1].some((c) => isVoid(grid, row + r, column + c)));
  return isVoidSquare ? 0 : Math.hypot(b[0] - a[0], b[1] - a[1]);
}

interface Cut {
  row0: number;
  column0: number;
  side: number;
}

/** The square of 135 cells around an observer. */
function cutOf(fine: ElevationGrid, row: number, column: number): Cut {
  const reach = Math.ceil(2000 / fine.cellSizeM);
  return { row0: row - reach, column0: column - reach, side: 2 * reach + 1 };
}

/** The cells of a raster that a program wrote, one bit a cell of the cut, row by row, deflated. */
function visibleBits(
  path: string,
  fine: ElevationGrid,
  cut: Cut,
  isVisible: (value: number) => boolean,
): string {
  const header = readFileSync(`${path}.hdr`, "utf8");
  const number = (key: string): number => Number(new RegExp(`^${key}\\s*=\\s*(\\d+)`, "m").exec(header)![1]);
  const place = /map info = \{[^,]*, 1(?:\.0*)?, 1(?:\.0*)?, ([\d.]+), ([\d.]+)/.exec(header)!;
  const row0 = Math.round((fine.northM + fine.cellSizeM / 2 - Number(place[2])) / fine.cellSizeM);
  const column0 = Math.round((Number(place[1]) - fine.westM + fine.cellSizeM / 2) / fine.cellSizeM);
  const columns = number("samples");
  const rows = number("lines");
  const values = readRawBytes(path);
  if (values.length !== rows * columns) throw new Error(`${path} is not of bytes`);
  const bits = new Uint8Array(Math.ceil(cut.side ** 2 / 8));
  for (let r = 0; r < cut.side; r++) {
    for (let c = 0; c < cut.side; c++) {
      const row = cut.row0 + r - row0;
      const column = cut.column0 + c - column0;
      if (row < 0 || column < 0 || row >= rows || column >= columns) continue;
      const at = r * cut.side + c;
      if (isVisible(values[row * columns + column]!)) bits[at >> 3]! |= 128 >> (at & 7);
    }
  }
  return deflateRawSync(bits, { level: 9 }).toString("base64");
}
