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

let count = 0;

/**
 * Takes the output folder for this process alone. The lock is a sibling folder "<folder>.lock" that is moved into place
 * complete, which only one process can do. The lock of a process that was killed is removed, under a lock of its own, so
 * that nobody removes the lock of a living one that has just followed.
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
  const mine = { ...thisProcess(), number: count++ };
  const giveUpAt = performance.now() + waitMs;
  let told = false;
  for (;;) {
    const tried = await take(lock, mine);
    if (tried === "taken") break;
    if (tried === "removed") continue;
    if (performance.now() >= giveUpAt) throw new OutputBusyError(folder, tried.holder?.pid ?? null);
    if (!told) onWait(tried.holder?.pid ?? null);
    told = true;
    await wait(50);
  }
  return {
    async assertHeld() {
      const holder = await holderOf(lock);
      if (!same(holder, mine)) throw new OutputBusyError(folder, holder?.pid ?? null);
    },
    release: () => release(lock, mine),
  };
}

/** Tries once; "removed" when the lock of a dead process was in the way and is gone now. */
async function take(lock: string, mine: Holder): Promise<"taken" | "removed" | { holder: Holder | null }> {
  const ready = `${lock}-${mine.pid}-${mine.number}`;
  await mkdir(ready, { recursive: true });
  await writeFile(join(ready, HOLDER_FILE), JSON.stringify(mine));
  if (await moved(ready, lock)) return "taken";
  await rm(ready, { recursive: true, force: true });
  const holder = await holderOf(lock);
  if (holder === null || isRunning(holder)) return { holder };
  const breaking = `${lock}-breaking`;
  const broken = await take(breaking, mine);
  if (broken !== "taken") return broken === "removed" ? broken : { holder };
  try {
    const now = await holderOf(lock);
    if (now !== null && !isRunning(now)) await remove(lock, `${ready}-stale`);
    return "removed";
  } finally {
    await release(breaking, mine);
  }
}

async function release(lock: string, mine: Holder): Promise<void> {
  if (same(await holderOf(lock), mine)) await remove(lock, `${lock}-${mine.pid}-${mine.number}`);
}

/** The name becomes free at once, never with half of its content. */
async function remove(lock: string, aside: string): Promise<void> {
  if (await moved(lock, aside)) await rm(aside, { recursive: true, force: true });
}

const HOLDER_FILE = "holder.json";

type Holder = RunningProcess & { number: number };

/** Who holds the lock; null when it is free or just being released. */
async function holderOf(lock: string): Promise<Holder | null> {
  const text = await readFile(join(lock, HOLDER_FILE), "utf8").catch(absent);
  if (text === null) return null;
  try {
    const { pid, startedAt, number } = JSON.parse(text) as Partial<Holder>;
    if (typeof pid !== "number" || typeof startedAt !== "string" || typeof number !== "number") return null;
    return { pid, startedAt, number };
  } catch {
    return null;
  }
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
