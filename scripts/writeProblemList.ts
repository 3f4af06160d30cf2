import { readFile, writeFile } from "node:fs/promises";
import { GROUND_CODES } from "./briefing/groundProblems.ts";
import { PROBLEM_CODES } from "./content/problemCodes.ts";
import { listedIn, problemList } from "./content/problemList.ts";
import { TERRAIN_CODES } from "./terrain/TerrainError.ts";

const list = problemList({ ...PROBLEM_CODES, ...TERRAIN_CODES, ...GROUND_CODES });
const guide = new URL("../DEVELOPERS.md", import.meta.url);
await writeFile(guide, listedIn(await readFile(guide, "utf8"), list));
