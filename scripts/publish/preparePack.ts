import type { AreaContent, SharedData } from "../content/areaContent.ts";
import { type Problem, stopping } from "../content/problem.ts";
import { UsageError } from "../UsageError.ts";
import type { AreaPack } from "./areaPack.ts";
import type { PackOptions, Paper } from "./packOptions.ts";
import type { Pages } from "./pages.ts";
import type { Progress } from "./progress.ts";

/** The rooms that a pack is made by, in their order. */
export interface PackSteps<Loaded extends { content: AreaContent } = { content: AreaContent }> {
  /** reads and judges content and ground; areas are only complete when no problem stops the build */
  loadAreas(options: PackOptions): Promise<{ areas: Loaded[]; shared: SharedData; problems: Problem[] }>;
  /** computes every number of one area */
  composePack(area: Loaded, shared: SharedData, options: PackOptions): AreaPack | Promise<AreaPack>;
  /** picks, rounds and words them for each page */
  composePages(packs: AreaPack[], shared: SharedData, options: { paper?: Paper }): Pages;
}

/** What is to be published, or the problems that stand against it. */
export type Prepared =
  | { stopped: true; problems: Problem[] }
  | { stopped: false; warnings: Problem[]; packs: AreaPack[]; pages: Pages };

/**
 * Reads, judges and computes everything a pack shows; writes nothing.
 *
 * @throws {UsageError} `--trip` names no trip of the areas packed
 */
export async function preparePack<Loaded extends { content: AreaContent }>(
  options: PackOptions,
  steps: PackSteps<Loaded>,
  progress: Progress,
): Promise<Prepared> {
  const { areas, shared, problems } = await progress.step("Read content", () => steps.loadAreas(options));
  if (stopping(problems).length > 0) return { stopped: true, problems };
  if (areas.length === 0) throw new Error(`there are no areas in ${options.contentDir}`);
  const { trip, paper } = options;
  if (trip !== null && !areas.some(({ content }) => content.trips.some(({ id }) => id === trip))) {
    const known = areas.flatMap(({ content }) => content.trips.map(({ id }) => id));
    throw new UsageError(`no trip ${trip}; the areas packed have ${known.join(", ") || "no trips"}`);
  }
  const packs: AreaPack[] = [];
  await progress.step("Compute areas", async (tick) => {
    for (const area of areas) {
      await tick(packs.length, areas.length, area.content.id);
      packs.push(await steps.composePack(area, shared, options));
    }
    await tick(packs.length, areas.length, "");
  });
  const pages = await progress.step("Lay out pages", async () =>
    steps.composePages(packs, shared, paper === null ? {} : { paper }),
  );
  return { stopped: false, warnings: problems, packs, pages };
}
