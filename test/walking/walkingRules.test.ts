import { describe, expect, test } from "vitest";
import { langmuirMin, naismithMin, toblerSpeedKmh } from "../../scripts/walking/walkingRules.ts";

const tobler = { toblerSpeedKmh: 6, toblerSlopeFactor: 3.5, toblerBestSlope: -0.05 };

describe("Tobler 1993, NCGIA technical report 93-1, evaluated: 6 exp(-3.5 |S + 0.05|) km/h", () => {
  // tolerance: half of the last digit printed
  test.each([
    [-0.3, 2.5012],
    [-0.2, 3.5493],
    [-0.1, 5.0367],
    [-0.05, 6.0],
    [0, 5.0367],
    [0.05, 4.2281],
    [0.1, 3.5493],
    [0.2, 2.5012],
    [0.3, 1.7625],
    [0.6, 0.6168],
  ])("a slope of %f is walked at %f km/h", (slope, speedKmh) => {
    expect(Math.abs(toblerSpeedKmh(slope, tobler) - speedKmh)).toBeLessThanOrEqual(5e-5);
  });

  test("a slope that is not a number is refused", () => {
    expect(() => toblerSpeedKmh(Number.NaN, tobler)).toThrow("slope must be a finite number, found NaN");
  });
});

describe("Naismith 1892", () => {
  test("12 km with 600 m of climb takes 3 h 24 min (metric restatement, exact)", () => {
    expect(naismithMin(12_000, 600)).toBeCloseTo(204, 9);
  });

  test("20 km with 1 km of climb takes 5 h 40 min (public worked example, exact ratio 8.33)", () => {
    expect(naismithMin(20_000, 1000)).toBeCloseTo(340, 9);
  });

  test("10 miles with 2000 ft of climb come within 6 min of the original 4 h 20 min (original units from memory)", () => {
    expect(Math.abs(naismithMin(16_093.44, 609.6) - 260)).toBeLessThanOrEqual(6); // 3 mph is 4.83 km/h, the restatement walks 5: 5.9 min here
  });

  test("lengths below 0 or not numbers are refused", () => {
    expect(() => naismithMin(-1, 0)).toThrow(RangeError);
    expect(() => naismithMin(0, Number.NaN)).toThrow(RangeError);
  });
});

describe("Langmuir 1984: 300 m of descent, exact", () => {
  test.each([
    [6000, 72],
    [2000, 14],
    [1000, 22],
  ])("over %i m takes %i min with Naismith", (horizontalM, minutes) => {
    expect(naismithMin(horizontalM, 0) + langmuirMin(-300, horizontalM)).toBeCloseTo(minutes, 9);
  });

  // Rule: 5 to 12 degrees quicker, above 12 slower, under 5 nothing; runs for which a fall of 300 m has that angle.
  const runM = (slopeDeg: number) => 300 / Math.tan((slopeDeg * Math.PI) / 180);
  test.each([
    [4.99, 0],
    [5.01, -10],
    [11.99, -10],
    [12.01, 10],
  ])("at %f degrees the correction is %i min", (slopeDeg, minutes) => {
    expect(langmuirMin(-300, runM(slopeDeg))).toBeCloseTo(minutes, 9);
  });

  test("uphill and level ground have no correction", () => {
    expect(langmuirMin(300, 1000)).toBe(0);
    expect(langmuirMin(0, 0)).toBe(0);
  });
});
