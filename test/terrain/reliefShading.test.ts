import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { ElevationGrid } from "../../scripts/terrain/elevationGrid.ts";
import { printShading } from "../../scripts/terrain/printShading.ts";
import { groundForm, reliefShading } from "../../scripts/terrain/reliefShading.ts";
import { slopeAspectGrid } from "../../scripts/terrain/slopeAspect.ts";
import { jacksboroGrid } from "./jacksboro.ts";
import { hills, plane, syntheticGrid } from "./syntheticGrid.ts";

const LIGHT = { azimuthDeg: 315, altitudeDeg: 45, exaggeration: 1 };
const PRINT = { ...LIGHT, inkMax: 0.25, valleyShare: 0.4, lowM: 400, highM: 700 };
const middle = (grid: ElevationGrid): number => ((grid.rows * grid.columns - 1) / 2) | 0;

describe("shading", () => {
  test("equals gdaldem hillshade on 2000 cells of the Jacksboro grid within 1 grey", async () => {
    const grid = await jacksboroGrid();
    const grey = reliefShading(grid, LIGHT);
    const rows = readFileSync(new URL("../fixtures/jacksboro/gdal-hillshade.csv", import.meta.url), "utf8")
      .trim()
      .split("\n")
      .slice(1)
      .map((row) => row.split(",").map(Number) as [number, number, number]);
    expect(rows).toHaveLength(2000);
    for (const [row, column, expected] of rows) {
      expect(Math.abs(grey[row * grid.columns + column]! - expected)).toBeLessThanOrEqual(1);
    }
    // Where GDAL has no value, 0, there is none here either.
    expect(rows.some(([, , expected]) => expected === 0)).toBe(true);
  });

  // gdaldem 3.6.2 hillshade on the volcano grid read as 61 rows of 87 columns, row 0 north.
  test.each([
    [10, 10, 222],
    [40, 30, 130],
    [60, 20, 173],
    [20, 45, 152],
  ])("volcano column %i, row %i is %i", (column, row, expected) => {
    const { width, height, values } = JSON.parse(
      readFileSync(new URL("../fixtures/volcano/volcano.json", import.meta.url), "utf8"),
    );
    const grid = {
      ...syntheticGrid(3, 10, () => 0),
      rows: height,
      columns: width,
      heightsM: Float32Array.from(values as number[]),
    };
    expect(Math.abs(reliefShading(grid, LIGHT)[row * width + column]! - expected)).toBeLessThanOrEqual(1);
  });

  test("HO-3: Esri's worked window is 154", () => {
    const grid = { ...syntheticGrid(3, 5, () => 0) };
    grid.heightsM = Float32Array.of(2450, 2461, 2483, 2452, 2461, 2483, 2447, 2455, 2477);
    expect(reliefShading(grid, LIGHT)[4]).toBe(154);
  });

  test("HO-4: a plane of 20 degrees facing 225 is 169.44 of 255, and of 1 to 255 the same within 1", () => {
    const grid = syntheticGrid(5, 10, plane(20, 225));
    expect(Math.abs(reliefShading(grid, LIGHT)[middle(grid)]! - 169.44)).toBeLessThanOrEqual(1);
  });

  test("ground that faces the light is white, ground that faces away is 1", () => {
    const facing = syntheticGrid(5, 10, plane(45, 315));
    expect(reliefShading(facing, LIGHT)[middle(facing)]).toBe(255);
    const away = syntheticGrid(5, 10, plane(60, 135));
    expect(reliefShading(away, LIGHT)[middle(away)]).toBe(1);
  });

  test("turning ground and light together changes nothing", () => {
    const before = reliefShading(syntheticGrid(41, 10, hills), LIGHT);
    const after = reliefShading(
      syntheticGrid(41, 10, (east, north) => hills(-north, east)),
      { ...LIGHT, azimuthDeg: 45 },
    );
    for (let row = 0; row < 41; row++) {
      for (let column = 0; column < 41; column++) {
        // Heights are 32-bit: a grey on the edge between two may fall either way.
        expect(Math.abs(after[column * 41 + 40 - row]! - before[row * 41 + column]!)).toBeLessThanOrEqual(1);
      }
    }
  });

  test("the border and cells beside or on a void are 0", () => {
    const grid = syntheticGrid(9, 10, hills);
    grid.heightsM[4 * 9 + 4] = Number.NaN;
    const grey = reliefShading(grid, LIGHT);
    const isUnknown = (row: number, column: number) => grey[row * 9 + column] === 0;
    expect([isUnknown(0, 4), isUnknown(4, 0), isUnknown(8, 8)]).toEqual([true, true, true]);
    expect([isUnknown(4, 4), isUnknown(3, 3), isUnknown(5, 4)]).toEqual([true, true, true]);
    expect([isUnknown(2, 4), isUnknown(4, 6), isUnknown(1, 1)]).toEqual([false, false, false]);
  });

  test("light under the horizon is refused", () => {
    expect(() => reliefShading(syntheticGrid(3, 10, hills), { ...LIGHT, altitudeDeg: -1 })).toThrow(
      RangeError,
    );
  });
});

describe("slope, aspect and shading in one pass", () => {
  test("equals slope and aspect by themselves, and the shading by itself", () => {
    const grid = syntheticGrid(61, 10, hills);
    grid.heightsM.fill(Number.NaN, 30 * 61 + 10, 30 * 61 + 14);
    const form = groundForm(grid, 0.5, LIGHT);
    const { slopeDeg, aspectGridDeg } = slopeAspectGrid(grid, 0.5);
    let known = 0;
    slopeDeg.forEach((slope, at) => {
      expect(Number.isNaN(form.slopeDeg[at]!)).toBe(Number.isNaN(slope));
      expect(Number.isNaN(form.aspectGridDeg[at]!)).toBe(Number.isNaN(aspectGridDeg[at]!));
      if (Number.isNaN(slope)) return;
      known++;
      // Same differences in another order of additions: last digits of 32-bit results.
      expect(form.slopeDeg[at]).toBeCloseTo(slope, 4);
      if (!Number.isNaN(aspectGridDeg[at]!))
        expect(form.aspectGridDeg[at]).toBeCloseTo(aspectGridDeg[at]!, 3);
    });
    expect(known).toBeGreaterThan(3400);
    expect(form.grey).toEqual(reliefShading(grid, LIGHT));
  });
});

describe("shading for print", () => {
  test("level and lit ground is paper, and no ink passes the limit", () => {
    expect(
      printShading(
        syntheticGrid(5, 10, () => 650),
        PRINT,
      ).every((grey) => grey === 255),
    ).toBe(true);
    const lit = syntheticGrid(5, 10, plane(20, 315));
    expect(printShading(lit, PRINT)[middle(lit)]).toBe(255);
    const steep = syntheticGrid(5, 10, (east, north) => 5000 + plane(70, 135)(east, north));
    // Full shade on the highest ground: 25 % ink is 255 x 0.75 = 191.
    expect(printShading(steep, PRINT)[middle(steep)]).toBe(191);
    for (const grey of printShading(syntheticGrid(61, 10, hills), PRINT))
      expect(grey).toBeGreaterThanOrEqual(191);
  });

  test("the same slope is fainter in the valley than on the height", () => {
    const shadeAt = (heightM: number): number => {
      const grid = syntheticGrid(5, 10, (east, north) => plane(25, 135)(east, north) - 500 + heightM);
      return 255 - printShading(grid, PRINT)[middle(grid)]!;
    };
    expect(shadeAt(700)).toBeGreaterThan(shadeAt(550));
    expect(shadeAt(550)).toBeGreaterThan(shadeAt(400));
    expect(shadeAt(400) / shadeAt(700)).toBeCloseTo(0.4, 1);
    expect(shadeAt(300)).toBe(shadeAt(400));
  });

  test("a void and the border stay paper", () => {
    const grid = syntheticGrid(9, 10, plane(30, 135));
    grid.heightsM[40] = Number.NaN;
    const grey = printShading(grid, PRINT);
    expect([grey[0], grey[40], grey[39]]).toEqual([255, 255, 255]);
  });
});
