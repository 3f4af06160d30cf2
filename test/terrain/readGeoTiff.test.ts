import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readGeoTiff } from "../../scripts/terrain/readGeoTiff.ts";
import { TerrainError } from "../../scripts/terrain/TerrainError.ts";
import { type TinyGeoTiff, tinyGeoTiff } from "./tinyGeoTiff.ts";

const fixture = (name: string) => readFileSync(new URL(`../fixtures/gdal/${name}`, import.meta.url));

const UTM_59S: TinyGeoTiff = {
  rows: 3,
  columns: 4,
  heights: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((height) => height + 100),
  geoKeys: { 1024: 1, 1025: 1, 3072: 32759, 3076: 9001 },
  pixelScale: [10, 10],
  tiePoint: [0, 0, 500000, 5000040],
};

async function failure(bytes: Uint8Array): Promise<TerrainError> {
  const error = await readGeoTiff(bytes, 6000).then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(TerrainError);
  return error as TerrainError;
}

describe("GeoTIFF", () => {
  test("gives back the heights, cells and zone that were written", async () => {
    const raster = await readGeoTiff(tinyGeoTiff(UTM_59S), 6000);
    expect(Array.from(raster.heightsM)).toEqual(UTM_59S.heights);
    expect(raster).toMatchObject({
      format: "GeoTIFF",
      coordinates: { kind: "utm", zone: { number: 59, hemisphere: "S" } },
      rows: 3,
      columns: 4,
      stepX: 10,
      stepY: 10,
      westX: 500005,
      northY: 5000035,
    });
  });

  // OGC GeoTIFF 1.1: the tie point is the outer corner of an area cell and the centre of a point cell, half a cell apart.
  test("places the same tie point half a cell apart for PixelIsArea and PixelIsPoint", async () => {
    const area = await readGeoTiff(tinyGeoTiff(UTM_59S), 6000);
    const point = await readGeoTiff(
      tinyGeoTiff({ ...UTM_59S, geoKeys: { ...UTM_59S.geoKeys, 1025: 2 } }),
      6000,
    );
    expect(area.westX - point.westX).toBe(5);
    expect(area.northY - point.northY).toBe(-5);
  });

  test("takes a tie point inside the grid", async () => {
    const raster = await readGeoTiff(tinyGeoTiff({ ...UTM_59S, tiePoint: [2, 1, 500020, 5000030] }), 6000);
    expect([raster.westX, raster.northY]).toEqual([500005, 5000035]);
  });

  test("takes a transformation matrix in place of a tie point and scale", async () => {
    const { pixelScale: _scale, tiePoint: _tie, ...rest } = UTM_59S;
    const transformation = [10, 0, 0, 500000, 0, -10, 0, 5000040, 0, 0, 0, 0, 0, 0, 0, 1];
    const raster = await readGeoTiff(tinyGeoTiff({ ...rest, transformation }), 6000);
    expect([raster.westX, raster.northY, raster.stepX, raster.stepY]).toEqual([500005, 5000035, 10, 10]);
    const turned = [10, 1, 0, 500000, 1, -10, 0, 5000040, 0, 0, 0, 0, 0, 0, 0, 1];
    expect((await failure(tinyGeoTiff({ ...rest, transformation: turned }))).code).toBe("terrain-rotated");
  });

  test("takes degrees on WGS 84 and NAD83", async () => {
    for (const code of [4326, 4269]) {
      const raster = await readGeoTiff(
        tinyGeoTiff({
          ...UTM_59S,
          geoKeys: { 1024: 2, 1025: 1, 2048: code, 2054: 9102 },
          pixelScale: [0.001, 0.001],
          tiePoint: [0, 0, 26, 67],
        }),
        6000,
      );
      expect(raster.coordinates).toEqual({ kind: "geographic" });
    }
  });

  test.each(["-9999\0", "-9999", "-9999.0\0", " -9.999e3\0"])(
    "makes the no-data number %j void",
    async (noData) => {
      const heights = UTM_59S.heights.with(5, -9999);
      const raster = await readGeoTiff(tinyGeoTiff({ ...UTM_59S, heights, noData }), 6000);
      expect(Array.from(raster.heightsM, Number.isNaN)).toEqual(heights.map((_, at) => at === 5));
    },
  );

  test("makes a no-data number with more digits than a 32-bit height void", async () => {
    const heights = UTM_59S.heights.with(0, -3.4028234663852886e38);
    const raster = await readGeoTiff(
      tinyGeoTiff({ ...UTM_59S, heights, noData: "-3.40282346638529e+38\0" }),
      6000,
    );
    expect(raster.heightsM[0]).toBeNaN();
  });

  test.each([
    ["another grid", { geoKeys: { 1024: 1, 1025: 1, 3072: 2193 } }, "terrain-crs", "EPSG:2193"],
    ["an old datum", { geoKeys: { 1024: 2, 1025: 1, 2048: 4267 } }, "terrain-crs", "EPSG:4267"],
    ["a grid of its own", { geoKeys: { 1024: 1, 1025: 1, 3072: 32767 } }, "terrain-crs", "of its own"],
    [
      "a projection without code",
      { geoKeys: { 1024: 1, 1025: 1, 2048: 4326 } },
      "terrain-unplaced",
      "no coordinate",
    ],
    ["no keys", { geoKeys: {} }, "terrain-unplaced", "no coordinate"],
    ["heights in feet", { geoKeys: { ...UTM_59S.geoKeys, 4099: 9002 } }, "terrain-units", "9002"],
    ["coordinates in feet", { geoKeys: { ...UTM_59S.geoKeys, 3076: 9003 } }, "terrain-units", "9003"],
    [
      "scaled heights",
      { metadata: '<GDALMetadata><Item name="SCALE" sample="0" role="scale">0.1</Item></GDALMetadata>' },
      "terrain-units",
      "scale 0.1",
    ],
    ["an unreadable no-data number", { noData: "none\0" }, "terrain-format", '"none"'],
    ["rows from south to north", { pixelScale: [10, -10] }, "terrain-rotated", "-10"],
  ] as const)("refuses %s by name", async (_what, change, code, found) => {
    const error = await failure(tinyGeoTiff({ ...UTM_59S, ...change } as TinyGeoTiff));
    expect(error.code).toBe(code);
    expect(error.found).toContain(found);
  });

  test("refuses a picture without coordinates", async () => {
    const { pixelScale: _scale, tiePoint: _tie, ...rest } = UTM_59S;
    expect((await failure(tinyGeoTiff(rest))).code).toBe("terrain-unplaced");
  });

  test("refuses more cells than the limit before reading them", async () => {
    await expect(readGeoTiff(tinyGeoTiff(UTM_59S), 3)).rejects.toMatchObject({ code: "terrain-too-large" });
  });

  test("never reads a file that was cut short, wherever it was cut", async () => {
    const whole = fixture("utm59s-deflate-area.tif");
    for (let length = 0; length < whole.length; length++) {
      const outcome = await readGeoTiff(whole.subarray(0, length), 6000).then(
        (raster) => raster,
        (error: unknown) => error,
      );
      expect(outcome, `cut to ${length} of ${whole.length} bytes`).toBeInstanceOf(TerrainError);
    }
  });

  test("says that a file was cut short", async () => {
    // The directory of a file made by most programs stands before the heights.
    expect((await failure(fixture("utm59s-lzw-tiled.tif").subarray(0, -40))).code).toBe("terrain-truncated");
  });
});

// Files written by GDAL 3.6.2: see the SOURCE.md beside them.
describe("GeoTIFF written by GDAL", () => {
  const heights = [
    [101.5, 102, 103, 104, 105],
    [111, 112, Number.NaN, 114, 115],
    [121, 122, 123, 124, 125],
    [131, 132, 133, 134, 135],
  ];

  test.each(["utm59s-deflate-area.tif", "utm59s-deflate-point.tif"])(
    "%s: floats, deflate with predictor, one void",
    async (name) => {
      const raster = await readGeoTiff(fixture(name), 6000);
      expect(Array.from(raster.heightsM)).toEqual(heights.flat());
      expect([raster.westX, raster.northY, raster.stepX, raster.stepY]).toEqual([500005, 5000035, 10, 10]);
    },
  );

  test("whole metres in LZW tiles that are larger than the grid", async () => {
    const raster = await readGeoTiff(fixture("utm59s-lzw-tiled.tif"), 6000);
    expect(Array.from(raster.heightsM)).toEqual(heights.flat().with(0, 102));
  });

  test("a national grid is refused with its name", async () => {
    const error = await failure(fixture("nztm.tif"));
    expect(error.code).toBe("terrain-crs");
    expect(error.found).toBe("EPSG:2193 (NZGD2000 / New Zealand Transverse Mercator 2000)");
  });

  test("heights stored with a scale are refused", async () => {
    expect((await failure(fixture("scaled.tif"))).code).toBe("terrain-units");
  });
});
