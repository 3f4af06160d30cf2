import type { AreaContent } from "../content/areaContent.ts";
import type { AreaGround } from "./siteGround.ts";

/** One area, read and judged, with its ground; null without a terrain file. */
export interface LoadedArea {
  content: AreaContent;
  ground: AreaGround | null;
}
