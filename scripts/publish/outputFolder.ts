import { lstat, readdir, realpath, writeFile } from "node:fs/promises";
import { dirname, join, relative, resolve } from "node:path";

/** The file that says a folder was written by this program, and may be replaced or removed by it. */
export const MARKER = ".leelight";

const MARKER_TEXT =
  "This folder is written by leelight. Each pack replaces it as a whole: keep nothing of your own in it.\n";

/** An output folder that must not be replaced; the message says why in words for the person at the terminal. */
export class OutputFolderError extends Error {
  override name = "OutputFolderError";
}

/**
 * The absolute path of the folder to write, links followed, so that what is replaced is the folder and not the link.
 *
 * @param keepClear folders that a pack must never be written into, nor replace, such as the content folder
 * @throws {OutputFolderError} the folder is a file, holds files that are not ours, or touches a folder to keep clear
 */
export async function ownOutputFolder(outDir: string, keepClear: readonly string[]): Promise<string> {
  const folder = await followed(resolve(outDir));
  for (const kept of keepClear) {
    const keptFolder = await followed(resolve(kept));
    if (contains(keptFolder, folder) || contains(folder, keptFolder)) {
      throw new OutputFolderError(
        `${outDir} can not be the output folder: it would replace or lie in ${kept}. Choose another with --out.`,
      );
    }
  }
  const found = await lstat(folder).catch(absent);
  if (found === null) return folder;
  if (!found.isDirectory()) {
    throw new OutputFolderError(`${outDir} is a file, not a folder. Choose another with --out.`);
  }
  const names = await readdir(folder);
  if (names.length > 0 && !names.includes(MARKER)) {
    throw new OutputFolderError(
      `${outDir} holds files that were not written by leelight (such as ${names.sort()[0]}), and a pack replaces its ` +
        "folder as a whole. Nothing was changed. Choose an empty or new folder with --out.",
    );
  }
  return folder;
}

/** Whether the folder carries our marker; false when it does not exist. */
export async function isOurs(folder: string): Promise<boolean> {
  const found = await lstat(join(folder, MARKER)).catch(absent);
  return found?.isFile() ?? false;
}

/** Puts our marker into a folder. */
export async function markAsOurs(folder: string): Promise<void> {
  await writeFile(join(folder, MARKER), MARKER_TEXT);
}

/** Null for a path that does not exist; any other error goes on. */
export function absent(error: NodeJS.ErrnoException): null {
  if (error.code === "ENOENT" || error.code === "ENOTDIR") return null;
  throw error;
}

/** The path with every link on it followed, as far as it exists. */
async function followed(path: string): Promise<string> {
  const real = await realpath(path).catch(absent);
  if (real !== null) return real;
  const parent = dirname(path);
  return parent === path ? path : join(await followed(parent), relative(parent, path));
}

function contains(outer: string, inner: string): boolean {
  const way = relative(outer, inner);
  return (
    way === "" || !(way === ".." || way.startsWith("../") || way.startsWith("..\\") || resolve(way) === way)
  );
}
