import type { ModelConstants } from "../air/modelConstants.ts";
import type { SiteContent } from "../content/areaContent.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import { trunkDiameters } from "../safety/trunkFit.ts";
import { packMetres } from "./packNumbers.ts";

/** Diameters of the trunk where it was measured and at the platform, millimetres; null without a measured tree. */
export function composeTree(site: SiteContent, constants: ModelConstants): SiteDetails["tree"] {
  const { tree, platformHeightM } = site.facts;
  const found = tree === undefined ? null : trunkDiameters(tree, platformHeightM, constants);
  if (found === null) return null;
  const [thinMm, thickMm] = found.diameterAtPlatformMm;
  return {
    diameterAtMeasureMm: packMetres(found.diameterAtMeasureMm),
    diameterAtPlatformMm: [packMetres(thinMm), packMetres(thickMm)],
    taperMmPerM: found.taperMmPerM,
  };
}
