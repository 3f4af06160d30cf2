import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { fromUtm, gridConvergenceDeg, pointScale, toUtm, utmZoneOf } from "../../scripts/geo/utm.ts";
import { PUBLISHED_GRID_PLACES } from "../published/gridPlaces.ts";

const gridPlace = fc.record({
  lat: fc.double({ min: -80, max: 83.99, noNaN: true }),
  lon: fc.double({ min: -180, max: 179.99, noNaN: true }),
});

describe("UTM grid", () => {
  test("the published table holds thirteen places", () => expect(PUBLISHED_GRID_PLACES).toHaveLength(13));

  test.each(PUBLISHED_GRID_PLACES)("$place has its published zone and grid coordinates", (row) => {
    expect(utmZoneOf(row.position)).toEqual(row.zone);
    const utm = toUtm(row.position, row.zone);
    expect(Math.abs(utm.eastingM - row.eastingM)).toBeLessThan(row.toleranceM);
    expect(Math.abs(utm.northingM - row.northingM)).toBeLessThan(row.toleranceM);
  });

  test.each(PUBLISHED_GRID_PLACES)("$place has its published convergence and scale", (row) => {
    const errorDeg = Math.abs(gridConvergenceDeg(row.position, row.zone) - row.convergenceDeg);
    expect(errorDeg).toBeLessThan(row.convergenceToleranceDeg);
    expect(Math.abs(pointScale(row.position, row.zone) - row.scale)).toBeLessThan(1e-7);
  });

  // NGA.SIG.0012: the exceptions of south-west Norway and Svalbard.
  test.each([
    { lat: 60, lon: 2.99, zone: "31N" },
    { lat: 60, lon: 3, zone: "32N" },
    { lat: 55.99, lon: 3, zone: "31N" },
    { lat: 64, lon: 3, zone: "31N" },
    { lat: 71.99, lon: 8, zone: "32N" },
    { lat: 72, lon: 8.99, zone: "31N" },
    { lat: 78, lon: 9, zone: "33N" },
    { lat: 78, lon: 20.99, zone: "33N" },
    { lat: 78, lon: 21, zone: "35N" },
    { lat: 78, lon: 33, zone: "37N" },
    { lat: 78, lon: 42, zone: "38N" },
    { lat: 0, lon: -180, zone: "1N" },
    { lat: -0.001, lon: 180, zone: "1S" },
    { lat: -17, lon: 179.99, zone: "60S" },
  ])("lat $lat lon $lon lies in $zone", ({ lat, lon, zone }) => {
    const found = utmZoneOf({ lat, lon });
    expect(`${found.number}${found.hemisphere}`).toBe(zone);
  });

  test("grid coordinates lead back to the place within a millimetre", () => {
    fc.assert(
      fc.property(gridPlace, (place) => {
        const zone = utmZoneOf(place);
        const back = fromUtm(toUtm(place, zone), zone);
        expect(distanceAndBearing(place, back).distanceM).toBeLessThan(0.001);
      }),
      { seed: 82, numRuns: 500 },
    );
  });

  test("a grid bearing plus the convergence is the true bearing", () => {
    fc.assert(
      fc.property(gridPlace, fc.double({ min: 0, max: 359, noNaN: true }), (place, gridBearingDeg) => {
        const zone = utmZoneOf(place);
        const here = toUtm(place, zone);
        const rad = (gridBearingDeg * Math.PI) / 180;
        const stepM = 20;
        const there = fromUtm(
          {
            eastingM: here.eastingM + stepM * Math.sin(rad),
            northingM: here.northingM + stepM * Math.cos(rad),
          },
          zone,
        );
        const line = distanceAndBearing(place, there);
        const error =
          ((line.bearingDeg - gridBearingDeg - gridConvergenceDeg(place, zone) + 540) % 360) - 180;
        expect(Math.abs(error)).toBeLessThan(0.002); // the line's own bend over 20 m near 84 N
        expect(line.distanceM * pointScale(place, zone)).toBeCloseTo(stepM, 3);
      }),
      { seed: 83, numRuns: 300 },
    );
  });

  test("an area on a zone edge can use its neighbour's grid", () => {
    const place = { lat: -45, lon: 168.1 };
    expect(
      distanceAndBearing(
        place,
        fromUtm(toUtm(place, { number: 58, hemisphere: "S" }), { number: 58, hemisphere: "S" }),
      ).distanceM,
    ).toBeLessThan(0.001);
  });

  test("the polar grid, a far zone and a zone that is none are refused with their value", () => {
    expect(() => utmZoneOf({ lat: 84, lon: 0 })).toThrow(
      "UTM covers 80 S to 84 N (the polar grid is not covered), found lat 84",
    );
    expect(() => utmZoneOf({ lat: -80.1, lon: 0 })).toThrow(RangeError);
    expect(() => toUtm({ lat: 0, lon: 60 }, { number: 31, hemisphere: "N" })).toThrow("within 12 degrees");
    expect(() => toUtm({ lat: 0, lon: 0 }, { number: 61, hemisphere: "N" })).toThrow(
      "zone number must be 1 to 60, found 61",
    );
  });
});
