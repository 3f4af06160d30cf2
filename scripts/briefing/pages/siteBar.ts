import type { PackSite } from "../../content/schema/packSchema.ts";
import { siteStop } from "../../safety/siteChecks.ts";
import { lapsedFor } from "./permissionRows.ts";
import type { AreaPack } from "./sheetParts.ts";

/** Why nobody may sit at a site, in a sentence. */
export interface SiteBar {
  heading: "STOP" | "No permission";
  reason: string;
}

/**
 * The bar on a site: a STOP of the site itself or of every stand that could be used there, or no permission that holds. A stand
 * that does not fit bars that stand alone. Null when the site may be considered.
 */
export function siteBar(area: AreaPack, site: PackSite): SiteBar | null {
  const stop = siteStop(site.checks, site.id);
  if (stop !== null) return { heading: "STOP", reason: stop.text };
  const lapsed = lapsedFor(area, site.block);
  return lapsed === null ? null : { heading: "No permission", reason: lapsed };
}
