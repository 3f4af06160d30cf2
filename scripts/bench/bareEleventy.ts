import { mkdir, readdir, readFile, symlink, writeFile } from "node:fs/promises";
import { join, relative } from "node:path";

/** A finished page: its path below the output folder and its text. */
export interface BuiltPage {
  path: string;
  html: string;
}

const CONFIG = `export default function (eleventyConfig) {
  return { dir: { input: "pages", output: "out" } };
}
`;
const TEMPLATE = `---
pagination: { data: built, size: 1, alias: sheet }
permalink: "{{ sheet.path }}"
---
{{ sheet.html | safe }}`;

/** Every .html file of a folder and the folders in it, in order of their paths. */
export async function readPages(folder: string): Promise<BuiltPage[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile() && entry.name.endsWith(".html"))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  return Promise.all(
    files.map(async (file) => ({ path: relative(folder, file), html: await readFile(file, "utf8") })),
  );
}

/** Writes a project in which Eleventy alone, with one template and no program, writes these pages to its folder `out`. */
export async function writeBareEleventy(
  folder: string,
  pages: readonly BuiltPage[],
  modulesFolder: string,
): Promise<void> {
  await mkdir(join(folder, "pages", "_data"), { recursive: true });
  const manifest = { private: true, type: "module", scripts: { build: "eleventy --quiet" } };
  await writeFile(join(folder, "package.json"), JSON.stringify(manifest));
  await writeFile(join(folder, "eleventy.config.js"), CONFIG);
  await writeFile(join(folder, "pages", "sheet.njk"), TEMPLATE);
  await writeFile(join(folder, "pages", "_data", "built.json"), JSON.stringify(pages));
  await symlink(modulesFolder, join(folder, "node_modules"), "dir");
}
