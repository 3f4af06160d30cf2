import { mkdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { AreaFiles } from "./areaFiles.ts";

/** Writes the files of an area into its folder. Files already there that the area does not have are left alone. */
export async function writeAreaFolder(folder: string, { files }: AreaFiles): Promise<void> {
  for (const [path, content] of files) {
    const target = join(folder, path);
    await mkdir(dirname(target), { recursive: true });
    await writeFile(target, content);
  }
}
