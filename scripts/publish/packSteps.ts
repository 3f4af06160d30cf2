import { readFileSync } from "node:fs";
import { join } from "node:path";
import { composePack } from "../briefing/composePack.ts";
import type { LoadedArea } from "../briefing/loadedArea.ts";
import { composePages } from "../briefing/pages/composePages.ts";
import { drawPages } from "../drawing/drawPages.ts";
import { loadAreas } from "./loadAreas.ts";
import type { PackSteps } from "./preparePack.ts";
import { projectFolders } from "./projectFolders.ts";

/** The rooms of this program as a pack goes through them. */
export const packSteps: PackSteps<LoadedArea> = {
  loadAreas: ({ contentDir, area }) => loadAreas(contentDir, projectFolders.data, area),
  composePack: (area, shared, { edition, trip, year, asOf, builtAt }) =>
    composePack(area, shared, {
      edition,
      trip,
      year,
      asOf,
      builtAt,
      generator: generator(),
      tzVersion: process.versions.tz ?? "unknown",
    }),
  composePages: (packs, shared, options) => drawPages(composePages(packs, shared, options)),
};

/** Name and version of this program. */
function generator(): string {
  const { name, version } = JSON.parse(readFileSync(join(projectFolders.root, "package.json"), "utf8")) as {
    name: string;
    version: string;
  };
  return `${name} ${version}`;
}
