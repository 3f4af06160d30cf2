import { describe, expect, test } from "vitest";
import { parseAsciiGrid } from "../../scripts/terrain/parseAsciiGrid.ts";
import { TerrainError } from "../../scripts/terrain/TerrainError.ts";

const parse = (text: string, sideMax = 6000) => parseAsciiGrid(new TextEncoder().encode(text), null, sideMax);

function failure(text: string, sideMax = 6000): TerrainError {
  try {
    parse(text, sideMax);
  } catch (error) {
    if (error instanceof TerrainError) return error;
    throw error;
  }
  throw new Error("the grid was taken");
}

const HEAD = "ncols 4\nnrows 3\nxllcorner 26.5\nyllcorner 67.25\ncellsize 0.5\n";
const BODY = "1 2 3 4\n5 6 7 8\n9 10 11 12\n";

describe("ESRI ASCII grid", () => {
  test("rows run from north to south and the corner is half a cell from the first centre", () => {
    const raster = parse(HEAD + BODY);
    expect(raster).toMatchObject({
      format: "ESRI ASCII",
      coordinates: { kind: "geographic" },
      rows: 3,
      columns: 4,
      westX: 26.75,
      northY: 68.5,
      stepX: 0.5,
      stepY: 0.5,
    });
    expect(Array.from(raster.heightsM)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  test("a centre key names the same ground as the corner key half a cell away", () => {
    const centre = parse(
      HEAD.replace("xllcorner 26.5", "xllcenter 26.75").replace("yllcorner 67.25", "yllcenter 67.5") + BODY,
    );
    const corner = parse(HEAD + BODY);
    expect([centre.westX, centre.northY]).toEqual([corner.westX, corner.northY]);
  });

  test("keys may come in any letter case and order, lines may end in any way", () => {
    const text = `NROWS 3\r\nNCols 4\r\nCELLSIZE 0.5\r\nYLLCorner 67.25\r\nXLLCORNER 26.5\r\n${BODY.replaceAll("\n", " ")}`;
    expect(parse(text)).toEqual(parse(HEAD + BODY));
  });

  test("numbers may be signed, decimal or with an exponent, and are read to the last digit", () => {
    const numbers = [
      "-3.25",
      "+4",
      ".5",
      "1e2",
      "1234.5678",
      "-0.1",
      "0071",
      "5.",
      "2.5E-1",
      "123456789.123456789",
      "0",
      "-0",
    ];
    const raster = parse(HEAD + numbers.join("\t"));
    expect(Array.from(raster.heightsM)).toEqual(numbers.map((text) => Math.fround(Number(text))));
  });

  test.each([
    ["NODATA_value -9999\n", "-9999"],
    ["nodata_value -32768\n", "-32768.000"],
    ["", "-9999"],
    ["NODATA_value nan\n".replace("nan", "-1e30"), "-1e30"],
    ["", "nan"],
  ])("with %j the number %s is a void", (line, number) => {
    const raster = parse(HEAD + line + BODY.replace("6", number));
    expect(Array.from(raster.heightsM, Number.isNaN)).toEqual(
      Array.from({ length: 12 }, (_, at) => at === 5),
    );
  });

  test.each([
    ["too few heights", HEAD + BODY.slice(0, 20), "terrain-truncated", "10 heights"],
    ["too many heights", `${HEAD + BODY}13`, "terrain-format", "13 heights"],
    ["a decimal comma", HEAD + BODY.replace("6", "6,5"), "terrain-format", '"6,5" at row 1, column 1'],
    ["a word among the heights", HEAD + BODY.replace("6", "x"), "terrain-format", '"x"'],
    ["a bare minus", HEAD + BODY.replace("6", "-"), "terrain-format", '"-"'],
    ["no rows", HEAD.replace("nrows 3\n", "") + BODY, "terrain-format", "no nrows"],
    ["no corner", HEAD.replace("xllcorner 26.5\n", "") + BODY, "terrain-unplaced", "no xllcorner"],
    ["corner and centre", `xllcenter 26.75\n${HEAD}${BODY}`, "terrain-unplaced", "xllcorner 26.5"],
    ["metres without a zone", HEAD.replace("26.5", "500000") + BODY, "terrain-unplaced", "no .prj"],
    ["cells of no size", HEAD.replace("cellsize 0.5", "cellsize 0") + BODY, "terrain-format", "cellsize 0"],
    ["cells that are not square", `dx 1\ndy 2\n${HEAD}${BODY}`, "terrain-not-square", "dx and dy"],
    ["a key twice", `nrows 3\n${HEAD}${BODY}`, "terrain-format", "nrows"],
    ["another kind of file", "<html>", "terrain-format", "no nrows"],
    ["an empty file", "", "terrain-format", "no nrows"],
  ])("refuses %s", (_what, text, code, found) => {
    const error = failure(text);
    expect(error.code).toBe(code);
    expect(error.found).toContain(found);
  });

  test("refuses more cells than the limit before making room for them", () => {
    expect(failure(HEAD.replace("ncols 4", "ncols 6001") + BODY).code).toBe("terrain-too-large");
    expect(failure(HEAD.replace("ncols 4", "ncols 4000000000") + BODY).code).toBe("terrain-too-large");
  });
});
