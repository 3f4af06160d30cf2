import { readdir, rename, rm, rmdir } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { isOurs, MARKER } from "./outputFolder.ts";

/** Where a pack is built before it is shown. */
export function stageFolder(outDir: string, pid: number): string {
  return `${outDir}.stage-${pid}`;
}

/** Where the earlier pack stands between the two renames of a swap. */
export function oldFolder(outDir: string, pid: number): string {
  return `${outDir}.old-${pid}`;
}

export interface OutputRemains {
  stages: string[];
  olds: string[];
  /** locks that were not in place yet, or no longer */
  locks: { folder: string; pid: number }[];
  /** a command holds the lock, or was killed while it did */
  locked: boolean;
}

/** The folders beside the output folder that a killed command may have left. */
export async function outputRemains(outDir: string): Promise<OutputRemains> {
  const names = await readdir(dirname(outDir)).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return [];
    throw error;
  });
  const start = `${basename(outDir)}.`;
  const rests = names.filter((name) => name.startsWith(start)).map((name) => name.slice(start.length));
  const having = (form: RegExp) => rests.filter((rest) => form.test(rest)).map((rest) => `${outDir}.${rest}`);
  return {
    stages: having(/^stage-\d+$/),
    olds: having(/^old-\d+$/),
    locked: rests.includes("lock"),
    locks: rests.flatMap((rest) => {
      const pid = /^lock(?:-breaking)*-(\d+)-\d+(?:-stale)?$/.exec(rest)?.[1];
      return pid === undefined ? [] : [{ folder: `${outDir}.${rest}`, pid: Number(pid) }];
    }),
  };
}

/**
 * Removes a folder of ours, its marker last, so that a removal that is cut short can be finished by the next command.
 * A folder without the marker is left alone unless it is empty.
 */
export async function removeOurs(folder: string): Promise<void> {
  if (await isOurs(folder)) {
    const names = await readdir(folder);
    const others = names.filter((name) => name !== MARKER);
    await Promise.all(others.map((name) => rm(join(folder, name), { recursive: true, force: true })));
    await rm(join(folder, MARKER));
  }
  await rmdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== "ENOTEMPTY" && error.code !== "EEXIST" && error.code !== "ENOENT") throw error;
  });
}

/**
 * Removes an earlier pack. It first takes the name of a stage: what bears the name of an earlier pack is always whole, and
 * can be put back.
 */
export async function removeOld(old: string, stage: string): Promise<void> {
  await rename(old, stage);
  await removeOurs(stage);
}
