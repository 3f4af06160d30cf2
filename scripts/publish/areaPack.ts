import type { AreaContent } from "../content/areaContent.ts";
import type { DetailsFile } from "../content/schema/detailsSchema.ts";
import type { PackFile } from "../content/schema/packSchema.ts";

/** One area, computed: what its owner wrote, and every number of its pages. */
export interface AreaPack {
  content: AreaContent;
  pack: PackFile;
  details: DetailsFile;
}
