import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { gridConvergenceDeg } from "../../scripts/geo/utm.ts";
import { broadSlope, fitPlane, gridTrust } from "../../scripts/terrain/broadSlope.ts";
import { landform } from "../../scripts/terrain/landform.ts";
import { parseAsciiGrid } from "../../scripts/terrain/parseAsciiGrid.ts";
import { slopeAspectOfGradient } from "../../scripts/terrain/slopeAspect.ts";
import { JACKSBORO_ASC, jacksboroGrid, jacksboroPosition } from "./jacksboro.ts";
import { plane, positionAt, syntheticGrid, ZONE } from "./syntheticGrid.ts";

const RULES = {
  fitRadiusMinM: 150,
  fitRadiusCells: 2.2,
  fitCellsMin: 9,
  trustCellM: 30,
  coarseCellM: 100,
  aspectFromSlopeDeg: 0.5,
};
const FORM_RULES = { flatSlopeDeg: 3, landformHeightM: 15, landformRadiusM: 500 };

const turn = (a: number | null | undefined, b: number): number =>
  typeof a === "number" ? Math.abs(((a - b + 540) % 360) - 180) : Number.NaN;

describe("the hillside around a site", () => {
  test.each([
    [5, 0],
    [20, 90],
    [20, 225],
    [35, 359],
  ])("a plane of %i degrees that faces %i is found exactly", (slopeDeg, aspectDeg) => {
    const { slope } = broadSlope(
      syntheticGrid(61, 10, plane(slopeDeg, aspectDeg)),
      positionAt(13, -27),
      RULES,
    );
    // 32-bit heights of 500 m.
    expect(slope?.slopeDeg).toBeCloseTo(slopeDeg, 3);
    expect(turn(slope?.aspectDeg, aspectDeg)).toBeLessThan(0.001);
    expect(slope).toMatchObject({ radiusM: 150, trust: "trusted" });
  });

  test("a boulder does not turn the hillside", () => {
    const hillside = plane(20, 90);
    const grid = syntheticGrid(
      61,
      10,
      (east, north) => hillside(east, north) + (Math.hypot(east, north) < 12 ? 6 : 0),
    );
    const { slope } = broadSlope(grid, positionAt(0, 10), RULES);
    expect(slope?.slopeDeg).toBeCloseTo(20, 0);
    expect(turn(slope?.aspectDeg, 90)).toBeLessThan(1);
  });

  test("flat ground faces nowhere", () => {
    const { slope } = broadSlope(
      syntheticGrid(61, 10, () => 500),
      positionAt(0, 0),
      RULES,
    );
    expect(slope).toMatchObject({ slopeDeg: 0, aspectDeg: null });
  });

  test("the aspect is turned from grid north to true north", () => {
    const grid = syntheticGrid(61, 10, plane(20, 90), { eastingM: 700000, northingM: 5000000 });
    const position = { ...positionAt(200000, 0) };
    const convergenceDeg = gridConvergenceDeg(position, ZONE);
    expect(convergenceDeg).toBeLessThan(-1.7);
    const { slope } = broadSlope(grid, position, RULES);
    expect(turn(slope?.aspectDeg, 90 + convergenceDeg)).toBeLessThan(0.001);
  });

  test("the radius grows with the cells of the file, and grids over 100 m give nothing", () => {
    const on = (cellM: number) => {
      const grid = syntheticGrid(31, cellM, plane(20, 90));
      return { trust: gridTrust(grid, RULES), ...broadSlope(grid, positionAt(0, 0), RULES) };
    };
    expect(on(30)).toMatchObject({ trust: "trusted", slope: { radiusM: 150, trust: "trusted" } });
    expect(on(90)).toMatchObject({ trust: "coarse", slope: { radiusM: 2.2 * 90, trust: "coarse" } });
    expect(on(100)).toMatchObject({ trust: "coarse" });
    expect(on(101)).toMatchObject({
      trust: "too coarse",
      slope: null,
      why: "the elevation grid is too coarse (101 m cells)",
    });
  });

  test("the longer side of the file's cells counts, not the cells made from it", () => {
    const grid = { ...syntheticGrid(61, 40, plane(20, 90)), sourceCellM: { eastM: 39, northM: 93 } };
    expect(broadSlope(grid, positionAt(0, 0), RULES).slope?.radiusM).toBeCloseTo(204.6, 9);
  });

  test("a void or the edge of the grid within the radius makes it unknown", () => {
    const grid = syntheticGrid(61, 10, plane(20, 90));
    expect(broadSlope(grid, positionAt(160, 0), RULES).slope).toBeNull();
    expect(broadSlope(grid, positionAt(140, 0), RULES).slope).not.toBeNull();
    grid.heightsM[30 * 61 + 44] = Number.NaN;
    expect(broadSlope(grid, positionAt(0, 0), RULES)).toEqual({
      slope: null,
      why: "ground within 150 m is missing from the elevation grid",
    });
    expect(broadSlope(grid, positionAt(-20, 0), RULES).slope).not.toBeNull();
  });

  test("too few cells give nothing", () => {
    const grid = syntheticGrid(31, 90, plane(20, 90));
    expect(
      broadSlope(grid, positionAt(0, 0), { ...RULES, fitRadiusMinM: 100, fitRadiusCells: 1.1 }),
    ).toMatchObject({
      slope: null,
    });
  });
});

// Independent table: planes over 160 m fitted to the file's own cells (row, column, height, slope/aspect).
const JACKSBORO = [
  ["E slope", 166, 110, 658, 20.5, 96],
  ["W slope", 166, 119, 648, 21.0, 275],
  ["N slope", 259, 110, 485, 20.9, 7],
  ["S slope", 183, 114, 742, 20.9, 175],
  ["E lower slope", 281, 232, 567, 14.4, 96],
  ["W lower slope", 158, 158, 548, 16.1, 277],
  ["ridge crest", 80, 324, 626, 0.7, 90],
  ["gully", 170, 192, 524, 11.7, 101],
  ["valley floor", 225, 195, 506, 2.3, 355],
  ["bench", 68, 147, 594, 5.5, 358],
  ["saddle", 81, 104, 681, 4.0, 263],
  ["spur", 222, 150, 858, 9.4, 120],
] as const;

describe("Jacksboro", () => {
  test.each(JACKSBORO)(
    "%s: the plane through the file's own cells",
    (_name, row, column, heightM, slopeDeg, aspectDeg) => {
      const { heightsM, columns } = parseAsciiGrid(readFileSync(JACKSBORO_ASC), null, 6000);
      expect(heightsM[row * columns + column]).toBe(heightM);
      const points: number[] = [];
      for (let down = -3; down <= 3; down++) {
        for (let across = -3; across <= 3; across++) {
          const [eastM, northM] = [across * 74.848, -down * 92.471];
          if (Math.hypot(eastM, northM) > 160) continue;
          points.push(eastM, northM, heightsM[(row + down) * columns + column + across]!);
        }
      }
      const gradient = fitPlane(points);
      const result = slopeAspectOfGradient(gradient?.east ?? Number.NaN, gradient?.north ?? Number.NaN, 0.5);
      // Half of the last printed digit.
      expect(Math.abs(result.slopeDeg - slopeDeg)).toBeLessThan(0.051);
      expect(turn(result.aspectDeg, aspectDeg)).toBeLessThan(0.51);
    },
  );

  test.each(JACKSBORO.slice(0, 4))(
    "%s: the same hillside on the metric grid",
    async (_n, row, column, _h, slopeDeg, aspectDeg) => {
      const rules = { ...RULES, fitRadiusMinM: 160, fitRadiusCells: 0 };
      const { slope } = broadSlope(await jacksboroGrid(), jacksboroPosition(row, column), rules);
      // Interpolating 75 by 92 m cells smooths: under 1 degree of slope and 4 of aspect on these even hillsides.
      expect(Math.abs((slope?.slopeDeg ?? Number.NaN) - slopeDeg)).toBeLessThan(1);
      expect(turn(slope?.aspectDeg, aspectDeg)).toBeLessThan(4);
    },
  );

  test.each([
    ["E slope", 166, 110, "slope"],
    ["ridge crest", 80, 324, "crest"],
    ["valley floor", 225, 195, "floor"],
    ["bench", 68, 147, "slope"],
  ] as const)("%s is seen as %s ground", async (_name, row, column, expected) => {
    const grid = await jacksboroGrid();
    const position = jacksboroPosition(row, column);
    const { slope } = broadSlope(grid, position, RULES);
    expect(landform(grid, position, slope?.slopeDeg ?? Number.NaN, FORM_RULES)).toEqual({
      landform: expected,
      why: null,
    });
  });
});

describe("landform", () => {
  const cone = (sign: number) =>
    syntheticGrid(121, 10, (east, north) => 500 + sign * Math.max(0, 60 - Math.hypot(east, north) / 8));

  test("flat ground 15 m over or under its surroundings is a crest or a floor, else flat", () => {
    expect(landform(cone(1), positionAt(0, 0), 1, FORM_RULES).landform).toBe("crest");
    expect(landform(cone(-1), positionAt(0, 0), 1, FORM_RULES).landform).toBe("floor");
    expect(
      landform(
        syntheticGrid(121, 10, () => 500),
        positionAt(0, 0),
        0,
        FORM_RULES,
      ).landform,
    ).toBe("flat");
  });

  test("steep ground is a slope wherever it lies", () => {
    expect(landform(cone(1), positionAt(0, 0), 3, FORM_RULES).landform).toBe("slope");
  });

  test("flat ground near the edge of the grid is unknown", () => {
    const result = landform(cone(1), positionAt(150, 0), 1, FORM_RULES);
    expect(result).toEqual({ landform: null, why: "ground within 500 m is missing from the elevation grid" });
  });
});
