import { expect, test } from "vitest";
import type { DemoSite } from "../../scripts/demo/demoSite.ts";
import { siteGrounds } from "../../scripts/demo/siteGround.ts";

const lattice = { westX: 0, northY: 600, spacingM: 10, rows: 61, columns: 61 };

/** A hillside that rises 1 m in 5 towards the west: it faces east at atan(1/5) = 11.3 degrees. */
const hillside = Float64Array.from({ length: 61 * 61 }, (_, at) => 500 - (at % 61) * 2);

const site = (ground: DemoSite["ground"]) => ({ id: "bank", at: "300,300", ground }) as DemoSite;

test("a plane hillside has its own height, slope and facing", () => {
  const [found] = siteGrounds([site({ heightM: 440, slopeDeg: 11, facingDeg: 90 })], hillside, lattice);
  expect(found!.heightM).toBeCloseTo(440, 6);
  expect(found!.slopeDeg).toBeCloseTo(11.31, 2);
  expect(found!.facingDeg).toBeCloseTo(90, 6);
  expect(found!.faults).toEqual([]);
});

test("ground that misses its site table is told with its figures", () => {
  const [found] = siteGrounds([site({ heightM: 449, slopeDeg: 15, facingDeg: 115 })], hillside, lattice);
  expect(found!.faults).toEqual([
    "bank: height 440.0 m, the table says 449",
    "bank: slope 11.3 degrees, the table says 15",
    "bank: faces 90 degrees, the table says 115",
  ]);
});

test("on ground under 5 degrees the facing is not asked", () => {
  const [found] = siteGrounds([site({ heightM: 440, slopeDeg: 4, facingDeg: 270 })], hillside, lattice);
  expect(found!.faults).toEqual(["bank: slope 11.3 degrees, the table says 4"]);
});
