import { describe, expect, test } from "vitest";
import { COMPASS_POINTS, compassPoint, pointBearingDeg } from "../../scripts/geo/compassPoints.ts";

// Arithmetic: 16 sectors of 22.5 degrees, an edge belongs to the clockwise neighbour.
describe("compass points", () => {
  test.each([
    { bearing: 348.74, point: "NNW" },
    { bearing: 348.75, point: "N" },
    { bearing: 11.24, point: "N" },
    { bearing: 11.25, point: "NNE" },
    { bearing: 360, point: "N" },
    { bearing: -1, point: "N" },
    { bearing: 191.25, point: "SSW" },
  ])("$bearing is $point", ({ bearing, point }) => expect(compassPoint(bearing)).toBe(point));

  test("the sixteen points stand 22.5 degrees apart from north and find themselves again", () => {
    expect(COMPASS_POINTS).toHaveLength(16);
    expect(COMPASS_POINTS.map(pointBearingDeg)).toEqual(Array.from({ length: 16 }, (_, i) => i * 22.5));
    for (const point of COMPASS_POINTS) expect(compassPoint(pointBearingDeg(point))).toBe(point);
  });
});
