import { expect, test } from "vitest";
import { nearestWord } from "../../scripts/content/nearestWord.ts";

const known = ["aspectDeg", "slopeDeg", "cover", "dense timber", "a"];

test.each([
  ["aspectdge", "aspectDeg"],
  ["Aspect-Deg", "aspectDeg"],
  ["slopDeg", "slopeDeg"],
  ["dense_timber", "dense timber"],
  ["dnese timber", "dense timber"],
  ["cvoer", "cover"],
  ["weather", null],
  ["", null],
  ["b", null],
  ["x".repeat(10_000), null],
])("%j most likely meant %j", (written, meant) => {
  expect(nearestWord(written, known)).toBe(meant);
});
