import { describe, expect, test } from "vitest";
import { groundTops } from "../../scripts/terrain/groundTops.ts";
import { horizonProfile } from "../../scripts/terrain/horizonProfile.ts";
import { jacksboroGrid, jacksboroPosition } from "./jacksboro.ts";
import { seededRandom } from "./seededRandom.ts";
import { hills, positionAt, syntheticGrid } from "./syntheticGrid.ts";

const RULES = { horizonReachM: 15000, horizonNearM: 5000, refraction: 0.13, earthRadiusM: 6371000 };

describe("skylines that pass over low tiles", () => {
  test("equal the march over every half cell: angles, reach and breaks, to the last digit", () => {
    const random = seededRandom(7);
    const grid = syntheticGrid(601, 20, (east, north) => hills(east, north) + east / 40 + 6 * random());
    const holed = { ...grid, heightsM: grid.heightsM.slice() };
    for (let hole = 0; hole < 40; hole++) {
      const at = Math.floor(random() * holed.heightsM.length);
      holed.heightsM.fill(Number.NaN, at, at + 1 + Math.floor(random() * 6));
    }
    let broken = 0;
    for (const ground of [grid, holed]) {
      const tops = groundTops(ground);
      for (let site = 0; site < 8; site++) {
        const position = positionAt((random() - 0.5) * 11900, (random() - 0.5) * 11900);
        const eyeM = site % 2 === 0 ? 2 : 40 * random();
        const marched = horizonProfile(ground, position, eyeM, RULES);
        expect(horizonProfile(ground, position, eyeM, RULES, tops)).toEqual(marched);
        broken += marched.horizon?.brokenBearingsDeg.length ?? 0;
      }
    }
    expect(broken).toBeGreaterThan(0);
  });

  test("equal it on the Jacksboro grid, from cells and from between them", async () => {
    const grid = await jacksboroGrid();
    const tops = groundTops(grid);
    for (const [row, column] of [
      [166, 110],
      [297, 219],
      [288, 347],
      [80.4, 324.7],
    ] as const) {
      const position = jacksboroPosition(row, column);
      expect(horizonProfile(grid, position, 6, RULES, tops)).toEqual(
        horizonProfile(grid, position, 6, RULES),
      );
    }
  });

  test("equal it from a corner, along the edge and with a reach inside one tile", () => {
    const grid = syntheticGrid(201, 10, hills);
    const tops = groundTops(grid);
    for (const [eastM, northM] of [
      [1000, 1000],
      [-1000, 0],
      [640, 640],
      [0, 0],
    ] as const) {
      for (const horizonReachM of [12, 300, 15000]) {
        const rules = { ...RULES, horizonReachM };
        const position = positionAt(eastM, northM);
        const marched = horizonProfile(grid, position, 2, rules);
        expect(horizonProfile(grid, position, 2, rules, tops)).toEqual(marched);
      }
    }
  });
});

describe("tops of tiles", () => {
  test("no interpolated height in a tile is higher, and a tile with a void is infinite", () => {
    const grid = syntheticGrid(101, 10, hills);
    grid.heightsM[20 * 101 + 40] = Number.NaN;
    for (const { shift, columns, topsM } of groundTops(grid).levels) {
      for (let row = 0; row < 101; row++) {
        for (let column = 0; column < 101; column++) {
          const top = topsM[(row >> shift) * columns + (column >> shift)]!;
          const heightM = grid.heightsM[row * 101 + column]!;
          if (Number.isNaN(heightM)) expect(top).toBe(Number.POSITIVE_INFINITY);
          else expect(top).toBeGreaterThanOrEqual(heightM);
        }
      }
    }
  });
});
