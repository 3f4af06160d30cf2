import type { AreaContent } from "../content/areaContent.ts";
import type { DetailsFile } from "../content/schema/detailsSchema.ts";
import type { PackFile } from "../content/schema/packSchema.ts";
import type { AreaText } from "./areaText.ts";

/** One area, computed: what its owner wrote, and every number of its pages. */
export interface AreaPack {
  content: AreaContent;
  pack: PackFile;
  details: DetailsFile;
  /** the texts of both files, where they are known already */
  text?: AreaText;
}
