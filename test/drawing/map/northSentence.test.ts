import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  compassFromGridDeg,
  gridFromCompassDeg,
  northSentences,
  threeNorths,
} from "../../../scripts/drawing/map/northSentence.ts";
import { gridConvergenceDeg } from "../../../scripts/geo/utm.ts";
import { PUBLISHED_GRID_PLACES } from "../../published/gridPlaces.ts";

/**
 * The rule of printed margins: an easterly grid-magnetic angle is subtracted from a grid bearing, a westerly one added.
 * "army": US Army common task "Convert azimuths" (magnetic 190, angle 9 east, grid 199), and the map reading manual's
 * example (magnetic 270, angle 8 west, grid 262), both as quoted on public study pages. "sheet": the margin of a British
 * 1:50 000 sheet, 4 1/2 degrees west of grid north in 1990, as quoted on a public page; its bearing worked by hand.
 * "by hand": from the definition, magnetic = grid - angle. Exact arithmetic, so the tolerance is that of the machine.
 */
const MARGIN_EXAMPLES = [
  { from: "army", gridMagneticDeg: 9, gridDeg: 199, compassDeg: 190 },
  { from: "army", gridMagneticDeg: -8, gridDeg: 262, compassDeg: 270 },
  { from: "sheet", gridMagneticDeg: -4.5, gridDeg: 100, compassDeg: 104.5 },
  { from: "by hand", gridMagneticDeg: 0, gridDeg: 100, compassDeg: 100 },
  { from: "by hand, east over north", gridMagneticDeg: 10, gridDeg: 3, compassDeg: 353 },
  { from: "by hand, west over north", gridMagneticDeg: -8, gridDeg: 355, compassDeg: 3 },
  { from: "by hand, on north", gridMagneticDeg: -5, gridDeg: 355, compassDeg: 0 },
];

describe("the angle between grid and magnetic north", () => {
  test.each(MARGIN_EXAMPLES)("turns grid $gridDeg into compass $compassDeg ($from)", (row) => {
    const norths = threeNorths(row.gridMagneticDeg, 0);
    expect(compassFromGridDeg(row.gridDeg, norths)).toBeCloseTo(row.compassDeg, 9);
    expect(gridFromCompassDeg(row.compassDeg, norths)).toBeCloseTo(row.gridDeg, 9);
  });

  // WMM2025 of 1 November 2026 less GeographicLib's convergence, as tabled: each rounded to 0.01 from its own figures.
  test.each([
    ["Cross Mountain", -7.62],
    ["Denver", 7.48],
    ["Inverness", 0.11],
    ["Maunga Whau", 19.01],
    ["Queenstown", 23.61],
    ["Tromsø", 13.2],
    ["Windhoek", -11.87],
    ["Honolulu", 8.85],
    ["Ushuaia", 12.2],
  ])("is declination less convergence at %s", (name, gridMagneticDeg) => {
    const row = PUBLISHED_GRID_PLACES.find(({ place }) => place.startsWith(name));
    expect(row?.declinationDeg).toBeTypeOf("number");
    if (!row) return;
    const norths = threeNorths(row.declinationDeg, gridConvergenceDeg(row.position, row.zone));
    expect(Math.abs((norths.gridMagneticDeg ?? Number.NaN) - gridMagneticDeg)).toBeLessThan(0.011);
  });

  test("agrees with the way over true north, for every bearing and pair of angles", () => {
    const angle = fc.double({ min: -180, max: 180, noNaN: true });
    fc.assert(
      fc.property(
        angle,
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 359.999, noNaN: true }),
        (declinationDeg, convergenceDeg, gridDeg) => {
          const norths = threeNorths(declinationDeg, convergenceDeg);
          const compassDeg = compassFromGridDeg(gridDeg, norths) ?? Number.NaN;
          const trueDeg = gridDeg + convergenceDeg;
          const turnRad = ((compassDeg - (trueDeg - declinationDeg)) * Math.PI) / 180;
          expect(Math.cos(turnRad)).toBeCloseTo(1, 9);
          expect(compassDeg).toBeGreaterThanOrEqual(0);
          expect(compassDeg).toBeLessThan(360);
          const backRad =
            (((gridFromCompassDeg(compassDeg, norths) ?? Number.NaN) - gridDeg) * Math.PI) / 180;
          expect(Math.cos(backRad)).toBeCloseTo(1, 9);
          expect(norths.gridMagneticDeg).toBeGreaterThan(-180);
          expect(norths.gridMagneticDeg).toBeLessThanOrEqual(180);
        },
      ),
    );
  });

  test("takes the short way round where the two norths lie either side of south", () => {
    expect(threeNorths(179, -3).gridMagneticDeg).toBeCloseTo(-178, 9);
    expect(threeNorths(-179, 3).gridMagneticDeg).toBeCloseTo(178, 9);
  });

  test("is not known without a declination, and an angle that is no number is refused", () => {
    const norths = threeNorths(null, 1.65);
    expect(norths).toEqual({ convergenceDeg: 1.65, declinationDeg: null, gridMagneticDeg: null });
    expect(compassFromGridDeg(40, norths)).toBeNull();
    expect(gridFromCompassDeg(40, norths)).toBeNull();
    expect(() => threeNorths(Number.NaN, 0)).toThrow(RangeError);
    expect(() => threeNorths(null, Number.NaN)).toThrow(RangeError);
  });
});

describe("the sentence", () => {
  test("subtracts an easterly angle", () => {
    expect(northSentences(threeNorths(5, 1.5))).toEqual({
      short: "Compass = grid bearing minus 3.5 degrees.",
      words: "For a compass bearing, subtract 3.5 degrees from the grid bearing.",
      back: "For a grid bearing, add 3.5 degrees to the compass bearing.",
    });
  });

  test("adds a westerly angle, also where the declination is east but the grid leans more", () => {
    expect(northSentences(threeNorths(-5, 1.5)).words).toBe(
      "For a compass bearing, add 6.5 degrees to the grid bearing.",
    );
    expect(northSentences(threeNorths(0.5, 1.5))).toEqual({
      short: "Compass = grid bearing plus 1 degree.",
      words: "For a compass bearing, add 1 degree to the grid bearing.",
      back: "For a grid bearing, subtract 1 degree from the compass bearing.",
    });
  });

  test("says the same where the angle rounds to 0, and not known where it is not", () => {
    for (const declinationDeg of [1.5, 1.54, 1.46]) {
      expect(northSentences(threeNorths(declinationDeg, 1.5)).words).toBe(
        "Compass and grid bearing are the same here.",
      );
    }
    expect(northSentences(threeNorths(null, 1.5)).words).toBe(
      "Compass and grid bearing: difference not known.",
    );
  });

  test("done as it says, gives the compass bearing within its last digit, for every angle", () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (gridMagneticDeg) => {
        const norths = threeNorths(gridMagneticDeg, 0);
        const said = /(add|subtract) ([\d.]+) degree/.exec(northSentences(norths).words);
        const stepDeg = said === null ? 0 : Number(said[2]) * (said[1] === "add" ? 1 : -1);
        expect(Math.abs(180 + stepDeg - (compassFromGridDeg(180, norths) ?? Number.NaN))).toBeLessThan(
          0.0501,
        );
      }),
    );
  });
});
