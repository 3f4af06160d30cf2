import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { plumeConcentration, plumeSpread, raisedScent } from "../../scripts/air/scentPlume.ts";
import type { StabilityBand, StabilityClass } from "../../scripts/air/stabilityClass.ts";

const CLASSES: StabilityClass[] = ["A", "B", "C", "D", "E", "F"];
const anyClass = fc.constantFrom(...CLASSES);

describe("the spread of a plume", () => {
  // Briggs 1973 in Gifford 1976, open country; the curves at 100, 200, 500, 1000 m, two digits after the point
  test.each<[StabilityClass, [number, number][]]>([
    [
      "A",
      [
        [21.89, 20],
        [43.57, 40],
        [107.35, 100],
        [209.76, 200],
      ],
    ],
    [
      "B",
      [
        [15.92, 12],
        [31.68, 24],
        [78.07, 60],
        [152.55, 120],
      ],
    ],
    [
      "C",
      [
        [10.95, 7.92],
        [21.78, 15.69],
        [53.67, 38.14],
        [104.88, 73.03],
      ],
    ],
    [
      "D",
      [
        [7.96, 5.6],
        [15.84, 10.52],
        [39.04, 22.68],
        [76.28, 37.95],
      ],
    ],
    [
      "E",
      [
        [5.97, 2.91],
        [11.88, 5.66],
        [29.28, 13.04],
        [57.21, 23.08],
      ],
    ],
    [
      "F",
      [
        [3.98, 1.55],
        [7.92, 3.02],
        [19.52, 6.96],
        [38.14, 12.31],
      ],
    ],
  ])("class %s", (stability, table) => {
    for (const [i, downwindM] of [100, 200, 500, 1000].entries()) {
      const { acrossM, upwardM } = plumeSpread(stability, downwindM);
      // half a digit of the printed values
      expect(Math.abs(acrossM - table[i]![0])).toBeLessThan(0.0051);
      expect(Math.abs(upwardM - table[i]![1])).toBeLessThan(0.0051);
    }
  });

  test("is narrower the steadier the air", () => {
    for (const downwindM of [20, 100, 300, 2000]) {
      const across = CLASSES.map((stability) => plumeSpread(stability, downwindM).acrossM);
      expect(across).toEqual([...across].sort((a, b) => b - a));
    }
  });
});

describe("the concentration of a plume", () => {
  // Turner 1970, AP-26, problems 1 to 3; inputs and answers from memory, two digits
  test.each([
    ["problem 1", 3, { acrossM: 190, upwardM: 65 }, 7, 0, 0, 1.1e-5, 0.01],
    ["problem 2", 80, { acrossM: 36, upwardM: 18.5 }, 6, 60, 0, 3.3e-5, 0.01],
    ["problem 3", 80, { acrossM: 36, upwardM: 18.5 }, 6, 60, 50, 1.3e-5, 0.04],
  ])("%s", (_, strength, spread, windMps, sourceM, acrossM, expected, tolerance) => {
    const found = strength * plumeConcentration(spread, windMps, sourceM, { acrossM, heightM: 0 });
    expect(Math.abs(found / expected - 1)).toBeLessThan(tolerance);
  });

  // the formula evaluated with Briggs' curves at 200 m, wind 2 m/s, source and nose at 1 m; tolerance 0.1 %
  test.each<[StabilityClass, number, number]>([
    ["A", 9.127e-5, 7.201e-5],
    ["B", 2.0893e-4, 1.3346e-4],
    ["D", 9.46e-4, 1.5748e-4],
    ["F", 6e-3, 4.607e-6],
  ])("class %s on the axis and 30 m off it", (stability, axis, off) => {
    const spread = plumeSpread(stability, 200);
    const at = (acrossM: number) => plumeConcentration(spread, 2, 1, { acrossM, heightM: 1 });
    expect(Math.abs(at(0) / axis - 1)).toBeLessThan(0.001);
    expect(Math.abs(at(30) / off - 1)).toBeLessThan(0.001);
    expect(at(-30)).toBe(at(30));
  });

  test("falls as the wind rises, and is doubled by the ground under a source on it", () => {
    const spread = plumeSpread("D", 300);
    const ground = { acrossM: 0, heightM: 0 };
    expect(plumeConcentration(spread, 4, 0, ground)).toBeCloseTo(
      plumeConcentration(spread, 2, 0, ground) / 2,
      12,
    );
    const free = 1 / (2 * Math.PI * 2 * spread.acrossM * spread.upwardM);
    expect(plumeConcentration(spread, 2, 0, ground)).toBeCloseTo(2 * free, 12);
  });
});

describe("scent of a raised hunter beside the same hunter on the ground", () => {
  const scent = (stability: StabilityBand, raisedHeightM: number, downwindM: number, windMps = 3) =>
    raisedScent({
      stability,
      windMps,
      raisedHeightM,
      groundHeightM: 1,
      at: { downwindM, acrossM: 0, heightM: 1 },
    });

  test("is the quotient of two concentrations, wherever both can be told", () => {
    fc.assert(
      fc.property(anyClass, fc.double({ min: 60, max: 3000, noNaN: true }), (stability, downwindM) => {
        const spread = plumeSpread(stability, downwindM);
        const of = (sourceM: number) => plumeConcentration(spread, 3, sourceM, { acrossM: 0, heightM: 1 });
        expect(scent(stability, 6, downwindM).factor).toBeCloseTo(of(6) / of(1), 9);
      }),
      { seed: 11 },
    );
  });

  test("is never stronger at the nose than from nose height, weakens with height, and tends to 1 far away", () => {
    fc.assert(
      fc.property(
        anyClass,
        fc.double({ min: 5, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 10, noNaN: true }),
        (stability, downwindM, heightM) => {
          const factor = scent(stability, heightM, downwindM).factor!;
          expect(factor).toBeGreaterThanOrEqual(0);
          expect(factor).toBeLessThanOrEqual(1 + 1e-12);
          expect(scent(stability, heightM + 1, downwindM).factor).toBeLessThanOrEqual(factor);
        },
      ),
      { seed: 12 },
    );
    for (const stability of CLASSES) {
      expect(scent(stability, 6, 10_000).factor).toBeGreaterThan(0.97);
    }
  });

  test("lies between the factors of both classes the air is between, and names the band", () => {
    for (const [band, one, other] of [
      ["A-B", "A", "B"],
      ["B-C", "B", "C"],
      ["C-D", "C", "D"],
    ] as const) {
      const { factor, stability } = scent(band, 6, 150);
      expect(stability).toBe(band);
      expect(factor).toBeLessThan(scent(one, 6, 150).factor!);
      expect(factor).toBeGreaterThan(scent(other, 6, 150).factor!);
    }
  });

  test("is the same in every wind that is no calm, and null with why in calm", () => {
    expect(scent("D", 6, 150, 0.5).factor).toBe(scent("D", 6, 150, 5).factor);
    expect(scent("D", 6, 150, 0.49)).toMatchObject({ factor: null, why: "calm: scent goes any direction" });
    expect(scent("D", 6, 150, Number.NaN)).toMatchObject({ factor: null, why: "the wind is not known" });
  });

  test("says where the curves are extrapolated, and why there is nothing up the wind", () => {
    expect(scent("D", 5, 99).extrapolated).toBe(true);
    expect(scent("D", 5, 100).extrapolated).toBe(false);
    for (const downwindM of [0, -20, Number.NaN]) {
      expect(scent("D", 5, downwindM)).toMatchObject({ factor: null, why: "not down the wind" });
    }
    expect(scent("D", Number.NaN, 150)).toMatchObject({ factor: null, why: "a height is not known" });
    // the squares overflow: never NaN
    expect(scent("F", 6, 1e-200)).toMatchObject({ factor: null, why: "too near to tell" });
  });
});
