import { lstat, mkdir, rename } from "node:fs/promises";
import { absent, markAsOurs, ownOutputFolder } from "./outputFolder.ts";
import { lockOutput } from "./outputLock.ts";
import { oldFolder, removeOld, removeOurs, stageFolder } from "./outputRemains.ts";
import { type Restored, restoreLocked } from "./restoreOutput.ts";

export interface ReplaceOptions {
  /** absolute path of the output folder, as ownOutputFolder returned it */
  outDir: string;
  /** how long to wait for another command on the same folder */
  waitMs: number;
  onWait: (pid: number | null) => void;
  onRestored: (restored: Restored) => void;
}

/**
 * Builds a folder aside and then shows it in the place of the earlier one, with two renames. When `build` throws, the
 * earlier one stays untouched. A process killed at any moment leaves the earlier or the new pack whole, in its place or
 * beside it, where `restoreOutput` finds it.
 *
 * @param build writes everything into the folder it is given, a sibling of the output folder
 * @throws {OutputBusyError} another command is at work on the folder; what `build` throws goes through
 */
export async function replaceOutput(
  options: ReplaceOptions,
  build: (stage: string) => Promise<void>,
): Promise<void> {
  const { outDir, waitMs, onWait, onRestored } = options;
  const lock = await lockOutput(outDir, waitMs, onWait);
  try {
    onRestored(await restoreLocked(outDir));
    const stage = stageFolder(outDir, process.pid);
    try {
      await mkdir(stage);
      await markAsOurs(stage);
      await build(stage);
      // someone may have put files of his own there while the pack was computed
      await ownOutputFolder(outDir, []);
      await lock.assertHeld();
      await swapIn(stage, outDir);
    } catch (error) {
      await removeOurs(stage);
      throw error;
    }
  } finally {
    await lock.release();
  }
}

async function swapIn(stage: string, outDir: string): Promise<void> {
  if ((await lstat(outDir).catch(absent)) === null) {
    await rename(stage, outDir);
    return;
  }
  const old = oldFolder(outDir, process.pid);
  await markAsOurs(outDir);
  await rename(outDir, old);
  try {
    await rename(stage, outDir);
  } catch (error) {
    await rename(old, outDir);
    throw error;
  }
  // the new pack stands; what can not be removed now is removed by the next command
  await removeOld(old, stage).catch(() => undefined);
}
