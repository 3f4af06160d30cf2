import { relative } from "node:path";
import type { AreaContent } from "../content/areaContent.ts";
import { describeProblems } from "../content/describeProblem.ts";
import { stopping } from "../content/problem.ts";
import { UsageError } from "../UsageError.ts";
import { OutputFolderError, ownOutputFolder } from "./outputFolder.ts";
import { OutputBusyError } from "./outputLock.ts";
import { PACK_USAGE, type PackOptions, packOptions } from "./packOptions.ts";
import { type PackSteps, preparePack } from "./preparePack.ts";
import { createProgress, type ProgressScreen } from "./progress.ts";
import { projectFolders } from "./projectFolders.ts";
import { renderPack } from "./renderPack.ts";
import { replaceOutput } from "./replaceOutput.ts";
import { type Restored, restoreOutput } from "./restoreOutput.ts";

/** What a command reads and writes outside its arguments. */
export interface CommandSurroundings {
  out: ProgressScreen;
  err: { write(text: string): unknown };
  env: Record<string, string | undefined>;
  now: () => Date;
  layoutsFolder: string;
  /** how long a second pack waits for the first */
  lockWaitMs: number;
}

/**
 * Builds a pack and shows it in the output folder. Every failure leaves the output folder as it was.
 *
 * @returns exit status: 0 built; 1 problems in the content, all listed, or a build that failed; 2 wrong usage
 */
export async function packCommand<Loaded extends { content: AreaContent }>(
  args: readonly string[],
  steps: PackSteps<Loaded>,
  around: CommandSurroundings,
): Promise<number> {
  try {
    const options = packOptions(args, around.now(), around.env.SOURCE_DATE_EPOCH);
    if (options === null) {
      around.out.write(`${PACK_USAGE}\n`);
      return 0;
    }
    return await build(options, steps, around);
  } catch (error) {
    around.err.write(`${errorText(error, around.env)}\n`);
    return error instanceof UsageError || error instanceof OutputFolderError ? 2 : 1;
  }
}

async function build<Loaded extends { content: AreaContent }>(
  options: PackOptions,
  steps: PackSteps<Loaded>,
  around: CommandSurroundings,
): Promise<number> {
  const startedAt = performance.now();
  const { layoutsFolder } = around;
  const outDir = await ownOutputFolder(options.outDir, [
    options.contentDir,
    layoutsFolder,
    projectFolders.data,
    projectFolders.scripts,
  ]);
  tellRestored(await restoreOutput(outDir), outDir, around);
  const progress = createProgress(around.out, () => performance.now());
  const prepared = await preparePack(options, steps, progress);
  if (prepared.stopped) {
    const count = stopping(prepared.problems).length;
    around.err.write(`${describeProblems(prepared.problems)}\n\n`);
    around.err.write(`${count} ${count === 1 ? "problem" : "problems"}. Nothing was built or changed.\n`);
    return 1;
  }
  const { packs, pages, warnings } = prepared;
  if (warnings.length > 0) around.err.write(`${describeProblems(warnings)}\n\n`);
  await replaceOutput(
    {
      outDir,
      waitMs: around.lockWaitMs,
      onWait: (pid) =>
        around.out.write(
          `Waiting: another command${pid === null ? "" : ` (process ${pid})`} is at work on ${shown(outDir)}.\n`,
        ),
      onRestored: (restored) => tellRestored(restored, outDir, around),
    },
    (stage) => progress.step("Write pages", () => renderPack(stage, layoutsFolder, packs, pages)),
  );
  const pageCount = Object.values(pages).reduce((sum, list) => sum + list.length, 0);
  const seconds = ((performance.now() - startedAt) / 1000).toFixed(1);
  around.out.write(
    `${shown(outDir)}: ${counted(packs.length, "area")}, ${counted(pageCount, "page")}, ${seconds} s. ` +
      `Open ${shown(outDir)}/index.html\n`,
  );
  return 0;
}

function tellRestored(restored: Restored, outDir: string, around: CommandSurroundings): void {
  if (restored.putBack) {
    around.out.write(`An earlier run was cut short: its earlier pack was put back in ${shown(outDir)}.\n`);
  } else if (restored.removed > 0) {
    around.out.write("An earlier run was cut short: what it left half-built was removed.\n");
  }
}

function errorText(error: unknown, env: CommandSurroundings["env"]): string {
  if (!(error instanceof Error)) return String(error);
  if (error instanceof UsageError) return `${error.message}\n\nnpm run pack -- --help tells more.`;
  if (error instanceof OutputFolderError || error instanceof OutputBusyError) return error.message;
  const detail = env.LEELIGHT_DEBUG ? `\n${error.stack ?? ""}` : "";
  return `The pack was not built, and the output was not changed.\n${error.message}${detail}`;
}

function shown(path: string): string {
  const near = relative(process.cwd(), path);
  return near === "" || near.startsWith("..") ? path : near;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
