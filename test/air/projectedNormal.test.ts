import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { directionDensity, normalShare, sectorChance } from "../../scripts/air/projectedNormal.ts";

const RADIAN = Math.PI / 180;

describe("the direction of the drift", () => {
  test.each([
    [0, 0, 40, 0.111111],
    [0.5, -20, 20, 0.19147],
    [1, -30, 30, 0.419223],
    [1.5, 60, 120, 0.065949],
    [2, -30, 30, 0.686472],
    [2.5, 30, 90, 0.102095],
    [3, -90, 90, 0.99865],
  ])("steadiness %f, sector %f to %f: chance %f (tolerance: the digits given)", (kappa, from, to, chance) => {
    expect(Math.abs(sectorChance(kappa, from, to) - chance)).toBeLessThan(1e-6);
  });

  test("densities per radian ahead, abeam and behind", () => {
    expect([0, 90, 180].map((d) => directionDensity(1, d * RADIAN).toFixed(6))).toEqual([
      "0.432180",
      "0.096532",
      "0.033238",
    ]);
    expect(directionDensity(3, 0)).toBeCloseTo(1.196979, 6);
  });

  test("the normal distribution function at tabled points (standard table, 6 digits)", () => {
    expect(normalShare(0)).toBe(0.5);
    expect(normalShare(1.28)).toBeCloseTo(0.899727, 6);
    expect(normalShare(-1.96)).toBeCloseTo(0.024998, 6);
    expect(normalShare(5) + normalShare(-5)).toBeCloseTo(1, 12);
    expect(normalShare(-4.5) / 3.3976731e-6).toBeCloseTo(1, 6);
  });

  test("the half plane ahead has the chance Phi(kappa), the whole circle 1", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 12, noNaN: true }), (kappa) => {
        expect(Math.abs(sectorChance(kappa, -90, 90) - normalShare(kappa))).toBeLessThan(1e-5);
        expect(sectorChance(kappa, 0, 360)).toBe(1);
        expect(Math.abs(sectorChance(kappa, 10, 200) + sectorChance(kappa, 200, 370) - 1)).toBeLessThan(1e-9);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test("the table is within 1e-5 of Simpson's rule with panels of half a degree", () => {
    const angle = fc.double({ min: -180, max: 180, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 12, noNaN: true }),
        angle,
        fc.double({ min: 1, max: 359, noNaN: true }),
        (kappa, from, width) => {
          const panels = 2 * Math.ceil(width);
          const h = (width * RADIAN) / panels;
          let sum = 0;
          for (let i = 0; i <= panels; i++) {
            const weight = i === 0 || i === panels ? 1 : i % 2 ? 4 : 2;
            sum += weight * directionDensity(kappa, from * RADIAN + i * h);
          }
          const exact = (sum * h) / 3;
          expect(Math.abs(sectorChance(kappa, from, from + width) - exact)).toBeLessThan(1e-5);
        },
      ),
      { seed: 12, numRuns: 600 },
    );
  });

  test("a steadiness out of range is refused", () => {
    expect(() => sectorChance(-0.1, 0, 10)).toThrow(RangeError);
    expect(() => sectorChance(Number.NaN, 0, 10)).toThrow(RangeError);
  });
});
