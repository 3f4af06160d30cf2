import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { gridText, parseGridText } from "../../scripts/geo/mgrs.ts";
import { PUBLISHED_GRID_PLACES } from "../published/gridPlaces.ts";

describe("grid references", () => {
  // The sample's easting is 444140.54 by GeoConvert at higher precision, so its cut digits are 44140.
  test.each(PUBLISHED_GRID_PLACES)("$place reads $grid", ({ position, grid }) =>
    expect(gridText(position)).toBe(grid),
  );

  test.each(PUBLISHED_GRID_PLACES)("$grid leads back to $place within its metre", ({ position, grid }) => {
    expect(distanceAndBearing(parseGridText(grid), position).distanceM).toBeLessThan(0.75); // half a square's diagonal, and 4 cm
  });

  test("every place comes back within its own metre", () => {
    const place = fc.record({
      lat: fc.double({ min: -80, max: 83.99, noNaN: true }),
      lon: fc.double({ min: -180, max: 180, noNaN: true }),
    });
    fc.assert(
      fc.property(place, (position) => {
        expect(distanceAndBearing(parseGridText(gridText(position)), position).distanceM).toBeLessThan(0.8);
      }),
      { seed: 84, numRuns: 1000 },
    );
  });

  test.each(["59G LL 15877 10925", "59GLL1587710925", " 59g ll 15877 10925 ", "59G LL 1587710925"])(
    "%s is read",
    (text) => expect(parseGridText(text).lat).toBeCloseTo(-45.0312, 4),
  );

  test("four digits name the middle of a 10 m square", () => {
    const exact = parseGridText("59G LL 15875 10925");
    expect(distanceAndBearing(parseGridText("59G LL 1587 1092"), exact).distanceM).toBeLessThan(1);
  });

  test.each([
    { text: "", why: "empty" },
    { text: "-45.03 168.66", why: "degrees" },
    { text: "59G LL 15877 1092", why: "uneven digits" },
    { text: "59G LL 1587 71092 5", why: "three groups" },
    { text: "59G LL 158771092", why: "odd digits" },
    { text: "59G LL", why: "no digits" },
    { text: "0G LL 15877 10925", why: "zone 0" },
    { text: "61G LL 15877 10925", why: "zone 61" },
    { text: "59I LL 15877 10925", why: "no band I" },
    { text: "59G OL 15877 10925", why: "no column O" },
    { text: "59G AL 15877 10925", why: "column of another zone" },
    { text: "59G LW 15877 10925", why: "no row W" },
    { text: "59G LA 15877 10925", why: "row outside the band" },
    { text: "59N LL 15877 10925", why: "wrong hemisphere" },
  ])("$text is refused: $why", ({ text }) => expect(() => parseGridText(text)).toThrow(RangeError));

  test("the polar grid is refused", () => expect(() => gridText({ lat: 85, lon: 0 })).toThrow(RangeError));
});
