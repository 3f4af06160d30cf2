import { detailsFile } from "../content/schema/detailsSchema.ts";
import { packFile } from "../content/schema/packSchema.ts";
import type { AreaPack } from "./areaPack.ts";
import { jsonText } from "./jsonText.ts";

/** The texts of pack.json and details.json of one area. */
export interface AreaText {
  pack: string;
  details: string;
}

/**
 * The texts of an area's files. Both are held against their schema first, which also puts the keys into the order of the schema.
 *
 * @throws {Error} a value that the schema refuses: a fault of this program, never of the owner's files
 */
export function areaText({ pack, details }: Pick<AreaPack, "pack" | "details">): AreaText {
  return {
    pack: jsonText(accepted("pack.json", packFile.safeParse(pack))),
    details: jsonText(accepted("details.json", detailsFile.safeParse(details))),
  };
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
