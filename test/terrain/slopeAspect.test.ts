import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseAsciiGrid } from "../../scripts/terrain/parseAsciiGrid.ts";
import {
  hornSlopeAspect,
  type SlopeAspect,
  slopeAspectAtCell,
  slopeAspectGrid,
  type Window3x3,
} from "../../scripts/terrain/slopeAspect.ts";
import { JACKSBORO_ASC, jacksboroGrid } from "./jacksboro.ts";
import { hills, plane, syntheticGrid } from "./syntheticGrid.ts";

const FLAT_DEG = 0.5;
const square = (cellM: number) => ({ eastM: cellM, northM: cellM });

function horn(window: Window3x3, cellM: number): SlopeAspect {
  const result = hornSlopeAspect(window, square(cellM), FLAT_DEG);
  if (result === null) throw new Error("no slope");
  return result;
}

const turn = (a: number | null, b: number | null): number =>
  a === null || b === null ? Number.NaN : Math.abs(((a - b + 540) % 360) - 180);

describe("slope and aspect of nine heights, by Horn", () => {
  // Esri help, "How Slope works": dz/dx 0.05, dz/dy -3.8; the printed 75.25762 uses a shortened 180/pi.
  test("HO-1: the worked slope example", () => {
    const result = horn([50, 45, 50, 30, 30, 30, 8, 10, 10], 5);
    expect(result.slopeDeg).toBeCloseTo(75.2577, 3);
    expect(result.aspectDeg).toBeCloseTo(180.75, 1);
  });

  // Esri help, "How Aspect works" (from memory, recalculated): dz/dx -8.125, dz/dy -0.375.
  test("HO-2: the worked aspect example", () => {
    expect(horn([101, 92, 85, 101, 92, 85, 101, 91, 84], 1).aspectDeg).toBeCloseTo(92.643, 2);
  });

  // Esri help, "How Hillshade works" (from memory, recalculated): dz/dx 3.125, dz/dy -0.525.
  test("HO-3: the worked hillshade example's slope", () => {
    expect(horn([2450, 2461, 2483, 2452, 2461, 2483, 2447, 2455, 2477], 5).slopeDeg).toBeCloseTo(72.485, 2);
  });

  test("HO-4: an exact plane of 20 degrees that faces south-west", () => {
    const grid = syntheticGrid(5, 10, plane(20, 225));
    const result = slopeAspectAtCell(grid, 2, 2, FLAT_DEG);
    // 32-bit heights of 500 m hold 0.03 mm in 20 m: 1e-4 degrees.
    expect(result?.slopeDeg).toBeCloseTo(20, 3);
    expect(result?.aspectDeg).toBeCloseTo(225, 3);
  });

  test("HO-5: flat ground has slope 0 and faces nowhere, which is not north", () => {
    expect(horn([7, 7, 7, 7, 7, 7, 7, 7, 7], 10)).toEqual({ slopeDeg: 0, aspectDeg: null });
    expect(hornSlopeAspect([7, 7, 7, 7, 7, 7, 7, 7, 7], square(10), 0)).toEqual({
      slopeDeg: 0,
      aspectDeg: null,
    });
  });

  test("ground under half a degree faces nowhere", () => {
    const rise = (slopeDeg: number): Window3x3 => {
      const step = Math.tan((slopeDeg * Math.PI) / 180) * 10;
      return [0, step, 2 * step, 0, step, 2 * step, 0, step, 2 * step];
    };
    expect(horn(rise(0.49), 10).aspectDeg).toBeNull();
    expect(horn(rise(0.51), 10).aspectDeg).toBeCloseTo(270, 6);
  });

  test("an unknown height among the nine makes the slope unknown, also in the middle", () => {
    for (let at = 0; at < 9; at++) {
      const window = [1, 2, 3, 4, 5, 6, 7, 8, 9].with(at, Number.NaN) as unknown as Window3x3;
      expect(hornSlopeAspect(window, square(10), FLAT_DEG)).toBeNull();
    }
  });
});

describe("invariants of slope and aspect", () => {
  const windows = fc
    .tuple(...Array.from({ length: 9 }, () => fc.integer({ min: -4000, max: 4000 })))
    .map((heights) => heights.map((height) => height / 100) as unknown as Window3x3);
  const seeded = { seed: 1981, numRuns: 500 };

  test("turning the ground by a right angle turns the aspect and keeps the slope", () => {
    fc.assert(
      fc.property(windows, (window) => {
        const [a, b, c, d, e, f, g, h, i] = window;
        const before = horn(window, 10);
        const after = horn([g, d, a, h, e, b, i, f, c], 10);
        expect(after.slopeDeg).toBeCloseTo(before.slopeDeg, 9);
        if (before.slopeDeg > 1)
          expect(turn(after.aspectDeg, (before.aspectDeg ?? 0) + 90)).toBeLessThan(1e-9);
      }),
      seeded,
    );
  });

  test("mirroring the ground east to west mirrors the aspect and keeps the slope", () => {
    fc.assert(
      fc.property(windows, (window) => {
        const [a, b, c, d, e, f, g, h, i] = window;
        const before = horn(window, 10);
        const after = horn([c, b, a, f, e, d, i, h, g], 10);
        expect(after.slopeDeg).toBeCloseTo(before.slopeDeg, 9);
        if (before.slopeDeg > 1)
          expect(turn(after.aspectDeg, 360 - (before.aspectDeg ?? 0))).toBeLessThan(1e-9);
      }),
      seeded,
    );
  });

  test("raising all the ground changes nothing, and the aspect stays in 0 to 360", () => {
    fc.assert(
      fc.property(windows, (window) => {
        const before = horn(window, 10);
        const after = horn(window.map((height) => height + 1000) as unknown as Window3x3, 10);
        expect(after.slopeDeg).toBeCloseTo(before.slopeDeg, 6);
        const aspectDeg = before.aspectDeg ?? 0;
        expect(aspectDeg >= 0 && aspectDeg < 360).toBe(true);
      }),
      seeded,
    );
  });
});

describe("a whole grid", () => {
  test("agrees with the slope and aspect of each cell", () => {
    const grid = syntheticGrid(41, 10, hills);
    const whole = slopeAspectGrid(grid, FLAT_DEG);
    let compared = 0;
    for (let row = 0; row < 41; row++) {
      for (let column = 0; column < 41; column++) {
        const at = row * 41 + column;
        const cell = slopeAspectAtCell(grid, row, column, FLAT_DEG);
        if (cell === null) {
          expect(whole.slopeDeg[at]).toBeNaN();
          continue;
        }
        compared++;
        expect(whole.slopeDeg[at]).toBeCloseTo(cell.slopeDeg, 4);
        if (cell.aspectDeg !== null)
          expect(turn(whole.aspectGridDeg[at]!, cell.aspectDeg)).toBeLessThan(1e-3);
      }
    }
    expect(compared).toBe(39 * 39);
  });

  test("a void leaves its eight neighbours without a slope, and no others", () => {
    const grid = syntheticGrid(11, 10, plane(10, 90));
    grid.heightsM[5 * 11 + 5] = Number.NaN;
    const { slopeDeg } = slopeAspectGrid(grid, FLAT_DEG);
    const unknown = Array.from(slopeDeg).filter(Number.isNaN).length;
    expect(unknown).toBe(9 + 40);
  });

  // gdaldem 3.6.2 (Horn): the sample and its commands are described in test/fixtures/jacksboro/SOURCE.md.
  test("equals gdaldem on 2000 cells of the Jacksboro grid to 0.01 degrees", async () => {
    const grid = await jacksboroGrid();
    const whole = slopeAspectGrid(grid, FLAT_DEG);
    const text = readFileSync(new URL("../fixtures/jacksboro/gdaldem-sample.csv", import.meta.url), "utf8");
    const rows = text.trim().split("\n").slice(1);
    expect(rows).toHaveLength(2000);
    let aspects = 0;
    for (const line of rows) {
      const [row, column, slopeDeg, aspectDeg] = line.split(",").map(Number) as [
        number,
        number,
        number,
        number,
      ];
      const at = row * grid.columns + column;
      expect(Math.abs(whole.slopeDeg[at]! - slopeDeg)).toBeLessThan(0.01);
      if (slopeDeg <= 1) continue;
      aspects++;
      expect(turn(whole.aspectGridDeg[at]!, aspectDeg)).toBeLessThan(0.01);
    }
    expect(aspects).toBe(1961);
  });
});

describe("published rows on real ground", () => {
  // gdaldem 3.6.2, -compute_edges, on the volcano grid read as 61 rows of 87 columns, row 0 north.
  const volcano = JSON.parse(
    readFileSync(new URL("../fixtures/volcano/volcano.json", import.meta.url), "utf8"),
  ) as {
    width: number;
    height: number;
    values: number[];
  };

  test.each([
    [10, 10, 119, 16.0543, 304.38],
    [40, 30, 172, 21.4304, 80.838],
    [60, 20, 140, 5.438, 66.801],
    [20, 45, 158, 27.266, 219.094],
  ])("volcano column %i, row %i", (column, row, heightM, slopeDeg, aspectDeg) => {
    const { width, values } = volcano;
    expect(values.reduce((sum, value) => sum + value, 0)).toBe(690907);
    expect(values[row * width + column]).toBe(heightM);
    const around = (at: number): number =>
      values[(row + Math.floor(at / 3) - 1) * width + column + (at % 3) - 1]!;
    const result = horn([0, 1, 2, 3, 4, 5, 6, 7, 8].map(around) as unknown as Window3x3, 10);
    expect(Math.abs(result.slopeDeg - slopeDeg)).toBeLessThan(0.001);
    expect(turn(result.aspectDeg, aspectDeg)).toBeLessThan(0.01);
  });

  // Jacksboro in degrees, Horn with cells of 74.848 m east and 92.471 m north, formula evaluated independently.
  test.each([
    [100, 100, 853, 3.833, 345.57],
    [200, 200, 897, 15.425, 113.07],
    [60, 300, 543, 1.702, 226.96],
    [297, 219, 1076, 1.327, 324.78],
  ])(
    "Jacksboro row %i, column %i, with cells longer north than east",
    (row, column, heightM, slopeDeg, aspectDeg) => {
      const { heightsM, columns } = parseAsciiGrid(readFileSync(JACKSBORO_ASC), null, 6000);
      expect(heightsM[row * columns + column]).toBe(heightM);
      const around = (at: number): number =>
        heightsM[(row + Math.floor(at / 3) - 1) * columns + column + (at % 3) - 1]!;
      const window = [0, 1, 2, 3, 4, 5, 6, 7, 8].map(around) as unknown as Window3x3;
      const result = hornSlopeAspect(window, { eastM: 74.848, northM: 92.471 }, FLAT_DEG);
      expect(Math.abs((result?.slopeDeg ?? Number.NaN) - slopeDeg)).toBeLessThan(0.02);
      expect(turn(result?.aspectDeg ?? null, aspectDeg)).toBeLessThan(0.3);
    },
  );
});
