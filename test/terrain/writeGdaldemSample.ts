// Writes test/fixtures/jacksboro/gdaldem-sample.csv anew: npx tsx test/terrain/writeGdaldemSample.ts (needs gdaldem).
import { writeFileSync } from "node:fs";
import { gdaldemSample } from "./gdaldemSample.ts";
import { jacksboroGrid } from "./jacksboro.ts";

const grid = await jacksboroGrid();
const lines = gdaldemSample(grid, 2000, 1981).map(
  (cell) => `${cell.row},${cell.column},${cell.slopeDeg.toFixed(4)},${cell.aspectDeg?.toFixed(4) ?? ""}`,
);
writeFileSync(
  new URL("../fixtures/jacksboro/gdaldem-sample.csv", import.meta.url),
  `row,column,slopeDeg,aspectDeg\n${lines.join("\n")}\n`,
);
