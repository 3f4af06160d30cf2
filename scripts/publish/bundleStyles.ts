import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";

const FIRST = ["tokens.css", "base.css", "page.css"];

/**
 * One style sheet for the whole pack: tokens, base and page in this order, then the sheet of every component in the order
 * of its path, so that the same sources always give the same bytes.
 *
 * @param layoutsFolder holds styles/ and components/<name>/<name>.css; a sheet that is missing from styles/ is an error
 */
export async function bundleStyles(layoutsFolder: string): Promise<string> {
  const styles = FIRST.map((name) => join(layoutsFolder, "styles", name));
  const components = await componentSheets(join(layoutsFolder, "components"));
  const sheets = await Promise.all([...styles, ...components].map((file) => readFile(file, "utf8")));
  return `${sheets.map((sheet) => sheet.replaceAll("\r\n", "\n").trim()).join("\n\n")}\n`;
}

async function componentSheets(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true }).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return [];
    throw error;
  });
  return entries
    .filter((name) => name.endsWith(".css"))
    .sort()
    .map((name) => join(folder, name));
}
