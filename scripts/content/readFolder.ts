import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import type { Problem } from "./problem.ts";
import { type FilePlace, linkProblem } from "./readTextFile.ts";

export interface FolderEntry extends FilePlace {
  name: string;
  isFolder: boolean;
}

export interface Folder {
  /** By name in code point order; hidden files and files an operating system leaves behind are passed over. */
  entries: FolderEntry[];
  problems: Problem[];
}

const LEFT_BY_SYSTEMS: ReadonlySet<string> = new Set(["Thumbs.db", "desktop.ini"]);

/** Entries of a folder, or null when there is none. Links that lead out of the root are a problem each and left out. */
export async function readFolder(place: FilePlace, root: string): Promise<Folder | null> {
  const folder: Folder = { entries: [], problems: [] };
  const names = await namesIn(place.path);
  if (names === null) return null;
  for (const name of names.sort()) {
    if (name.startsWith(".") || LEFT_BY_SYSTEMS.has(name)) continue;
    const entry = { path: join(place.path, name), shown: `${place.shown}/${name}` };
    const problem = await linkProblem(entry, root);
    if (problem) folder.problems.push(problem);
    else folder.entries.push({ ...entry, name, isFolder: (await stat(entry.path)).isDirectory() });
  }
  return folder;
}

async function namesIn(path: string): Promise<string[] | null> {
  try {
    return await readdir(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "ENOTDIR") return null;
    throw error;
  }
}
