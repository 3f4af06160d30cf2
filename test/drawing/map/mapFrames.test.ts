import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  chosenFrames,
  type GridExtent,
  mapFrames,
  placeOnSheet,
  sheetsShowing,
} from "../../../scripts/drawing/map/mapFrames.ts";
import {
  A4_WINDOW,
  A5_WINDOW,
  groundM,
  type MapScale,
  paperMm,
} from "../../../scripts/drawing/map/mapScale.ts";

const SCALES: readonly MapScale[] = [5000, 10000, 15000, 25000];

const anyExtent = fc
  .record({
    westM: fc.double({ min: 200_000, max: 700_000, noNaN: true }),
    southM: fc.double({ min: 100_000, max: 9_900_000, noNaN: true }),
    widthM: fc.double({ min: 0, max: 15_000, noNaN: true }),
    heightM: fc.double({ min: 0, max: 15_000, noNaN: true }),
  })
  .map(({ westM, southM, widthM, heightM }) => ({
    westM,
    eastM: westM + widthM,
    southM,
    northM: southM + heightM,
  }));
const anyScale = fc.constantFrom(...SCALES);
const anyWindow = fc.constantFrom(A4_WINDOW, A5_WINDOW);
const anyShare = fc.double({ min: 0, max: 1, noNaN: true });

describe("lengths on paper", () => {
  test("100 mm is a tenth of the denominator in metres, exactly, and back", () => {
    for (const scale of SCALES) {
      expect(groundM(100, scale)).toBe(scale / 10);
      expect(paperMm(scale / 10, scale)).toBe(100);
    }
  });

  test("a place 1 km in from the upper left corner lies 40 mm in at 1:25 000", () => {
    const extent = { westM: 315_000, eastM: 319_500, southM: 5_008_700, northM: 5_014_000 };
    expect(placeOnSheet(extent, 25000, { eastingM: 316_000, northingM: 5_013_000 })).toEqual({
      xMm: 40,
      yMm: 40,
    });
  });
});

describe("the frames of an area", () => {
  // By hand: 180 mm x 25 = 4500 m; 215 mm x 25 = 5375 m, of which 5300 m are whole hundreds.
  test("an area as wide as the window takes one sheet, 100 m more takes two", () => {
    const extent = { westM: 315_000, eastM: 319_500, southM: 5_009_000, northM: 5_014_300 };
    const one = mapFrames(extent, 25000, A4_WINDOW);
    expect(one.sheets).toEqual([
      {
        name: "A1",
        row: 0,
        column: 0,
        extent,
        beside: { north: null, east: null, south: null, west: null },
      },
    ]);
    expect(one).toMatchObject({ widthMm: 180, heightMm: 212, overlapM: { sideways: null, upDown: null } });
    const two = mapFrames({ ...extent, eastM: 319_501 }, 25000, A4_WINDOW);
    expect(two.index).toEqual([["A1", "A2"]]);
    expect(two.overlapM).toEqual({ sideways: 4400, upDown: null });
  });

  // By hand: A5 at 1:15 000 is 1800 x 2300 m; 5000 m with 100 m shared: (5000 - 100) / 1700 = 2.9, so 3; 4500 m: 4400 / 2200 = 2.
  test("rows are lettered from the north and columns numbered from the west", () => {
    const frames = mapFrames(
      { westM: 315_000, eastM: 320_000, southM: 5_009_000, northM: 5_013_500 },
      15000,
      A5_WINDOW,
    );
    expect(frames.index).toEqual([
      ["A1", "A2", "A3"],
      ["B1", "B2", "B3"],
    ]);
    expect(frames.sheets.map(({ name, extent }) => [name, extent.westM, extent.southM])).toEqual([
      ["A1", 315_000, 5_011_200],
      ["A2", 316_600, 5_011_200],
      ["A3", 318_200, 5_011_200],
      ["B1", 315_000, 5_009_000],
      ["B2", 316_600, 5_009_000],
      ["B3", 318_200, 5_009_000],
    ]);
    expect(frames.overlapM).toEqual({ sideways: 200, upDown: 100 });
    expect(frames.sheets[1]?.beside).toEqual({ north: null, east: "A3", south: "B2", west: "A1" });
    expect(sheetsShowing(frames, { eastingM: 316_700, northingM: 5_011_250 })).toEqual([
      "A1",
      "A2",
      "B1",
      "B2",
    ]);
    expect(sheetsShowing(frames, { eastingM: 314_999, northingM: 5_011_250 })).toEqual([]);
  });

  test("the row after Z is AA", () => {
    const frames = mapFrames(
      { westM: 500_000, eastM: 500_100, southM: 4_000_000, northM: 4_029_000 },
      5000,
      A4_WINDOW,
    );
    expect(frames.index.map(([name]) => name).slice(25, 29)).toEqual(["Z1", "AA1", "AB1", "AC1"]);
  });

  test("a small area lies in the middle of its sheet, to 100 m", () => {
    const { sheets } = mapFrames(
      { westM: 316_010, eastM: 316_990, southM: 5_010_010, northM: 5_010_990 },
      10000,
      A4_WINDOW,
    );
    // 1800 x 2100 m about 1000 x 1000 m: 400 m to each side; 1100 m above and below together, the odd 100 m above.
    expect(sheets[0]?.extent).toEqual({
      westM: 315_600,
      eastM: 317_400,
      southM: 5_009_500,
      northM: 5_011_600,
    });
  });

  test("every place of the extent is on a sheet", () => {
    fc.assert(
      fc.property(anyExtent, anyScale, anyWindow, anyShare, anyShare, (extent, scale, window, x, y) => {
        const frames = mapFrames(extent, scale, window);
        for (const [east, north] of [
          [x, y],
          [0, 0],
          [1, 0],
          [0, 1],
          [1, 1],
        ] as const) {
          const place = {
            eastingM: Math.min(extent.eastM, extent.westM + east * (extent.eastM - extent.westM)),
            northingM: Math.min(extent.northM, extent.southM + north * (extent.northM - extent.southM)),
          };
          expect(sheetsShowing(frames, place)).not.toEqual([]);
        }
      }),
    );
  });

  test("sheets lie on whole 100 m, never exceed the window and fill it to less than 100 m", () => {
    fc.assert(
      fc.property(anyExtent, anyScale, anyWindow, (extent, scale, window) => {
        const frames = mapFrames(extent, scale, window);
        for (const sheet of frames.sheets) {
          const { westM, eastM, southM, northM } = sheet.extent;
          for (const edge of [westM, eastM, southM, northM]) expect(edge % 100).toBe(0);
          expect(paperMm(eastM - westM, scale)).toBe(frames.widthMm);
          expect(paperMm(northM - southM, scale)).toBe(frames.heightMm);
        }
        expect(frames.widthMm).toBeLessThanOrEqual(window.widthMm);
        expect(frames.heightMm).toBeLessThanOrEqual(window.heightMm);
        expect(groundM(window.widthMm - frames.widthMm, scale)).toBeLessThan(100);
        expect(groundM(window.heightMm - frames.heightMm, scale)).toBeLessThan(100);
      }),
    );
  });

  test("one row or column fewer could not show the extent, and neighbours share what is stated", () => {
    fc.assert(
      fc.property(
        anyExtent,
        anyScale,
        anyWindow,
        fc.constantFrom(0, 100, 250),
        (extent, scale, window, askedM) => {
          const frames = mapFrames(extent, scale, window, askedM);
          const asked = Math.ceil(askedM / 100) * 100;
          const reach = (count: number, sideM: number) => count * sideM - (count - 1) * asked;
          const needed = (fromM: number, toM: number) =>
            Math.ceil(toM / 100) * 100 - Math.floor(fromM / 100) * 100;
          const columns = frames.index[0]?.length ?? 0;
          const rows = frames.index.length;
          if (columns > 1) {
            expect(reach(columns - 1, groundM(frames.widthMm, scale))).toBeLessThan(
              needed(extent.westM, extent.eastM),
            );
          }
          if (rows > 1) {
            expect(reach(rows - 1, groundM(frames.heightMm, scale))).toBeLessThan(
              needed(extent.southM, extent.northM),
            );
          }
          const shared = sharedWithNeighbours(frames.sheets.map((sheet) => sheet.extent));
          expect(frames.overlapM).toEqual(shared);
          expect(shared.sideways ?? asked).toBeGreaterThanOrEqual(asked);
          expect(shared.upDown ?? asked).toBeGreaterThanOrEqual(asked);
        },
      ),
    );
  });

  test("each neighbour names the sheet back", () => {
    const { sheets } = mapFrames(
      { westM: 315_000, eastM: 322_000, southM: 5_009_000, northM: 5_018_000 },
      10000,
      A5_WINDOW,
    );
    const named = new Map(sheets.map((sheet) => [sheet.name, sheet]));
    expect(named.size).toBe(sheets.length);
    for (const sheet of sheets) {
      const east = sheet.beside.east === null ? undefined : named.get(sheet.beside.east);
      const south = sheet.beside.south === null ? undefined : named.get(sheet.beside.south);
      expect(east?.beside.west ?? sheet.name).toBe(sheet.name);
      expect(south?.beside.north ?? sheet.name).toBe(sheet.name);
      expect(east?.extent.westM ?? Infinity).toBeGreaterThan(sheet.extent.westM);
      expect(south?.extent.southM ?? -Infinity).toBeLessThan(sheet.extent.southM);
    }
  });

  test("an extent or a window that can not be is refused", () => {
    const extent = { westM: 315_000, eastM: 316_000, southM: 5_009_000, northM: 5_010_000 };
    expect(() => mapFrames({ ...extent, eastM: 314_000 }, 10000, A4_WINDOW)).toThrow(/west <= east/);
    expect(() => mapFrames({ ...extent, northM: Number.NaN }, 10000, A4_WINDOW)).toThrow(/finite/);
    expect(() => mapFrames(extent, 10000, { widthMm: 9, heightMm: 200 })).toThrow(/widthMm/);
    expect(() => mapFrames(extent, 10000, { widthMm: 180, heightMm: 20 }, 200)).toThrow(/heightMm/);
    expect(() => mapFrames(extent, 10000, A4_WINDOW, -1)).toThrow(/leastOverlapM/);
  });
});

describe("the scale of an area", () => {
  const square = (sideM: number): GridExtent => ({
    westM: 315_000,
    eastM: 315_000 + sideM,
    southM: 5_009_000,
    northM: 5_009_000 + sideM,
  });

  // By hand: the 180 mm of an A4 window are 1800 m at 1:10 000, 2700 m at 1:15 000 and 4500 m at 1:25 000.
  test.each([
    [300, 10000, 1],
    [1800, 10000, 1],
    [1801, 15000, 1],
    [2700, 15000, 1],
    [2701, 25000, 1],
    [4500, 25000, 1],
    [4501, 25000, 2],
    [9000, 25000, 6], // (9000 - 100) / 4400 = 2.02, so 3 columns; (9000 - 100) / 5200 = 1.7, so 2 rows
  ])("a square of %d m is drawn at 1:%d on %d A4 sheets", (sideM, scale, count) => {
    const frames = chosenFrames(square(sideM), A4_WINDOW);
    expect([frames.scale, frames.sheets.length]).toEqual([scale, count]);
  });
});

function sharedWithNeighbours(extents: GridExtent[]): { sideways: number | null; upDown: number | null } {
  const wests = [...new Set(extents.map(({ westM }) => westM))].sort((a, b) => a - b);
  const souths = [...new Set(extents.map(({ southM }) => southM))].sort((a, b) => a - b);
  const first = extents[0] ?? { westM: 0, eastM: 0, southM: 0, northM: 0 };
  const least = (starts: number[], sideM: number) =>
    starts.length < 2
      ? null
      : Math.min(...starts.slice(1).map((start, place) => (starts[place] ?? 0) + sideM - start));
  return {
    sideways: least(wests, first.eastM - first.westM),
    upDown: least(souths, first.northM - first.southM),
  };
}
