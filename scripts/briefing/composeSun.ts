import type { SlopePhases } from "../air/slopeAirDay.ts";
import { COVERS } from "../air/slopeSite.ts";
import type { SiteContent } from "../content/areaContent.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import { usableLight } from "../light/usableLight.ts";
import type { PackContext } from "./packContext.ts";
import { packInstant } from "./packInstant.ts";

/**
 * For each day whose slope air is shown: when the sun first and last shines on the ground of the slope, over its skyline, and
 * when there is about light enough to see by under its cover (clear sky).
 */
export function composeSun(
  site: SiteContent,
  air: ReadonlyMap<string, SlopePhases> | null,
  airWhy: string | null,
  context: PackContext,
): SiteDetails["sun"] {
  const { timezone, constants, phaseDates } = context;
  const lightConstants = {
    usableLightSunDeg: COVERS.map((cover) => constants.usableLightSunDeg[cover]),
    usableLightCloudDeg: constants.usableLightCloudDeg,
    usableLightCloudShare: constants.usableLightCloudShare,
  };
  return phaseDates.map((localDate) => {
    const { position, cover } = site.facts;
    const usable = usableLight({ localDate, timezone, position, cover, cloudShare: null }, lightConstants);
    const day = air?.get(localDate) ?? null;
    const why: Record<string, string> = {};
    if (day === null) {
      why.reachesAt = airWhy ?? "the slope is not known";
      why.leavesAt = why.reachesAt;
    } else if (day.sunOn === null) {
      why.reachesAt = day.why.sunOn ?? "no sun reaches the slope this day";
      why.leavesAt = why.reachesAt;
    }
    if (usable.why.from !== undefined) why.usableFrom = usable.why.from;
    if (usable.why.until !== undefined) why.usableUntil = usable.why.until;
    return {
      localDate,
      reachesAt: packInstant(day?.sunOn ?? null, timezone),
      leavesAt: packInstant(day?.sunLeaves ?? null, timezone),
      usableFrom: packInstant(usable.from, timezone),
      usableUntil: packInstant(usable.until, timezone),
      why,
    };
  });
}
