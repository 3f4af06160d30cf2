import { copyFile, mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { AreaPack } from "./areaPack.ts";
import { bundleStyles } from "./bundleStyles.ts";
import { copyFonts } from "./copyFonts.ts";
import type { Pages } from "./pages.ts";
import { renderWithEleventy } from "./runEleventy.ts";
import { writeAreaFiles } from "./writeAreaFiles.ts";

/** Writes a whole pack into an empty folder: pages, assets, and the numbers of each area as JSON. */
export async function renderPack(
  folder: string,
  layoutsFolder: string,
  packs: readonly AreaPack[],
  pages: Pages,
): Promise<void> {
  await renderWithEleventy(pages, layoutsFolder, folder);
  await writeBesidePages(folder, layoutsFolder, packs);
}

/** What stands beside the pages: assets, pack.json and details.json of each area. */
export async function writeBesidePages(
  folder: string,
  layoutsFolder: string,
  packs: readonly AreaPack[],
): Promise<void> {
  await mkdir(join(folder, "assets"), { recursive: true });
  await writeFile(join(folder, "assets", "leelight.css"), await bundleStyles(layoutsFolder));
  await copyFile(join(layoutsFolder, "browser", "leelight.js"), join(folder, "assets", "leelight.js"));
  await copyFonts(join(folder, "assets"));
  for (const pack of packs) await writeAreaFiles(folder, pack);
}
