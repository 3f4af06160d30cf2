import { describe, expect, test } from "vitest";
import {
  meanWind,
  terrainShelter,
  upwindSlopeDeg,
  windAtSite,
  windClass,
} from "../../scripts/air/windAtSite.ts";
import { constants, planeSxDeg } from "./planeSite.ts";

describe("the wind at a site", () => {
  test("worked shelter figures", () => {
    const ours = [-20, -5, 0, 10, 15.524, 30].map((sx) => terrainShelter(sx, constants));
    [1.3, 1.125, 1, 0.75, 0.6119, 0.4].forEach((expected, i) => {
      expect(ours[i]).toBeCloseTo(expected, 4);
    });
  });

  test("a plane of 20 deg shelters by 19.72 deg straight up it, and lies open straight down it", () => {
    const sx = planeSxDeg(20, 90);
    expect(upwindSlopeDeg(sx, 270)).toBeCloseTo(19.72, 2);
    expect(upwindSlopeDeg(sx, 90)).toBeCloseTo(-19.72, 2);
    const between = upwindSlopeDeg(sx, 260);
    expect(between).toBeLessThan(upwindSlopeDeg(sx, 270));
    expect(between).toBeGreaterThan(upwindSlopeDeg(sx, 247.5));
  });

  test("cover keeps of the 10 m wind what wind adjustment factors keep of the 20 ft wind over 1.15", () => {
    // Andrews 2012, RMRS-GTR-266: unsheltered and sheltered factors, written out here; heights in feet.
    const unsheltered = (h: number): number => 1.83 / Math.log((20 + 0.36 * h) / (0.13 * h));
    const sheltered = (h: number, f: number): number =>
      0.555 / (Math.sqrt(f * h) * Math.log((20 + 0.36 * h) / (0.13 * h)));
    expect(unsheltered(2)).toBeCloseTo(0.418, 3);
    expect(sheltered(60, 0.0667)).toBeCloseTo(0.1658, 3);
    // Table factors are given to one digit: half a digit of 0.1 for the open, a quarter of it under crowns.
    expect(Math.abs(constants.windCover.open * 1.15 - unsheltered(2))).toBeLessThan(0.05);
    expect(Math.abs(constants.windCover.timber * 1.15 - sheltered(60, 0.0667))).toBeLessThan(0.025);
    expect(Math.abs(constants.windCover["dense timber"] * 1.15 - sheltered(60, 0.16))).toBeLessThan(0.025);
    expect(constants.windCover.edge).toBeLessThan(constants.windCover.open);
    expect(constants.windCover.edge).toBeGreaterThan(constants.windCover.timber);
  });

  test("a south-westerly blows to the north-east, gusts by the same factor", () => {
    const wind = { windFromDeg: 225, windSpeedMps: 5, gustMps: 10 };
    const site = windAtSite(wind, { cover: "open", sxDeg: null }, constants);
    expect(site?.eastMps).toBeCloseTo(0.35 * 3.5355, 4);
    expect(site?.northMps).toBeCloseTo(0.35 * 3.5355, 4);
    expect(site?.gustMps).toBeCloseTo(3.5, 6);
  });

  test("an unknown speed, or a variable wind that is not calm, is not known; a calm needs no direction", () => {
    const site = { cover: "open", sxDeg: null } as const;
    expect(windAtSite({ windFromDeg: 90, windSpeedMps: null }, site, constants)).toBeNull();
    expect(windAtSite({ windFromDeg: null, windSpeedMps: 2 }, site, constants)).toBeNull();
    expect(windAtSite({ windFromDeg: null, windSpeedMps: 0.3 }, site, constants)?.speedMps).toBe(0);
    expect(() => windAtSite({ windFromDeg: 90, windSpeedMps: -1 }, site, constants)).toThrow(RangeError);
  });

  test("a doubtful direction and a lee widen the spread and never turn the wind", () => {
    const wind = { windFromDeg: 270, windSpeedMps: 5 };
    const plain = windAtSite(wind, { cover: "open", sxDeg: null }, constants);
    const doubtful = windAtSite(
      { ...wind, isDirectionDoubtful: true },
      { cover: "open", sxDeg: null },
      constants,
    );
    const lee = windAtSite(wind, { cover: "open", sxDeg: new Array(16).fill(16) }, constants);
    expect(doubtful?.varianceMps2).toBeGreaterThan(plain?.varianceMps2 ?? 9);
    expect(doubtful?.eastMps).toBe(plain?.eastMps);
    expect(lee?.isLee).toBe(true);
    expect(lee?.eastMps).toBeGreaterThan(0);
  });

  test("classes of a forecast wind", () => {
    expect([0, 0.49, 0.5, 3.99, 4, 12].map((u) => windClass(u, constants))).toEqual([
      "calm",
      "calm",
      "light",
      "light",
      "fresh",
      "fresh",
    ]);
  });
});

describe("averaging winds as vectors (formula evaluated, tolerance 0.01)", () => {
  test.each([
    [
      [
        [5, 350],
        [5, 10],
      ],
      4.924,
      0,
    ],
    [
      [
        [4, 350],
        [6, 20],
      ],
      4.8366,
      8.07,
    ],
    [
      [
        [4, 0],
        [3, 90],
      ],
      2.5,
      36.87,
    ],
    [
      [
        [2, 180],
        [4, 225],
        [3, 270],
      ],
      2.5229,
      230.36,
    ],
  ])("%j", (winds, speed, from) => {
    const mean = meanWind(
      winds.map(([windSpeedMps, windFromDeg]) => ({
        windSpeedMps: windSpeedMps ?? 0,
        windFromDeg: windFromDeg ?? 0,
      })),
    );
    expect(mean.windSpeedMps).toBeCloseTo(speed, 2);
    const off = (((mean.windFromDeg ?? 99) - from + 540) % 360) - 180;
    expect(Math.abs(off)).toBeLessThan(0.01);
  });

  test("winds that cancel have no direction", () => {
    const mean = meanWind([
      { windFromDeg: 90, windSpeedMps: 3 },
      { windFromDeg: 270, windSpeedMps: 3 },
    ]);
    expect(mean).toEqual({ windFromDeg: null, windSpeedMps: 0 });
  });
});
