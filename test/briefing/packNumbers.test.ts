import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { packCheck } from "../../scripts/briefing/packCheck.ts";
import {
  packAngle,
  packBearing,
  packMetres,
  packPosition,
  packShare,
  packSpeed,
  rounded,
} from "../../scripts/briefing/packNumbers.ts";

describe("numbers as a pack writes them", () => {
  test.each([
    [packAngle(18.12345), 18.123],
    [packAngle(-0.0004), 0],
    [packMetres(640.25), 640.3],
    [packMetres(-12.36), -12.4],
    [packSpeed(0.716), 0.72],
    [packShare(0.04314), 0.0431],
    [packShare(1.000004), 1],
    [packShare(-1e-9), 0],
    [rounded(2.5, 0), 3],
    [rounded(-2.5, 0), -3],
  ])("%d is written %d", (found, expected) => {
    expect(found).toBe(expected);
    expect(Object.is(found, -0)).toBe(false);
  });

  test.each([
    [359.9996, 0],
    [359.9994, 359.999],
    [360, 0],
    [-0.0001, 0],
    [-90, 270],
    [725.5, 5.5],
  ])("the bearing %d is written %d", (deg, expected) => {
    expect(packBearing(deg)).toBe(expected);
  });

  test("a bearing is never negative and never 360", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (deg) => {
        const bearing = packBearing(deg);
        expect(bearing >= 0 && bearing < 360).toBe(true);
      }),
      { seed: 20261015 },
    );
  });

  // A position is -180 <= lon < 180: the date line from the west is the date line from the east.
  test("a longitude next to the date line is not rounded out of its range", () => {
    expect(packPosition({ lat: -16.80000049, lon: 179.9999997 })).toEqual({ lat: -16.8, lon: -180 });
    expect(packPosition({ lat: 0, lon: -179.9999997 })).toEqual({ lat: 0, lon: -180 });
    expect(packPosition({ lat: 36.3074999, lon: -84.3216664 })).toEqual({ lat: 36.3075, lon: -84.321666 });
  });

  test("what is no number is told, never written", () => {
    expect(() => packMetres(Number.NaN)).toThrow(RangeError);
    expect(() => packShare(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  test("a check keeps its words and has its numbers by the unit in their names", () => {
    const check = {
      id: "C25",
      result: "OK" as const,
      text: "x",
      subject: "s",
      inputs: {
        ...{ lat: -21.198999999999998, leanDeg: 2.00049, haulLineM: 8.249, windSpeedMps: 2.2352 },
        ...{ loadShare: 0.912345, trunkMm: 223.4567, isAlone: true, onDate: "2026-10-14", girthMm: null },
      },
    };
    expect(packCheck(check)).toEqual({
      ...check,
      inputs: {
        ...{ lat: -21.199, leanDeg: 2, haulLineM: 8.2, windSpeedMps: 2.24 },
        ...{ loadShare: 0.9123, trunkMm: 223.4567, isAlone: true, onDate: "2026-10-14", girthMm: null },
      },
    });
  });
});
