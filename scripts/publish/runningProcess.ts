import { readFileSync } from "node:fs";

/** A process that can be told from a later one with the same number. */
export interface RunningProcess {
  pid: number;
  /** when it started, in the words of the operating system; "" where this can not be read */
  startedAt: string;
}

/** The process that runs this code. */
export function thisProcess(): RunningProcess {
  return { pid: process.pid, startedAt: startOf(process.pid) };
}

/** Whether that very process still runs on this computer; a later process with its number does not count. */
export function isRunning({ pid, startedAt }: RunningProcess): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EPERM") return false;
  }
  const nowStartedAt = startOf(pid);
  return startedAt === "" || nowStartedAt === "" || startedAt === nowStartedAt;
}

function startOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // the name in brackets may hold blanks; state is the first field after it, the start time the twentieth
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    return fields[0] === "Z" ? "gone" : (fields[19] ?? "");
  } catch {
    return "";
  }
}
