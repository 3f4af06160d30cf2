import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { detailsFile } from "../content/schema/detailsSchema.ts";
import { packFile } from "../content/schema/packSchema.ts";
import type { AreaPack } from "./areaPack.ts";
import { jsonText } from "./jsonText.ts";

/**
 * Writes pack.json and details.json of one area beside its index page. Both are held against their schema first, which
 * also puts the keys into the order of the schema.
 *
 * @throws {Error} a value that the schema refuses: a fault of this program, never of the owner's files
 */
export async function writeAreaFiles(outDir: string, { content, pack, details }: AreaPack): Promise<void> {
  const folder = join(outDir, "areas", content.id);
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, "pack.json"), jsonText(accepted("pack.json", packFile.safeParse(pack))));
  await writeFile(
    join(folder, "details.json"),
    jsonText(accepted("details.json", detailsFile.safeParse(details))),
  );
}

type Judged<T> =
  | { success: true; data: T }
  | { success: false; error: { issues: { path: PropertyKey[]; message: string }[] } };

function accepted<T>(file: string, judged: Judged<T>): T {
  if (judged.success) return judged.data;
  const rows = judged.error.issues.slice(0, 10).map(({ path, message }) => `${path.join(".")}: ${message}`);
  throw new Error(
    `${file} does not fit its schema (${judged.error.issues.length} places)\n${rows.join("\n")}`,
  );
}
