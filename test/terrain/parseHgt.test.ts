import { describe, expect, test } from "vitest";
import { parseHgt } from "../../scripts/terrain/parseHgt.ts";
import { TerrainError } from "../../scripts/terrain/TerrainError.ts";

/** A tile whose heights tell their row and column; one void. */
function tile(side: number): Uint8Array {
  const bytes = new Uint8Array(side * side * 2);
  const view = new DataView(bytes.buffer);
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++)
      view.setInt16((row * side + column) * 2, row - column, false);
  }
  view.setInt16(2 * (side + 5), -32768, false);
  return bytes;
}

const code = (bytes: Uint8Array, name: string): string => {
  try {
    parseHgt(bytes, name);
  } catch (error) {
    if (error instanceof TerrainError) return error.code;
    throw error;
  }
  return "taken";
};

describe("SRTM tile", () => {
  test.each([1201, 3601])(
    "%i samples a side: big-endian whole metres from north to south, one void",
    (side) => {
      const raster = parseHgt(tile(side), "N67E026.hgt");
      expect([raster.rows, raster.columns]).toEqual([side, side]);
      expect(raster.stepX * (side - 1)).toBeCloseTo(1, 12);
      expect(raster.heightsM[0]).toBe(0);
      expect(raster.heightsM[side - 1]).toBe(1 - side);
      expect(raster.heightsM[(side - 1) * side]).toBe(side - 1);
      expect(raster.heightsM[side + 5]).toBeNaN();
      expect(raster.heightsM.reduce((voids, height) => voids + (Number.isNaN(height) ? 1 : 0), 0)).toBe(1);
    },
  );

  // NASA/USGS: the name gives the south-west sample; the tile spans one degree, edge samples shared with its neighbours.
  test.each([
    ["N67E026.hgt", 26, 68],
    ["S46E168.hgt", 168, -45],
    ["N36W085.hgt", -85, 37],
    ["S01W001.HGT", -1, 0],
    ["n00e000.hgt", 0, 1],
    ["S55W069.hgt", -69, -54],
  ])("%s begins at %f east, %f north", (name, westX, northY) => {
    const raster = parseHgt(tile(1201), name);
    expect([raster.westX, raster.northY]).toEqual([westX, northY]);
  });

  test.each(["terrain.hgt", "N67E26.hgt", "N67E026.hgt.zip", "N95E026.hgt", "N67E181.hgt", "67N026E.hgt"])(
    "refuses the name %s, since the position stands nowhere else",
    (name) => {
      expect(code(tile(1201), name)).toBe("terrain-hgt-name");
    },
  );

  test("refuses a tile that was cut short or is not square", () => {
    expect(code(tile(1201).subarray(0, -2), "N67E026.hgt")).toBe("terrain-hgt-size");
    expect(code(new Uint8Array(0), "N67E026.hgt")).toBe("terrain-hgt-size");
    expect(code(new Uint8Array(1201 * 3601 * 2), "N67E026.hgt")).toBe("terrain-hgt-size");
  });
});
