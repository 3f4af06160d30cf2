import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { fileURLToPath } from "node:url";

const project = fileURLToPath(new URL("../..", import.meta.url));

/** Starts a TypeScript file of this folder as a process of its own. */
export function tsProcess(
  file: string,
  args: string[],
  env: Record<string, string> = {},
  cwd: string = project,
): ChildProcess {
  return spawn(
    process.execPath,
    ["--import", import.meta.resolve("tsx"), fileURLToPath(new URL(file, import.meta.url)), ...args],
    {
      env: { ...process.env, ...env },
      cwd,
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
}

/** Resolves when the process has written the text. */
export async function said(child: ChildProcess, text: string): Promise<void> {
  let all = "";
  for await (const chunk of child.stdout!) {
    all += String(chunk);
    if (all.includes(text)) return;
  }
  throw new Error(`the process ended without saying ${text}; it said ${all}`);
}

/** Exit status and everything the process said, once it ended by itself. */
export async function ended(
  child: ChildProcess,
): Promise<{ status: number | null; out: string; err: string }> {
  let out = "";
  let err = "";
  child.stdout!.on("data", (chunk) => (out += String(chunk)));
  child.stderr!.on("data", (chunk) => (err += String(chunk)));
  const [status] = (await once(child, "close")) as [number | null];
  return { status, out, err };
}
