import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { fromUtm, toUtm } from "../../scripts/geo/utm.ts";
import { elevationAtPosition } from "../../scripts/terrain/elevationGrid.ts";
import { readElevationGrid } from "../../scripts/terrain/readElevationGrid.ts";
import { JACKSBORO_ASC, JACKSBORO_CENTRE, jacksboroGrid, jacksboroPosition } from "./jacksboro.ts";
import { tinyGeoTiff } from "./tinyGeoTiff.ts";

const RULES = { sideMax: 6000, holeCellsMax: 9, holeShareMax: 0.05, keepWithinM: null };
const ZONE_59S = { number: 59, hemisphere: "S" } as const;
const UTM_59S_PRJ =
  'PROJCS["WGS_1984_UTM_Zone_59S",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",10000000.0],PARAMETER["Central_Meridian",171.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]';

let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "terrain-"));
});
afterEach(async () => {
  await rm(folder, { recursive: true });
});

async function file(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, content);
  return path;
}

const HEIGHTS = Array.from({ length: 12 * 10 }, (_, at) => 300 + ((at * 37) % 101));
const asc = (x: number, y: number, cell: number, heights: readonly number[] = HEIGHTS): string =>
  `ncols 12\nnrows 10\nxllcorner ${x}\nyllcorner ${y}\ncellsize ${cell}\n${heights.join(" ")}\n`;

describe("a grid in the area's own zone", () => {
  const centre = fromUtm({ eastingM: 500060, northingM: 5000050 }, ZONE_59S);

  test("is taken as it is, whatever the format", async () => {
    await file("terrain.prj", UTM_59S_PRJ);
    const ascii = await readElevationGrid(await file("terrain.asc", asc(500000, 5000000, 10)), centre, RULES);
    const tiff = await readElevationGrid(
      await file(
        "terrain.tif",
        tinyGeoTiff({
          rows: 10,
          columns: 12,
          heights: HEIGHTS,
          geoKeys: { 1024: 1, 1025: 1, 3072: 32759 },
          pixelScale: [10, 10],
          tiePoint: [0, 0, 500000, 5000100],
        }),
      ),
      centre,
      RULES,
    );
    expect(Array.from(ascii.heightsM)).toEqual(HEIGHTS);
    expect(ascii).toMatchObject({
      zone: ZONE_59S,
      westM: 500005,
      northM: 5000095,
      cellSizeM: 10,
      rows: 10,
      columns: 12,
    });
    expect({ ...tiff, source: ascii.source }).toEqual(ascii);
  });

  test("is cut to what is kept", async () => {
    await file("terrain.prj", UTM_59S_PRJ);
    const path = await file("terrain.asc", asc(500000, 5000000, 10));
    const grid = await readElevationGrid(path, centre, { ...RULES, keepWithinM: 26 });
    expect(grid).toMatchObject({ westM: 500035, northM: 5000075, rows: 6, columns: 6 });
    expect(grid.heightsM[0]).toBe(HEIGHTS[2 * 12 + 3]);
    expect(grid.heightsM[35]).toBe(HEIGHTS[7 * 12 + 8]);
  });

  test("keeps a mark where a hole was filled, and counts voids", async () => {
    await file("terrain.prj", UTM_59S_PRJ);
    const path = await file("terrain.asc", asc(500000, 5000000, 10, HEIGHTS.with(40, -9999).with(0, -9999)));
    const grid = await readElevationGrid(path, centre, RULES);
    expect(grid.source).toEqual({ format: "ESRI ASCII", voids: 2, filledCells: 1 });
    expect(grid.filled?.[40]).toBe(1);
    expect(grid.filled?.reduce((sum, mark) => sum + mark, 0)).toBe(1);
    expect(grid.heightsM[0]).toBeNaN();
  });

  test("with oblong cells is interpolated to square ones", async () => {
    const path = await file(
      "terrain.tif",
      tinyGeoTiff({
        rows: 10,
        columns: 12,
        heights: Array.from({ length: 120 }, (_, at) => 300 + (at % 12) * 10 + Math.floor(at / 12) * 20),
        geoKeys: { 1024: 1, 1025: 1, 3072: 32759 },
        pixelScale: [10, 20],
        tiePoint: [0, 0, 500000, 5000200],
      }),
    );
    const grid = await readElevationGrid(path, centre, RULES);
    expect(grid).toMatchObject({ cellSizeM: 10, sourceCellM: { eastM: 10, northM: 20 } });
    // A plane that rises 1 m per metre east and south.
    for (const [east, north] of [
      [0, 0],
      [40, 30],
      [-40, -25],
    ] as const) {
      const at = { eastingM: 500060 + east, northingM: 5000050 + north };
      const expected = 300 + (at.eastingM - 500005) + (5000190 - at.northingM);
      expect(elevationAtPosition(grid, fromUtm(at, ZONE_59S))).toBeCloseTo(expected, 2);
    }
  });
});

describe("the Jacksboro grid in degrees", () => {
  test("lands in zone 16N in cells as long as the shorter side of its own", async () => {
    const grid = await jacksboroGrid();
    expect(grid.zone).toEqual({ number: 16, hemisphere: "N" });
    expect(grid.cellSizeM).toBe(74.8);
    // WGS 84 geodesic at 36.303 N: 74.848 by 92.471 m (the grid's SOURCE.md).
    expect(grid.sourceCellM.eastM).toBeCloseTo(74.848, 3);
    expect(grid.sourceCellM.northM).toBeCloseTo(92.471, 3);
    expect(grid.source).toEqual({ format: "ESRI ASCII", voids: 0, filledCells: 0 });
  });

  test("keeps the ground where it is: heights at the file's own cells, east not west, north not south", async () => {
    const grid = await jacksboroGrid();
    const lines = (await readFile(JACKSBORO_ASC, "utf8")).split("\n").slice(6);
    let compared = 0;
    let sumM = 0;
    for (let row = 5; row < 340; row += 11) {
      for (let column = 5; column < 400; column += 13) {
        const heightM = Number(lines[row]?.split(" ")[column]);
        sumM += Math.abs((elevationAtPosition(grid, jacksboroPosition(row, column)) ?? Number.NaN) - heightM);
        compared++;
      }
    }
    expect(compared).toBe(31 * 31);
    // Two bilinear interpolations flatten tops and bottoms by a few metres; ground one cell off differs by 17 m on average.
    expect(sumM / compared).toBeLessThan(4);
  });

  test("Cross Mountain's summit stands at its published place", async () => {
    const grid = await jacksboroGrid();
    // 36.19833 N 84.23083 W, 16N 748981.86 4009501.53: computed with three programs, see geo's table.
    const summit = { lat: 36.19833, lon: -84.23083 };
    const { eastingM, northingM } = toUtm(summit, grid.zone);
    let best = { heightM: Number.NEGATIVE_INFINITY, distanceM: Number.NaN };
    for (let at = 0; at < grid.heightsM.length; at++) {
      const heightM = grid.heightsM[at]!;
      if (!(heightM > best.heightM)) continue;
      const east = grid.westM + (at % grid.columns) * grid.cellSizeM - eastingM;
      const north = grid.northM - Math.floor(at / grid.columns) * grid.cellSizeM - northingM;
      best = { heightM, distanceM: Math.hypot(east, north) };
    }
    expect(best.heightM).toBeGreaterThan(1068);
    expect(best.distanceM).toBeLessThan(93);
  });

  test("interpolating the projection between every 16th cell moves nothing by more than 5 cm of ground", async () => {
    // A raster whose heights are its longitude and latitude in metres shows where each cell was taken from.
    const heights = (part: "x" | "y") =>
      Array.from({ length: 120 * 100 }, (_, at) =>
        part === "x" ? (at % 120) * 60 : (99 - Math.floor(at / 120)) * 60,
      );
    for (const part of ["x", "y"] as const) {
      const text = `ncols 120\nnrows 100\nxllcenter 26\nyllcenter 69\ncellsize 0.0008333333333\n${heights(part).join(" ")}`;
      const grid = await readElevationGrid(
        await file("terrain.asc", text),
        { lat: 69.04, lon: 26.05 },
        RULES,
      );
      let worst = 0;
      for (let row = 3; row < grid.rows; row += 7) {
        for (let column = 3; column < grid.columns; column += 7) {
          const heightM = grid.heightsM[row * grid.columns + column]!;
          if (Number.isNaN(heightM)) continue;
          const at = {
            eastingM: grid.westM + column * grid.cellSizeM,
            northingM: grid.northM - row * grid.cellSizeM,
          };
          const { lat, lon } = fromUtm(at, grid.zone);
          const cells = (part === "x" ? lon - 26 : lat - 69) / 0.0008333333333;
          const cellM = part === "x" ? grid.sourceCellM.eastM : grid.sourceCellM.northM;
          worst = Math.max(worst, Math.abs(heightM / 60 - cells) * cellM);
        }
      }
      expect(worst).toBeLessThan(0.05);
      expect(worst).toBeGreaterThan(0);
    }
  });

  test("a grid across the 180th meridian is one piece", async () => {
    const text = asc(
      179.995,
      -17,
      0.001,
      Array.from({ length: 120 }, (_, at) => 100 + (at % 12)),
    );
    const grid = await readElevationGrid(
      await file("terrain.asc", text),
      { lat: -16.995, lon: -179.999 },
      RULES,
    );
    expect(elevationAtPosition(grid, { lat: -16.995, lon: 179.999 })).toBeCloseTo(103.5, 2);
    expect(elevationAtPosition(grid, { lat: -16.995, lon: -179.999 })).toBeCloseTo(105.5, 2);
  });

  test("a tile with voids keeps them void, and never beyond its own ground", async () => {
    const side = 1201;
    const bytes = new Uint8Array(side * side * 2);
    const view = new DataView(bytes.buffer);
    for (let at = 0; at < side * side; at++) view.setInt16(at * 2, 200, false);
    for (let row = 600; row < 620; row++) {
      for (let column = 600; column < 620; column++) view.setInt16((row * side + column) * 2, -32768, false);
    }
    view.setInt16((300 * side + 300) * 2, -32768, false);
    const centre = { lat: 67.52, lon: 26.46 };
    const grid = await readElevationGrid(await file("N67E026.hgt", bytes), centre, {
      ...RULES,
      keepWithinM: 20000,
    });
    expect(grid.source).toEqual({ format: "SRTM HGT", voids: 401, filledCells: 1 });
    expect(elevationAtPosition(grid, { lat: 68 - 610 / 1200, lon: 26 + 610 / 1200 })).toBeNull();
    expect(elevationAtPosition(grid, centre)).toBeCloseTo(200, 3);
    const heights = new Set(Array.from(grid.heightsM).filter((height) => !Number.isNaN(height)));
    expect([...heights]).toEqual([200]);
  });
});

describe("files that can not be used", () => {
  test.each([
    [
      "all voids",
      asc(
        26,
        67,
        0.001,
        HEIGHTS.map(() => -9999),
      ),
      "terrain-all-void",
    ],
    ["a no-data number that was not declared", asc(26, 67, 0.001, HEIGHTS.with(7, -32768)), "terrain-height"],
    ["heights in feet of a mountain", asc(26, 67, 0.001, HEIGHTS.with(7, 29032)), "terrain-height"],
    ["ground somewhere else", asc(27, 67, 0.001), "terrain-elsewhere"],
    ["half a continent", asc(20, 60, 1), "terrain-too-large"],
  ])("%s", async (_what, text, code) => {
    const path = await file("terrain.asc", text);
    await expect(readElevationGrid(path, { lat: 67.005, lon: 26.005 }, RULES)).rejects.toMatchObject({
      code,
    });
  });

  test("a grid of a far zone is elsewhere, not a crash", async () => {
    await file("terrain.prj", UTM_59S_PRJ);
    const path = await file("terrain.asc", asc(500000, 5000000, 10));
    await expect(readElevationGrid(path, JACKSBORO_CENTRE, RULES)).rejects.toMatchObject({
      code: "terrain-elsewhere",
    });
  });

  test("another kind of file is refused by its name", async () => {
    const path = await file("terrain.png", "x");
    await expect(readElevationGrid(path, JACKSBORO_CENTRE, RULES)).rejects.toMatchObject({
      code: "terrain-format",
      found: "terrain.png",
    });
  });
});
