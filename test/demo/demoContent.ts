import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Folder of a committed demonstration area. */
export function areaFolder(id: string): string {
  return fileURLToPath(new URL(`../../content/areas/${id}`, import.meta.url));
}

/** Paths of all files below a folder, from that folder, sorted. */
export function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();
}

export function readJson(...path: string[]): unknown {
  return JSON.parse(readFileSync(join(...path), "utf8"));
}
