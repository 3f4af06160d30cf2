import { describe, expect, test } from "vitest";
import { magneticDeclination } from "../../scripts/geo/declination.ts";
import { PUBLISHED_GRID_PLACES } from "../published/gridPlaces.ts";
import { PUBLISHED_DECLINATIONS } from "../published/magneticField.ts";

describe("magnetic declination", () => {
  test("the published tables hold twelve and nine rows", () => {
    expect(PUBLISHED_DECLINATIONS).toHaveLength(12);
    expect(PUBLISHED_GRID_PLACES.filter((row) => row.declinationDeg !== null)).toHaveLength(9);
  });

  test.each(PUBLISHED_DECLINATIONS)("$id has its published declination", (row) => {
    const found = magneticDeclination({ lat: row.lat, lon: row.lon }, row.heightM, row.localDate);
    expect(Math.abs(found.declinationDeg! - row.declinationDeg)).toBeLessThan(0.0101);
  });

  test.each(PUBLISHED_GRID_PLACES.filter((row) => row.declinationDeg !== null))(
    "$place has its declination of 1 November 2026",
    (row) => {
      const found = magneticDeclination(row.position, 0, "2026-11-01");
      expect(Math.abs(found.declinationDeg! - row.declinationDeg!)).toBeLessThan(0.0201);
    },
  );

  // WMM-1 to WMM-9: the difference between 2025.0 and 2027.5, over 2.5 years; two rounded figures allow 0.004 a year,
  // the curve of the change a little more at 80 N.
  test.each([
    { lat: 80, lon: 0, change: (2.59 - 1.28) / 2.5 },
    { lat: 0, lon: 120, change: (-0.24 + 0.16) / 2.5 },
    { lat: -80, lon: -120, change: (68.49 - 68.78) / 2.5 },
  ])("at $lat, $lon the declination moves as the published rows do", ({ lat, lon, change }) => {
    const found = magneticDeclination({ lat, lon }, 0, "2026-04-01");
    expect(Math.abs(found.yearlyChangeDeg! - change)).toBeLessThan(0.011);
  });

  test.each(["2024-12-31", "2030-01-01", "1999-06-01"])(
    "on %s the model does not hold and says so",
    (localDate) => {
      const found = magneticDeclination({ lat: 45, lon: 7 }, 0, localDate);
      expect(found.declinationDeg).toBeNull();
      expect(found.yearlyChangeDeg).toBeNull();
      expect(found.why.declinationDeg).toContain(localDate);
    },
  );

  test.each(["2025-01-01", "2029-12-31"])(
    "on %s, at the model's ends, declination and change are known",
    (localDate) => {
      const found = magneticDeclination({ lat: 45, lon: 7 }, 0, localDate);
      expect(found.declinationDeg).toBeGreaterThan(2);
      expect(found.yearlyChangeDeg).toBeGreaterThan(0);
      expect(found.why).toEqual({});
    },
  );

  test("near the magnetic pole no compass figure is printed", () => {
    // The north magnetic pole of WMM2025 in 2025: 85.76 N, 139.3 E (NOAA/NCEI pole table, from memory).
    expect(magneticDeclination({ lat: 85.76, lon: 139.3 }, 0, "2025-06-01").declinationDeg).toBeNull();
  });

  test("a date or height that is none is refused with its value", () => {
    expect(() => magneticDeclination({ lat: 0, lon: 0 }, 0, "2026-02-30")).toThrow("2026-02-30");
    expect(() => magneticDeclination({ lat: 0, lon: 0 }, Number.NaN, "2026-02-03")).toThrow("found NaN");
  });
});
