import { lstat, rename, rm } from "node:fs/promises";
import { absent, isOurs } from "./outputFolder.ts";
import { lockOutput, OutputBusyError } from "./outputLock.ts";
import { type OutputRemains, outputRemains, removeOld, removeOurs, stageFolder } from "./outputRemains.ts";
import { isRunning } from "./runningProcess.ts";

/** What was found and put right, for the person at the terminal. */
export interface Restored {
  /** the earlier pack was missing from its place and was put back */
  putBack: boolean;
  /** folders of a killed command that were removed */
  removed: number;
  /** another command is at work, so that nothing was touched */
  busy: boolean;
}

/**
 * Puts right what a killed command may have left beside the output folder: an earlier pack that was moved aside goes back
 * to its place, half-built ones are removed. Does nothing while another command is at work there.
 *
 * @param outDir absolute path of the output folder
 */
export async function restoreOutput(outDir: string): Promise<Restored> {
  if (isClean(await outputRemains(outDir))) return { putBack: false, removed: 0, busy: false };
  try {
    const lock = await lockOutput(outDir, 0);
    try {
      return await restoreLocked(outDir);
    } finally {
      await lock.release();
    }
  } catch (error) {
    if (error instanceof OutputBusyError) return { putBack: false, removed: 0, busy: true };
    throw error;
  }
}

/** The same for a caller that holds the lock. */
export async function restoreLocked(outDir: string): Promise<Restored> {
  const { stages, olds, locks } = await outputRemains(outDir);
  const restored: Restored = { putBack: false, removed: 0, busy: false };
  const oldest = await byAge(olds);
  for (const old of oldest.reverse()) {
    if (!(await isOurs(old))) continue;
    if ((await lstat(outDir).catch(absent)) === null) {
      await rename(old, outDir);
      restored.putBack = true;
    } else {
      const stage = stageFolder(outDir, process.pid);
      await removeOurs(stage);
      await removeOld(old, stage);
      restored.removed += 1;
    }
  }
  for (const stage of stages) {
    await removeOurs(stage);
    restored.removed += 1;
  }
  for (const { folder, pid } of locks) {
    if (pid !== process.pid && !isRunning({ pid, startedAt: "" })) {
      await rm(folder, { recursive: true, force: true });
    }
  }
  return restored;
}

function isClean({ stages, olds, locks, locked }: OutputRemains): boolean {
  return !locked && stages.length + olds.length + locks.length === 0;
}

async function byAge(folders: string[]): Promise<string[]> {
  const stats = await Promise.all(
    folders.map(async (folder) => ({ folder, at: (await lstat(folder).catch(absent))?.ctimeMs ?? 0 })),
  );
  return stats.sort((a, b) => a.at - b.at || (a.folder < b.folder ? -1 : 1)).map(({ folder }) => folder);
}
