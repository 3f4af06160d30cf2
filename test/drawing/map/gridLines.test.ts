import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fullFigures, gridLines, gridSpacing, shortFigures } from "../../../scripts/drawing/map/gridLines.ts";
import { gridText } from "../../../scripts/geo/mgrs.ts";
import { PUBLISHED_GRID_PLACES } from "../../published/gridPlaces.ts";

const SHEET = { westM: 314_600, eastM: 317_300, southM: 5_009_200, northM: 5_012_400 };

describe("the grid of a sheet", () => {
  test("has the kilometre lines inside it, at their places on paper", () => {
    const { eastings, northings } = gridLines(SHEET, 25000);
    // By hand: 400 m, 1400 m and 2400 m from the west edge, at 40 mm a kilometre.
    expect(eastings).toEqual([
      { valueM: 315_000, atMm: 16 },
      { valueM: 316_000, atMm: 56 },
      { valueM: 317_000, atMm: 96 },
    ]);
    expect(northings).toEqual([
      { valueM: 5_010_000, atMm: 96 },
      { valueM: 5_011_000, atMm: 56 },
      { valueM: 5_012_000, atMm: 16 },
    ]);
  });

  test("has figures on all four sides, full ones in the south-west corner only", () => {
    const { figures } = gridLines(SHEET, 25000);
    const at = (side: string) => figures.filter((figure) => figure.side === side).map(({ text }) => text);
    expect(at("north")).toEqual(["15", "16", "17"]);
    expect(at("south")).toEqual(["315 000 m E", "16", "17"]);
    expect(at("east")).toEqual(["10", "11", "12"]);
    expect(at("west")).toEqual(["5 010 000 m N", "11", "12"]);
    expect(figures.filter(({ isFull }) => isFull)).toEqual([
      { side: "south", atMm: 16, text: "315 000 m E", isFull: true },
      { side: "west", atMm: 96, text: "5 010 000 m N", isFull: true },
    ]);
  });

  test("a sketch has lines each 100 m, those on its edges too", () => {
    expect(gridSpacing(5000)).toBe(100);
    const { eastings, figures } = gridLines(
      { westM: 315_900, eastM: 316_200, southM: 5_010_800, northM: 5_011_100 },
      5000,
    );
    expect(eastings).toEqual([
      { valueM: 315_900, atMm: 0 },
      { valueM: 316_000, atMm: 20 },
      { valueM: 316_100, atMm: 40 },
      { valueM: 316_200, atMm: 60 },
    ]);
    expect(figures.filter(({ side }) => side === "east").map(({ text }) => text)).toEqual([
      "108",
      "109",
      "110",
      "111",
    ]);
  });

  test("a direction without a line has no figures", () => {
    const grid = gridLines({ westM: 315_100, eastM: 315_900, southM: 5_009_900, northM: 5_010_100 }, 10000);
    expect(grid.eastings).toEqual([]);
    expect(grid.figures.map(({ side, text }) => [side, text])).toEqual([
      ["east", "10"],
      ["west", "5 010 000 m N"],
    ]);
  });

  test("figures begin anew at each 100 km", () => {
    expect(shortFigures(300_000, 1000)).toBe("00");
    expect(shortFigures(299_000, 1000)).toBe("99");
    expect(shortFigures(5_000_900, 100)).toBe("009");
    expect(fullFigures(0, "m N")).toBe("0 m N");
    expect(fullFigures(10_000_000, "m N")).toBe("10 000 000 m N");
  });

  test.each(PUBLISHED_GRID_PLACES)("the figures west and south of $place begin its grid reference", (row) => {
    const [easting = "", northing = ""] = gridText(row.position).split(" ").slice(-2);
    for (const spacingM of [100, 1000] as const) {
      const digits = spacingM === 100 ? 3 : 2;
      const lineWest = Math.floor(row.eastingM / spacingM) * spacingM;
      const lineSouth = Math.floor(row.northingM / spacingM) * spacingM;
      expect(shortFigures(lineWest, spacingM)).toBe(easting.slice(0, digits));
      expect(shortFigures(lineSouth, spacingM)).toBe(northing.slice(0, digits));
    }
  });

  test("lines lie inside, one spacing apart, and none that belongs is missing", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 166_000, max: 800_000 }),
        fc.integer({ min: 0, max: 9_990_000 }),
        fc.integer({ min: 0, max: 6000 }),
        fc.constantFrom<100 | 1000>(100, 1000),
        (westM, southM, sideM, spacingM) => {
          const extent = { westM, eastM: westM + sideM, southM, northM: southM + sideM };
          const { eastings, northings, figures } = gridLines(extent, 15000, spacingM);
          const inside = (fromM: number) =>
            Array.from({ length: sideM + 1 }, (_, m) => fromM + m).filter((value) => value % spacingM === 0);
          expect(eastings.map(({ valueM }) => valueM)).toEqual(inside(westM));
          expect(northings.map(({ valueM }) => valueM)).toEqual(inside(southM));
          expect(figures).toHaveLength(2 * (eastings.length + northings.length));
          for (const { atMm } of figures) {
            expect(atMm).toBeGreaterThanOrEqual(0);
            expect(atMm).toBeLessThanOrEqual((sideM * 1000) / 15000);
          }
        },
      ),
      { numRuns: 50 },
    );
  });

  test("an extent below the grid or turned round is refused", () => {
    expect(() => gridLines({ ...SHEET, southM: -100 }, 25000)).toThrow(/0 or more/);
    expect(() => gridLines({ ...SHEET, eastM: 314_000 }, 25000)).toThrow(/upward/);
  });
});
