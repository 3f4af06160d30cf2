import type { PackSite } from "../../content/schema/packSchema.ts";
import { worstFirst } from "./checkCatalogue.ts";
import { lapsedFor } from "./permissionRows.ts";
import type { AreaPack } from "./sheetParts.ts";

/** Why nobody may sit at a site, in a sentence. */
export interface SiteBar {
  heading: "STOP" | "No permission";
  reason: string;
}

/** The bar on a site: its worst STOP, or no permission that holds. Null when the site may be considered. */
export function siteBar(area: AreaPack, site: PackSite): SiteBar | null {
  const stop = worstFirst(site.checks).find((check) => check.result === "STOP");
  if (stop !== undefined) return { heading: "STOP", reason: stop.text };
  const lapsed = lapsedFor(area, site.block);
  return lapsed === null ? null : { heading: "No permission", reason: lapsed };
}
