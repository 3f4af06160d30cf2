import { join, relative } from "node:path";
import { type ModelConstants, modelConstants } from "../air/modelConstants.ts";
import { approachProblems } from "../briefing/approachProblems.ts";
import { groundProblems, terrainProblem } from "../briefing/groundProblems.ts";
import type { LoadedArea } from "../briefing/loadedArea.ts";
import { areaGround } from "../briefing/siteGround.ts";
import type { AreaContent, SharedData } from "../content/areaContent.ts";
import { type Problem, stopping } from "../content/problem.ts";
import { readContent } from "../content/readContent.ts";
import { distanceAndBearing } from "../geo/geodesic.ts";
import type { ElevationGrid } from "../terrain/elevationGrid.ts";
import { readElevationGrid } from "../terrain/readElevationGrid.ts";
import { TerrainError } from "../terrain/TerrainError.ts";
import type { AreaText } from "./areaText.ts";
import type { ComputedStore } from "./computedStore.ts";

/** An area with its ground, or, where all of it was computed before, with what was computed. */
export interface KnownArea extends LoadedArea {
  computed?: AreaText;
}

export interface LoadedAreas {
  areas: KnownArea[];
  shared: SharedData;
  problems: Problem[];
}

/**
 * Reads the areas of a content folder and their ground, and judges both: every problem of every file at once. The areas are
 * only complete when no problem stops the build.
 *
 * @param area    only this area; null for all
 * @param store   what was computed before: the ground of an area that it knows is not read again, it was judged then
 */
export async function loadAreas(
  contentDir: string,
  dataDir: string,
  area: string | null,
  store: ComputedStore | null = null,
): Promise<LoadedAreas> {
  const read = await readContent(contentDir, dataDir, area === null ? {} : { areas: [area] });
  const problems = [...read.problems];
  if (stopping(problems).some((problem) => isShared(problem, dataDir))) {
    return { areas: [], shared: read.shared, problems };
  }
  const constants = modelConstants(read.shared.model);
  const areas: KnownArea[] = [];
  for (const content of read.areas) {
    const computed = stopping(problems).length > 0 ? null : await store?.find(content);
    if (computed) {
      areas.push({ content, ground: null, computed });
      continue;
    }
    const { grid, problems: found } = await readGround(content, constants);
    problems.push(...found, ...approachProblems(content, (path) => shown(join(content.folder, path))));
    areas.push({ content, ground: grid === null ? null : areaGround(grid, constants) });
  }
  return { areas, shared: read.shared, problems };
}

/** Without the constants of the model the ground can not be judged. */
function isShared(problem: Problem, dataDir: string): boolean {
  return problem.file === shown(join(dataDir, "model.json"));
}

async function readGround(
  area: AreaContent,
  constants: ModelConstants,
): Promise<{ grid: ElevationGrid | null; problems: Problem[] }> {
  if (area.terrainPath === null) return { grid: null, problems: [] };
  try {
    const grid = await readElevationGrid(area.terrainPath, area.facts.centre, {
      holeCellsMax: constants.holeCellsMax,
      holeShareMax: constants.holeShareMax,
      sideMax: constants.gridSideMaxCells,
      keepWithinM: constants.horizonReachM + farthestM(area),
    });
    return { grid, problems: groundProblems(area, grid, (path) => shown(join(area.folder, path))) };
  } catch (error) {
    if (error instanceof TerrainError)
      return { grid: null, problems: [terrainProblem(shown(area.terrainPath), error)] };
    throw error;
  }
}

/** Distance from the centre to the farthest site, so that each keeps its whole horizon. */
function farthestM(area: AreaContent): number {
  return area.sites.reduce(
    (most, site) => Math.max(most, distanceAndBearing(area.facts.centre, site.facts.position).distanceM),
    0,
  );
}

function shown(path: string): string {
  const near = relative(process.cwd(), path);
  return near.startsWith("..") ? path : near;
}
