import { readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { GROUND_CODES } from "../scripts/briefing/groundProblems.ts";
import { PROBLEM_CODES } from "../scripts/content/problemCodes.ts";
import { listedIn, problemList } from "../scripts/content/problemList.ts";
import { TERRAIN_CODES } from "../scripts/terrain/TerrainError.ts";

test("the contributor guide lists every problem code with its meaning", async () => {
  const guide = await readFile(new URL("../DEVELOPERS.md", import.meta.url), "utf8");
  const list = problemList({ ...PROBLEM_CODES, ...TERRAIN_CODES, ...GROUND_CODES });
  expect(listedIn(guide, list), "run npx tsx scripts/writeProblemList.ts").toBe(guide);
});

test("a guide without the marks is refused", () => {
  expect(() => listedIn("# Guide", "list")).toThrow(RangeError);
});
