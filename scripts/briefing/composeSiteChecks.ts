import type { SiteContent } from "../content/areaContent.ts";
import type { PackCheck } from "../content/schema/packSchema.ts";
import { safetyLimits } from "../safety/safetyLimits.ts";
import { siteChecks } from "../safety/siteChecks.ts";
import { packCheck } from "./packCheck.ts";
import type { PackContext } from "./packContext.ts";

/** The checks of a site card on the table date, in the order of a page. */
export function composeSiteChecks(site: SiteContent, context: PackContext): PackCheck[] {
  return siteChecks(
    {
      siteId: site.id,
      site: site.facts,
      stands: context.shared.stands,
      area: context.area.content.facts,
      haulLineM: null,
      onDate: context.tableDate,
    },
    safetyLimits(context.shared.model),
  ).map(packCheck);
}
