import { describeProblems } from "../content/describeProblem.ts";
import type { AreaPack } from "./areaPack.ts";
import { markAsOurs } from "./outputFolder.ts";
import { packSteps } from "./packSteps.ts";
import { checkedPages, type Pages } from "./pages.ts";
import { preparePack } from "./preparePack.ts";
import { contentGlob, PREVIEW_FOLDER, previewOptions } from "./previewOptions.ts";
import { silentProgress } from "./progress.ts";
import { projectFolders } from "./projectFolders.ts";
import { writeBesidePages } from "./renderPack.ts";

/** The variable by which the preview command hands its arguments to the configuration file, as JSON. */
export const PREVIEW_ARGUMENTS = "LEELIGHT_PREVIEW_ARGUMENTS";

export interface PreviewPages {
  outFolder: string;
  contentGlobs: string[];
  /** computes the pages from the content as it is now; problems are listed and the pages then stay as they were */
  pages(): Promise<Pages>;
  /** assets and numbers of the pages last computed */
  writeBeside(): Promise<void>;
}

/** The pages of a preview, computed anew whenever Eleventy asks. */
export function previewPages(): PreviewPages {
  const args = JSON.parse(process.env[PREVIEW_ARGUMENTS] ?? "[]") as string[];
  const options = previewOptions(args, new Date());
  if (options === null) throw new RangeError("help is answered by the preview command");
  let packs: AreaPack[] = [];
  return {
    outFolder: PREVIEW_FOLDER,
    contentGlobs: [contentGlob(options.pack.contentDir)],
    async pages() {
      const prepared = await preparePack(options.pack, packSteps, silentProgress);
      const problems = prepared.stopped ? prepared.problems : prepared.warnings;
      if (problems.length > 0) process.stderr.write(`\n${describeProblems(problems)}\n\n`);
      if (prepared.stopped) {
        const error = new Error("The content has problems (listed above). The pages stay as they were.");
        // Eleventy prints no stack of an error that says so
        throw Object.assign(error, { skipOriginalStack: true });
      }
      packs = prepared.packs;
      return checkedPages(prepared.pages);
    },
    async writeBeside() {
      await markAsOurs(PREVIEW_FOLDER);
      await writeBesidePages(PREVIEW_FOLDER, projectFolders.layouts, packs);
    },
  };
}
