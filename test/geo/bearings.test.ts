import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isInSector, normalizeDeg, sectorWidthDeg, signedDifferenceDeg } from "../../scripts/geo/bearings.ts";

const anyDeg = fc.double({ min: -3600, max: 3600, noNaN: true });
const seeded = { seed: 31, numRuns: 500 };

describe("bearings", () => {
  test.each([
    { given: -1, bearing: 359 },
    { given: 360, bearing: 0 },
    { given: 725, bearing: 5 },
    { given: -1e-17, bearing: 0 },
  ])("$given is the bearing $bearing", ({ given, bearing }) => expect(normalizeDeg(given)).toBe(bearing));

  test.each([
    { a: 350, b: 10, turn: 20 },
    { a: 10, b: 350, turn: -20 },
    { a: 0, b: 180, turn: 180 },
    { a: 180, b: 0, turn: 180 },
    { a: 90, b: 90, turn: 0 },
  ])("the shorter turn from $a to $b is $turn", ({ a, b, turn }) =>
    expect(signedDifferenceDeg(a, b)).toBe(turn),
  );

  test.each([
    { from: 350, to: 10, width: 20 },
    { from: 10, to: 350, width: 340 },
    { from: 90, to: 90, width: 0 },
    { from: 0, to: 360, width: 360 },
  ])("the sector $from to $to is $width degrees wide", ({ from, to, width }) =>
    expect(sectorWidthDeg(from, to)).toBe(width),
  );

  test.each([
    { bearing: 0, from: 350, to: 10, inside: true },
    { bearing: 350, from: 350, to: 10, inside: true },
    { bearing: 10, from: 350, to: 10, inside: true },
    { bearing: 10.001, from: 350, to: 10, inside: false },
    { bearing: 180, from: 350, to: 10, inside: false },
    { bearing: 180, from: 10, to: 350, inside: true },
    { bearing: 45, from: 45, to: 45, inside: true },
    { bearing: 46, from: 45, to: 45, inside: false },
    { bearing: 213, from: 0, to: 360, inside: true },
    { bearing: -2.8e-14, from: 0, to: 90, inside: true },
  ])("bearing $bearing in the sector $from to $to: $inside", ({ bearing, from, to, inside }) =>
    expect(isInSector(bearing, from, to)).toBe(inside),
  );

  test("every bearing falls in 0 <= x < 360 and every turn in -180 < x <= 180", () => {
    fc.assert(
      fc.property(anyDeg, anyDeg, (a, b) => {
        const bearing = normalizeDeg(a);
        const turn = signedDifferenceDeg(a, b);
        expect(bearing >= 0 && bearing < 360 && turn > -180 && turn <= 180).toBe(true);
        expect(Math.abs(signedDifferenceDeg(a + turn, b))).toBeLessThan(1e-9);
      }),
      seeded,
    );
  });

  test("a sector and the rest of the circle hold every bearing between them", () => {
    fc.assert(
      fc.property(anyDeg, anyDeg, anyDeg, (bearing, from, to) => {
        fc.pre(Math.abs(signedDifferenceDeg(from, to)) > 1e-6); // equal ends make two sectors of no width
        expect(isInSector(bearing, from, to) || isInSector(bearing, to, from)).toBe(true);
      }),
      seeded,
    );
  });

  test("NaN is refused, not carried on", () => {
    expect(() => normalizeDeg(Number.NaN)).toThrow("bearingDeg must be a finite number, found NaN");
    expect(() => isInSector(Number.NaN, 0, 90)).toThrow(RangeError);
    expect(() => isInSector(10, 0, Number.NaN)).toThrow(RangeError);
  });
});
