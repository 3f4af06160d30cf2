import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { afterAll, onTestFinished } from "vitest";

/** A new empty folder that is removed when the test ends. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "leelight-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes files by their path below the folder. */
export function writeFiles(folder: string, files: Record<string, string>): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

/** Paths of all files below a folder, with "/", sorted. */
export function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll("\\", "/"))
    .sort();
}

/** One digest over all names and bytes below a folder. */
export function digestOf(folder: string): string {
  const hash = createHash("sha256");
  for (const path of filesBelow(folder)) hash.update(`${path}\n`).update(readFileSync(join(folder, path)));
  return hash.digest("hex");
}

/** A new empty folder for all tests of a file, removed when they have ended. */
export function sharedScratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "leelight-test-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
