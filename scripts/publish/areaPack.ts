import type { ComposedPack } from "../briefing/composePack.ts";
import type { AreaText } from "./areaText.ts";

/** One area, computed: what its owner wrote, and every number of its pages. */
export interface AreaPack extends ComposedPack {
  /** the texts of both files, where they are known already */
  text?: AreaText;
}
