import { describe, expect, test } from "vitest";
import {
  coversPosition,
  elevationAt,
  elevationAtPosition,
  isVoid,
} from "../../scripts/terrain/elevationGrid.ts";
import { plane, positionAt, syntheticGrid } from "./syntheticGrid.ts";

describe("height on a grid", () => {
  const slope = plane(20, 225);
  const grid = syntheticGrid(21, 10, slope);
  const middle = { eastingM: 500000, northingM: 5000000 };

  test("bilinear interpolation gives a plane back exactly, in the north as in the south", () => {
    for (const [east, north] of [
      [0, 0],
      [3, -7],
      [-91.5, 64.25],
      [100, 100],
      [-100, -100],
    ] as const) {
      // 32-bit heights of 500 m hold 0.03 mm.
      expect(elevationAt(grid, middle.eastingM + east, middle.northingM + north)).toBeCloseTo(
        slope(east, north),
        3,
      );
    }
  });

  test("beyond the outermost cell centres there is no height", () => {
    expect(elevationAt(grid, middle.eastingM + 100.01, middle.northingM)).toBeNull();
    expect(elevationAt(grid, middle.eastingM, middle.northingM - 100.01)).toBeNull();
    expect(coversPosition(grid, positionAt(0, 99))).toBe(true);
    expect(coversPosition(grid, positionAt(0, 101))).toBe(false);
  });

  test("a void makes the heights around it unknown, and not those at its neighbours' centres", () => {
    const holed = { ...grid, heightsM: grid.heightsM.slice() };
    holed.heightsM[10 * 21 + 10] = Number.NaN;
    expect(isVoid(holed, 10, 10)).toBe(true);
    expect(isVoid(holed, 10, 11)).toBe(false);
    expect(isVoid(holed, -1, 0)).toBe(true);
    expect(elevationAt(holed, middle.eastingM, middle.northingM)).toBeNull();
    expect(elevationAt(holed, middle.eastingM + 9, middle.northingM + 1)).toBeNull();
    expect(elevationAt(holed, middle.eastingM + 10, middle.northingM)).toBeCloseTo(slope(10, 0), 3);
    expect(elevationAt(holed, middle.eastingM, middle.northingM + 10)).toBeCloseTo(slope(0, 10), 3);
  });

  test("a position is found through the grid's own zone", () => {
    expect(elevationAtPosition(grid, positionAt(-40, 30))).toBeCloseTo(slope(-40, 30), 2);
  });
});
