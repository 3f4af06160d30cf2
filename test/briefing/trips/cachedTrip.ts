import { packContext } from "../../../scripts/briefing/composePack.ts";
import { type ComposedSite, composeSite } from "../../../scripts/briefing/composeSite.ts";
import type { PackContext } from "../../../scripts/briefing/packContext.ts";
import { composeTrips } from "../../../scripts/briefing/trips/composeTrips.ts";
import type { AreaContent } from "../../../scripts/content/areaContent.ts";
import type { PackTrip } from "../../../scripts/content/schema/packSchema.ts";
import { loadDemo, OPTIONS } from "../composedAreas.ts";

/** A demonstration area whose ground and sites are composed once, and whose trips can be composed over and over. */
export interface CachedArea {
  context: PackContext;
  sites: ComposedSite[];
}

export async function cachedArea(area: string): Promise<CachedArea> {
  const { areas, shared } = await loadDemo(area);
  const context = { ...packContext(areas[0]!, shared, OPTIONS), phaseDates: [] };
  return { context, sites: areas[0]!.content.sites.map((site) => composeSite(site, context)) };
}

/** The trips of the area as its content stands. */
export function tripsOf({ context, sites }: CachedArea): PackTrip[] {
  return composeTrips(context, sites).trips;
}

/** A copy of the content of an area cut to one day of one trip and the sites named, free to be changed. */
export function oneDayOf(
  cached: CachedArea,
  tripId: string,
  localDate: string,
  sites: string[],
): AreaContent {
  const { content } = cached.context.area;
  const trip = content.trips.find(({ id }) => id === tripId)!;
  return structuredClone({
    ...content,
    sites: content.sites.filter(({ id }) => sites.includes(id)),
    trips: [
      {
        ...trip,
        facts: {
          ...trip.facts,
          from: localDate,
          to: localDate,
          allowedSites: sites,
          sits: trip.facts.sits.filter((sit) => sit.localDate === localDate && sites.includes(sit.site)),
        },
      },
    ],
  });
}

/** The one day of changed content, on the ground that was composed once. */
export function dayOf(cached: CachedArea, content: AreaContent): PackTrip["days"][number] {
  const context = { ...cached.context, area: { ...cached.context.area, content }, trips: content.trips };
  return composeTrips(context, cached.sites).trips[0]!.days[0]!;
}
