import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { AreaPack } from "./areaPack.ts";
import { areaText } from "./areaText.ts";

/**
 * Writes pack.json and details.json of one area beside its index page.
 *
 * @throws {Error} a value that the schema of the file refuses: a fault of this program, never of the owner's files
 */
export async function writeAreaFiles(outDir: string, area: AreaPack): Promise<void> {
  const folder = join(outDir, "areas", area.content.id);
  const text = area.text ?? areaText(area);
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, "pack.json"), text.pack);
  await writeFile(join(folder, "details.json"), text.details);
}
