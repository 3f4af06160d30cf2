import { describe, expect, test } from "vitest";
import {
  greatestUpwindSlopeDeg,
  maxUpwindSlope,
  maxUpwindSlopes,
} from "../../scripts/terrain/maxUpwindSlope.ts";
import { hills, plane, positionAt, syntheticGrid } from "./syntheticGrid.ts";

const RULES = { sxDistanceM: 300, sxStepM: 15, sxWindowDeg: 15, sxWindowStepDeg: 5 };

describe("greatest upwind slope (Winstral, Elder and Davis 2002)", () => {
  test("SX-1: sheltered behind higher ground", () => {
    expect(greatestUpwindSlopeDeg(100, [102, 110, 125, 120], 30)).toBeCloseTo(15.524, 3);
    expect(greatestUpwindSlopeDeg(100, [102], 30)).toBeCloseTo(3.814, 3);
    expect(greatestUpwindSlopeDeg(100, [102, 110], 30)).toBeCloseTo(9.462, 3);
  });

  test("SX-2: exposed over lower ground", () => {
    expect(greatestUpwindSlopeDeg(100, [98, 95, 97, 90], 30)).toBeCloseTo(-1.909, 3);
    expect(greatestUpwindSlopeDeg(100, [98, 95], 30)).toBeCloseTo(-3.814, 3);
  });

  test("without ground there is no slope to tell", () => {
    expect(() => greatestUpwindSlopeDeg(100, [], 30)).toThrow(RangeError);
  });
});

describe("shelter of a site", () => {
  const grid = syntheticGrid(101, 10, plane(20, 90));

  test("on a plane of 20 degrees, wind from straight uphill gives the window's mean 19.72", () => {
    // Mean of atan(tan 20 cos d) for d = -15 to 15 by 5, evaluated independently.
    expect(maxUpwindSlope(grid, positionAt(0, 0), 270, RULES)).toBeCloseTo(19.72, 2);
  });

  test("wind from straight downhill exposes by as much, wind along the slope neither", () => {
    expect(maxUpwindSlope(grid, positionAt(0, 0), 90, RULES)).toBeCloseTo(-19.72, 2);
    expect(maxUpwindSlope(grid, positionAt(0, 0), 0, RULES)).toBeCloseTo(0, 2);
  });

  test("the sixteen directions follow the compass", () => {
    const all = maxUpwindSlopes(grid, positionAt(0, 0), RULES);
    expect(all).toHaveLength(16);
    expect(all[12]).toBeCloseTo(19.72, 2);
    expect(all[4]).toBeCloseTo(-19.72, 2);
    for (let at = 0; at < 16; at++) {
      expect(all[at]).toBe(maxUpwindSlope(grid, positionAt(0, 0), at * 22.5, RULES));
    }
  });

  test("turning the ground by a right angle turns the directions", () => {
    const before = maxUpwindSlopes(syntheticGrid(101, 10, hills), positionAt(0, 0), RULES);
    const after = maxUpwindSlopes(
      syntheticGrid(101, 10, (east, north) => hills(-north, east)),
      positionAt(0, 0),
      RULES,
    );
    before.forEach((sxDeg, at) => {
      expect(after[(at + 4) % 16]).toBeCloseTo(sxDeg ?? Number.NaN, 3);
    });
  });

  test("mirroring the ground mirrors the directions", () => {
    const before = maxUpwindSlopes(syntheticGrid(101, 10, hills), positionAt(0, 0), RULES);
    const after = maxUpwindSlopes(
      syntheticGrid(101, 10, (east, north) => hills(-east, north)),
      positionAt(0, 0),
      RULES,
    );
    before.forEach((sxDeg, at) => {
      expect(after[(16 - at) % 16]).toBeCloseTo(sxDeg ?? Number.NaN, 3);
    });
  });

  test("a ridge beyond the distance gives no shelter", () => {
    const ridge = (atM: number) => syntheticGrid(101, 10, (east) => (east < -atM ? 600 : 500));
    expect(maxUpwindSlope(ridge(250), positionAt(0, 0), 270, RULES)).toBeGreaterThan(15);
    expect(maxUpwindSlope(ridge(320), positionAt(0, 0), 270, RULES)).toBe(0);
  });

  test("ground that is missing upwind makes the shelter unknown for that wind alone", () => {
    const all = maxUpwindSlopes(grid, positionAt(300, 0), RULES);
    expect(all[4]).toBeNull();
    expect(all[12]).toBeCloseTo(19.72, 2);
    expect(maxUpwindSlopes(grid, positionAt(600, 0), RULES).every((sxDeg) => sxDeg === null)).toBe(true);
  });
});
