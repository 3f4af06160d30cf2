import { spawn } from "node:child_process";
import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";

export interface ProcessRun {
  /** From start to end, on the clock. */
  timeS: number;
  /** Processor time, user and system, of all Node processes among it and those it started. */
  processorS: number;
  /** Largest resident memory of any one Node process among it and those it started, megabytes of 1e6 bytes. */
  peakMb: number;
}

/**
 * Runs a program to its end and measures it from outside; what it prints is kept back.
 *
 * @throws {Error} when it can not be started or ends with another status than 0, with what it printed
 */
export async function timedProcess(
  command: string,
  args: readonly string[],
  workFolder: string,
): Promise<ProcessRun> {
  const usesFolder = await mkdtemp(join(tmpdir(), "uses-"));
  try {
    const timeS = await timeOf(command, args, workFolder, usesFolder);
    const files = await readdir(usesFolder);
    const texts = await Promise.all(files.map((file) => readFile(join(usesFolder, file), "utf8")));
    if (texts.length === 0) throw new Error(`${command} started no Node process to measure`);
    const uses = texts.map((text) => JSON.parse(text) as NodeJS.ResourceUsage);
    return {
      timeS,
      processorS: uses.reduce((sum, use) => sum + use.userCPUTime + use.systemCPUTime, 0) / 1e6,
      peakMb: Math.max(...uses.map(({ maxRSS }) => maxRSS)) * (1024 / 1e6),
    };
  } finally {
    await rm(usesFolder, { recursive: true, force: true });
  }
}

function timeOf(
  command: string,
  args: readonly string[],
  workFolder: string,
  usesFolder: string,
): Promise<number> {
  const nodeOptions = `${process.env.NODE_OPTIONS ?? ""} --import=${useReport(usesFolder)}`;
  const env = { ...process.env, NODE_OPTIONS: nodeOptions };
  return new Promise((resolve, reject) => {
    const startedMs = performance.now();
    const child = spawn(command, args, { cwd: workFolder, env, stdio: ["ignore", "pipe", "pipe"] });
    let printed = "";
    child.stdout.on("data", (text) => {
      printed += text;
    });
    child.stderr.on("data", (text) => {
      printed += text;
    });
    child.on("error", reject);
    child.on("close", (status) => {
      if (status === 0) resolve((performance.now() - startedMs) / 1000);
      else reject(new Error(`${command} ${args.join(" ")} ended with status ${status}:\n${printed}`));
    });
  });
}

/** A module that makes a Node process leave what it used when it ends. */
function useReport(folder: string): string {
  const code = `import { writeFileSync } from "node:fs";
    process.on("exit", () => {
      const file = ${JSON.stringify(folder)} + "/" + process.pid;
      writeFileSync(file, JSON.stringify(process.resourceUsage()));
    });`;
  return `data:text/javascript,${encodeURIComponent(code)}`;
}
