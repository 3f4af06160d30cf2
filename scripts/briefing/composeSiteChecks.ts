import type { SiteContent } from "../content/areaContent.ts";
import type { PackCheck } from "../content/schema/packSchema.ts";
import { orderChecks } from "../safety/orderChecks.ts";
import { safetyLimits } from "../safety/safetyLimits.ts";
import { siteChecks } from "../safety/siteChecks.ts";
import type { SiteShooting } from "./composeShooting.ts";
import { packCheck } from "./packCheck.ts";
import type { PackContext } from "./packContext.ts";
import { siteMapChecks } from "./siteMapChecks.ts";

/** The checks of a site card on the table date, in the order of a page. */
export function composeSiteChecks(
  site: SiteContent,
  shooting: SiteShooting,
  context: PackContext,
): PackCheck[] {
  const ofSite = siteChecks(
    {
      siteId: site.id,
      site: site.facts,
      stands: context.shared.stands,
      area: context.area.content.facts,
      haulLineM: null,
      onDate: context.tableDate,
    },
    safetyLimits(context.shared.model),
  );
  return orderChecks([...ofSite, ...siteMapChecks(site, shooting, context)]).map(packCheck);
}
