import { mkdir, watch } from "node:fs/promises";
import { join } from "node:path";
import { UsageError } from "../UsageError.ts";
import { markAsOurs, OutputFolderError, ownOutputFolder } from "./outputFolder.ts";
import { removeOurs } from "./outputRemains.ts";
import { PREVIEW_FOLDER, PREVIEW_USAGE, type PreviewOptions, previewOptions } from "./previewOptions.ts";
import { PREVIEW_ARGUMENTS } from "./previewPages.ts";
import { projectFolders } from "./projectFolders.ts";
import { restoreOutput } from "./restoreOutput.ts";
import { serveWithEleventy } from "./runEleventy.ts";

/**
 * Serves the pages while the owner writes, until it is stopped. Content with problems does not end it: the problems are
 * listed, and it goes on with the next change.
 *
 * @returns exit status: 0 stopped by hand; 2 wrong usage
 */
export async function previewCommand(args: readonly string[]): Promise<number> {
  let options: PreviewOptions | null;
  try {
    options = previewOptions(args, new Date());
    if (options === null) {
      process.stdout.write(`${PREVIEW_USAGE}\n`);
      return 0;
    }
    process.chdir(projectFolders.root);
    await restoreOutput(join(projectFolders.root, "_site"));
    await emptyPreviewFolder();
  } catch (error) {
    if (!(error instanceof UsageError || error instanceof OutputFolderError)) throw error;
    process.stderr.write(`${error.message}\n\nnpm run preview -- --help tells more.\n`);
    return 2;
  }
  process.env[PREVIEW_ARGUMENTS] = JSON.stringify(options.args);
  const server = await firstGoodBuild(options);
  await new Promise<void>((resolve) => {
    process.once("SIGINT", resolve);
    process.once("SIGTERM", resolve);
  });
  await server.stop();
  return 0;
}

async function emptyPreviewFolder(): Promise<void> {
  const folder = await ownOutputFolder(join(projectFolders.root, PREVIEW_FOLDER), []);
  await removeOurs(folder);
  await mkdir(folder, { recursive: true });
  await markAsOurs(folder);
}

/** Starts to serve; as long as the first build fails, says why and waits for the next change of a file. */
async function firstGoodBuild({ pack, port }: PreviewOptions): Promise<{ stop(): Promise<void> }> {
  for (;;) {
    const changed = nextChange([pack.contentDir, projectFolders.data, projectFolders.layouts]);
    try {
      return await serveWithEleventy({
        layoutsFolder: "layouts",
        outFolder: PREVIEW_FOLDER,
        configPath: ".eleventy.js",
        port,
      });
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      process.stderr.write(`${reason}\nWaiting for a change in ${pack.contentDir}.\n`);
      await changed;
    }
  }
}

/** Resolves when a file below one of the folders changes. */
async function nextChange(folders: string[]): Promise<void> {
  const stop = new AbortController();
  const one = async (folder: string) => {
    for await (const _ of watch(folder, { recursive: true, signal: stop.signal })) return;
  };
  const waits = folders.map((folder) => one(folder).catch(() => new Promise<void>(() => undefined)));
  await Promise.race(waits);
  stop.abort();
}
