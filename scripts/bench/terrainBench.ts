import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Position } from "../geo/position.ts";
import { fromUtm } from "../geo/utm.ts";
import { contourLines } from "../terrain/contourLines.ts";
import type { ElevationGrid } from "../terrain/elevationGrid.ts";
import { groundTops } from "../terrain/groundTops.ts";
import { horizonProfile } from "../terrain/horizonProfile.ts";
import { parseAsciiGrid } from "../terrain/parseAsciiGrid.ts";
import { groundForm } from "../terrain/reliefShading.ts";
import { viewshed } from "../terrain/viewshed.ts";
import { benchGround } from "./benchGround.ts";
import { writeRawGrid } from "./rawGrid.ts";

const SEED = 20;
const RUNS = 5;
const LIGHT = { azimuthDeg: 315, altitudeDeg: 45, exaggeration: 1 };
const SIGHT = { refraction: 0.13, earthRadiusM: 6371000 };
const HORIZON = { ...SIGHT, horizonReachM: 15000, horizonNearM: 5000 };

/**
 * Times the terrain kernels on made-up ground of 1000 x 1000 and 3000 x 3000 cells, medians. Beside GDAL's programs, as whole
 * processes where they are installed, by the clock; alone by the time of the processor, which other work on the machine stretches less.
 *
 * @returns lines to print, each with the limit it is held to
 */
export async function terrainBench(): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), "terrain-bench-"));
  try {
    const version = spawnSync("gdalinfo", ["--version"], { encoding: "utf8" });
    const hasGdal = version.status === 0;
    const lines = [hasGdal ? version.stdout.trim() : "GDAL is not installed: times without ratios"];
    for (const side of [1000, 3000]) {
      const grid = benchGround(side, SEED);
      const raw = writeRawGrid(folder, `ground${side}`, grid);
      const name = `${side} x ${side}`;
      lines.push(shadingLine(name, grid, raw, hasGdal, folder));
      lines.push(contourLine(name, grid, raw, hasGdal, folder));
      lines.push(asciiLine(name, grid, hasGdal, folder));
    }
    const wide = benchGround(3001, SEED);
    lines.push(viewshedLine(wide), horizonLine(wide));
    return lines;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function shadingLine(
  name: string,
  grid: ElevationGrid,
  raw: string,
  hasGdal: boolean,
  folder: string,
): string {
  const out = join(folder, "out");
  const theirs = ["slope", "aspect", "hillshade"].map(
    (what) => () => run("gdaldem", [what, raw, out, "-of", "ENVI", "-q"]),
  );
  const gdal = (): void => {
    for (const start of theirs) start();
  };
  return ratioLine(
    `slope, aspect and shading ${name}`,
    () => groundForm(grid, 0.5, LIGHT),
    hasGdal ? { what: "three gdaldem runs", start: gdal } : null,
    0.6,
  );
}

function contourLine(
  name: string,
  grid: ElevationGrid,
  raw: string,
  hasGdal: boolean,
  folder: string,
): string {
  const out = join(folder, "lines.shp");
  const gdal = () => {
    for (const part of ["shp", "shx", "dbf", "prj"]) rmSync(join(folder, `lines.${part}`), { force: true });
    run("gdal_contour", ["-i", "10", "-a", "elev", "-q", raw, out]);
  };
  return ratioLine(
    `contours every 10 m ${name}`,
    () => contourLines(grid, { intervalM: 10, indexEvery: 5 }),
    hasGdal ? { what: "gdal_contour", start: gdal } : null,
    0.5,
  );
}

function asciiLine(name: string, grid: ElevationGrid, hasGdal: boolean, folder: string): string {
  const path = join(folder, "ground.asc");
  writeFileSync(path, asciiText(grid));
  const gdal = () => run("gdal_translate", ["-q", "-of", "ENVI", path, join(folder, "read")]);
  const coordinates = { kind: "utm", zone: grid.zone } as const;
  return ratioLine(
    `reading an ASCII grid ${name}`,
    () => parseAsciiGrid(readFileSync(path), coordinates, 6000),
    hasGdal ? { what: "gdal_translate", start: gdal } : null,
    0.6,
  );
}

function asciiText(grid: ElevationGrid): string {
  const half = grid.cellSizeM / 2;
  const south = grid.northM - (grid.rows - 1) * grid.cellSizeM - half;
  const rows = [
    `ncols ${grid.columns}`,
    `nrows ${grid.rows}`,
    `xllcorner ${grid.westM - half}`,
    `yllcorner ${south}`,
    `cellsize ${grid.cellSizeM}`,
    "NODATA_value -9999",
  ];
  for (let row = 0; row < grid.rows; row++) {
    const heights = grid.heightsM.subarray(row * grid.columns, (row + 1) * grid.columns);
    rows.push(Array.from(heights, (heightM) => heightM.toFixed(2)).join(" "));
  }
  return `${rows.join("\n")}\n`;
}

function viewshedLine(grid: ElevationGrid): string {
  const request = { eyeHeightM: 6, targetHeightM: 1, reachM: 2000 };
  const times = seededPlaces(grid, 200, 3000).map((place) =>
    timed(() => viewshed(grid, place, request, SIGHT)),
  );
  return `viewshed to 2 km on 10 m cells: median of 200 sites ${median(times).toFixed(1)} ms of processor time (limit 25 ms)`;
}

function horizonLine(grid: ElevationGrid): string {
  const built: { tops: ReturnType<typeof groundTops> | null } = { tops: null };
  const topsMs = timed(() => {
    built.tops = groundTops(grid);
  });
  const times = seededPlaces(grid, 200, 8000).map((place) =>
    processorMs(() => horizonProfile(grid, place, 6, HORIZON, built.tops)),
  );
  return `horizon to 15 km on 10 m cells: median of 200 sites ${median(times).toFixed(2)} ms of processor time (limit 2 ms), tops once ${topsMs.toFixed(0)} ms`;
}

/** Seeded places within a distance east, west, north and south of the middle. */
function seededPlaces(grid: ElevationGrid, count: number, withinM: number): Position[] {
  let state = SEED;
  const random = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  const middleM = ((grid.rows - 1) / 2) * grid.cellSizeM;
  return Array.from({ length: count }, () => {
    const eastingM = grid.westM + middleM + (2 * random() - 1) * withinM;
    const northingM = grid.northM - middleM + (2 * random() - 1) * withinM;
    return fromUtm({ eastingM, northingM }, grid.zone);
  });
}

/** Runs both in turn, so that another load on the machine falls on both; the first of ours warms up and is not counted. */
function ratioLine(
  what: string,
  ours: () => unknown,
  theirs: { what: string; start: () => void } | null,
  limit: number,
): string {
  ours();
  const ourTimes: number[] = [];
  const theirTimes: number[] = [];
  for (let turn = 0; turn < RUNS; turn++) {
    ourTimes.push(timed(ours));
    if (theirs !== null) theirTimes.push(timed(theirs.start));
  }
  const ms = median(ourTimes);
  if (theirs === null) return `${what}: ${ms.toFixed(0)} ms`;
  const theirMs = median(theirTimes);
  const ratio = (ms / theirMs).toFixed(2);
  return `${what}: ${ms.toFixed(0)} ms, ${theirs.what} ${theirMs.toFixed(0)} ms, ratio ${ratio} (limit ${limit})`;
}

function timed(work: () => unknown): number {
  const startedAt = performance.now();
  work();
  return performance.now() - startedAt;
}

function processorMs(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}

function run(program: string, words: string[]): void {
  const { status, stderr } = spawnSync(program, words, { encoding: "utf8" });
  if (status !== 0) throw new Error(`${program} failed: ${stderr}`);
}
