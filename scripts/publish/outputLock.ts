import { mkdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { absent } from "./outputFolder.ts";
import { isRunning, type RunningProcess, thisProcess } from "./runningProcess.ts";

/** Another command is at work on the same output folder. */
export class OutputBusyError extends Error {
  override name = "OutputBusyError";
  constructor(folder: string, pid: number | null) {
    const who = pid === null ? "Another command" : `Another command (process ${pid})`;
    super(
      `${who} is at work on ${folder}. Nothing was changed. Run this again when it has finished; ` +
        `if none runs, remove ${folder}.lock.`,
    );
  }
}

export interface OutputLock {
  /** @throws {OutputBusyError} the lock was taken away, so the folder must not be touched */
  assertHeld(): Promise<void>;
  release(): Promise<void>;
}

let taken = 0;

/**
 * Takes the output folder for this process alone. The lock is a sibling folder "<folder>.lock" that is moved into place
 * complete, which only one process can do; the lock of a process that was killed is put aside.
 *
 * @param waitMs how long to wait for another process to finish, 0 to give up at once
 * @param onWait called once, before waiting
 * @throws {OutputBusyError} another process still holds it after that time
 */
export async function lockOutput(
  folder: string,
  waitMs: number,
  onWait: (pid: number | null) => void = () => undefined,
): Promise<OutputLock> {
  const lock = `${folder}.lock`;
  const mine = { ...thisProcess(), number: taken++ };
  const ready = `${lock}-${mine.pid}-${mine.number}`;
  const giveUpAt = performance.now() + waitMs;
  let told = false;
  await mkdir(ready, { recursive: true });
  await writeFile(join(ready, "holder.json"), JSON.stringify(mine));
  try {
    while (!(await moved(ready, lock))) {
      const holder = await holderOf(lock);
      if (holder !== null && !isRunning(holder)) {
        await putAside(lock, holder, `${ready}-stale`);
        continue;
      }
      if (performance.now() >= giveUpAt) throw new OutputBusyError(folder, holder?.pid ?? null);
      if (!told) onWait(holder?.pid ?? null);
      told = true;
      await wait(50);
    }
  } catch (error) {
    await rm(ready, { recursive: true, force: true });
    throw error;
  }
  const isMine = async () => same(await holderOf(lock), mine);
  return {
    async assertHeld() {
      if (!(await isMine())) throw new OutputBusyError(folder, (await holderOf(lock))?.pid ?? null);
    },
    async release() {
      if (!(await isMine())) return;
      if (await moved(lock, ready)) await rm(ready, { recursive: true, force: true });
    },
  };
}

type Holder = RunningProcess & { number: number };

/** Who holds the lock; null when it is free or just being released. */
async function holderOf(lock: string): Promise<Holder | null> {
  const text = await readFile(join(lock, "holder.json"), "utf8").catch(absent);
  if (text === null) return null;
  try {
    const { pid, startedAt, number } = JSON.parse(text) as Partial<Holder>;
    if (typeof pid !== "number" || typeof startedAt !== "string" || typeof number !== "number") return null;
    return { pid, startedAt, number };
  } catch {
    return null;
  }
}

/** Removes a dead holder's lock, and only his: a living process may have taken the name since it was read. */
async function putAside(lock: string, holder: Holder, aside: string): Promise<void> {
  if (!(await moved(lock, aside))) return;
  if (same(await holderOf(aside), holder)) await rm(aside, { recursive: true, force: true });
  else await moved(aside, lock);
}

function same(a: Holder | null, b: Holder): boolean {
  return a !== null && a.pid === b.pid && a.startedAt === b.startedAt && a.number === b.number;
}

async function moved(from: string, to: string): Promise<boolean> {
  try {
    await rename(from, to);
    return true;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "";
    if (["ENOTEMPTY", "EEXIST", "ENOENT", "EPERM"].includes(code)) return false;
    throw error;
  }
}
