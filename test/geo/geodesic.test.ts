import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { signedDifferenceDeg } from "../../scripts/geo/bearings.ts";
import { destination, distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { PUBLISHED_LINES } from "../published/geodesicLines.ts";

describe("straight lines on the ellipsoid", () => {
  test.each(PUBLISHED_LINES)("$id has its published length and bearings", (row) => {
    const line = distanceAndBearing(row.from, row.to);
    expect(Math.abs(line.distanceM - row.distanceM)).toBeLessThan(row.toleranceM);
    expect(Math.abs(signedDifferenceDeg(line.bearingDeg, row.bearingDeg))).toBeLessThan(row.toleranceDeg);
    expect(Math.abs(signedDifferenceDeg(line.backBearingDeg, row.arrivingDeg + 180))).toBeLessThan(
      row.toleranceDeg,
    );
    expect(line.bearingDeg).toBeGreaterThanOrEqual(0);
  });

  test("the published table holds ten lines", () => expect(PUBLISHED_LINES).toHaveLength(10));

  test("walking the distance along the bearing arrives, and the back bearing leads home", () => {
    const place = fc.record({
      lat: fc.double({ min: -89, max: 89, noNaN: true }),
      lon: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    fc.assert(
      fc.property(
        place,
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: 1, max: 50_000, noNaN: true }),
        (start, bearingDeg, distanceM) => {
          const end = destination(start, bearingDeg, distanceM);
          const back = distanceAndBearing(end, start);
          expect(Math.abs(back.distanceM - distanceM)).toBeLessThan(1e-6);
          const home = destination(end, back.bearingDeg, back.distanceM);
          expect(distanceAndBearing(home, start).distanceM).toBeLessThan(1e-6);
          const there = distanceAndBearing(start, end);
          expect(Math.abs(signedDifferenceDeg(there.backBearingDeg, back.bearingDeg))).toBeLessThan(1e-6);
        },
      ),
      { seed: 20260404, numRuns: 300 },
    );
  });

  test("a line over the date line takes the short way", () => {
    const line = distanceAndBearing({ lat: -17, lon: 179.99 }, { lat: -17, lon: -179.99 });
    expect(line.distanceM).toBeLessThan(2200);
    expect(line.bearingDeg).toBeCloseTo(90, 1);
    expect(destination({ lat: -17, lon: 179.99 }, 90, 2130).lon).toBeLessThan(-179.98);
  });

  test("equal positions are 0 m apart", () => {
    expect(distanceAndBearing({ lat: 1, lon: 2 }, { lat: 1, lon: 2 }).distanceM).toBe(0);
  });

  test("a latitude off the Earth or a negative distance is refused with its value", () => {
    expect(() => distanceAndBearing({ lat: 91, lon: 0 }, { lat: 0, lon: 0 })).toThrow(
      "lat must be -90 to 90, found 91",
    );
    expect(() => destination({ lat: 0, lon: 0 }, 0, -1)).toThrow("distanceM must be 0 or more, found -1");
    expect(() => destination({ lat: 0, lon: 0 }, Number.NaN, 1)).toThrow(RangeError);
  });
});
