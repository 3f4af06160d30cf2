import { copyFile, mkdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";

const FAMILY = "@fontsource/source-sans-3";
const FILES = [
  ["files/source-sans-3-latin-400-normal.woff2", "source-sans-3-400.woff2"],
  ["files/source-sans-3-latin-700-normal.woff2", "source-sans-3-700.woff2"],
  ["LICENSE", "source-sans-3-licence.txt"],
] as const;

/**
 * Puts the typeface of the pages, regular and bold, into assets/fonts with its licence. It has the letters of western
 * Europe; a letter that it lacks is shown in the face of the system.
 *
 * @param assetsFolder holds the style sheet, which asks for fonts/<file>
 */
export async function copyFonts(assetsFolder: string): Promise<void> {
  const { resolve } = createRequire(import.meta.url);
  const folder = join(assetsFolder, "fonts");
  await mkdir(folder, { recursive: true });
  await Promise.all(FILES.map(([from, to]) => copyFile(resolve(`${FAMILY}/${from}`), join(folder, to))));
}
