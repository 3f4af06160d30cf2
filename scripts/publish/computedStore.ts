import { createHash } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { AreaContent } from "../content/areaContent.ts";
import type { AreaText } from "./areaText.ts";

/**
 * Keeps the files that were computed of an area, so that an unchanged area costs no second computation. An entry is named by all
 * that it depends on and starts with the hash of its own text: one that is broken, half-written or of other inputs is never
 * used, and removing the folder changes nothing but time.
 */
export interface ComputedStore {
  find(area: StoredArea): Promise<AreaText | null>;
  keep(area: StoredArea, text: AreaText): Promise<void>;
}

/** Every file in the area's folder counts. */
export type StoredArea = Pick<AreaContent, "id" | "folder" | "facts">;

/** Entries of one area that are kept: those of the last few states of its files. */
const KEPT = 4;

/**
 * @param folder    where the entries stand
 * @param dataDir   the shared data; every file in it counts
 * @param decides   what else decides the text of an area: the program itself, the options, the versions beneath it
 */
export function computedStore(
  folder: string,
  dataDir: string,
  decides: (area: StoredArea) => readonly string[],
): ComputedStore {
  const names = new Map<string, Promise<string>>();
  const nameOf = (area: StoredArea): Promise<string> => {
    const known = names.get(area.folder) ?? entryName(area, dataDir, decides(area));
    names.set(area.folder, known);
    return known;
  };
  return {
    async find(area) {
      const entry = await readFile(join(folder, await nameOf(area)), "utf8").catch(() => null);
      return entry === null ? null : wholeEntry(entry);
    },
    async keep(area, text) {
      // an entry that can not be kept costs time and nothing else
      await kept(folder, await nameOf(area), area.id, text).catch(() => undefined);
    },
  };
}

async function entryName(area: StoredArea, dataDir: string, decides: readonly string[]): Promise<string> {
  const hash = createHash("sha256").update(JSON.stringify([area.id, ...decides]));
  for (const folder of [area.folder, dataDir]) {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true });
    const files = entries
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));
    for (const file of files.sort()) {
      const bytes = await readFile(file);
      hash.update(`\0${file.slice(folder.length)}\0${bytes.length}\0`).update(bytes);
    }
  }
  return `${area.id}-${hash.digest("hex").slice(0, 40)}.txt`;
}

function wholeEntry(entry: string): AreaText | null {
  const end = entry.indexOf("\n");
  const body = entry.slice(end + 1);
  const between = body.indexOf("\0");
  if (between < 0 || entry.slice(0, end) !== hashOf(body)) return null;
  return { pack: body.slice(0, between), details: body.slice(between + 1) };
}

async function kept(
  folder: string,
  name: string,
  areaId: string,
  { pack, details }: AreaText,
): Promise<void> {
  await mkdir(folder, { recursive: true });
  const body = `${pack}\0${details}`;
  const half = join(folder, `.${name}.${process.pid}`);
  await writeFile(half, `${hashOf(body)}\n${body}`);
  await rename(half, join(folder, name));
  const own = (await readdir(folder)).filter((other) => other.replace(/-[0-9a-f]{40}\.txt$/, "") === areaId);
  const surplus = own.filter((other) => other !== name).slice(0, Math.max(0, own.length - KEPT));
  await Promise.all(surplus.map((other) => rm(join(folder, other), { force: true })));
}

function hashOf(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}
