import type { TripContent } from "../../../content/areaContent.ts";
import type { PackSite } from "../../../content/schema/packSchema.ts";
import type { AreaPack } from "../sheetParts.ts";

/** Name of a hunter of a trip; an id that is nobody's stays as it is. */
export function hunterName(trip: TripContent, id: string): string {
  return trip.facts.hunters.find((hunter) => hunter.id === id)?.name ?? id;
}

/** Names of hunters, "Ann, Bo"; "all" when they are everybody of a trip of more than one. */
export function hunterNames(trip: TripContent, ids: readonly string[]): string {
  const { hunters } = trip.facts;
  if (hunters.length > 1 && hunters.every(({ id }) => ids.includes(id))) return "all";
  return ids.length === 0 ? "home" : ids.map((id) => hunterName(trip, id)).join(", ");
}

/** The site of pack.json, undefined where the edition has none of that id. */
export function packSite(area: AreaPack, id: string): PackSite | undefined {
  return area.pack.sites?.find((site) => site.id === id);
}

/** "7 Landing East"; an id without a site stays as it is. */
export function siteName(area: AreaPack, id: string): string {
  const site = packSite(area, id);
  return site === undefined ? id : `${site.number} ${site.name}`;
}

/** The number of a site for tight places. */
export function siteNumber(area: AreaPack, id: string): string {
  return String(packSite(area, id)?.number ?? id);
}

/** What a place of a schedule is called: a site by its number and name, a camp or parking by its name. */
export function placeName(area: AreaPack, where: string | null): string {
  if (where === null) return "not said";
  if (packSite(area, where) !== undefined) return siteName(area, where);
  const { camps, parkings } = area.content.facts;
  return [...camps, ...parkings].find((place) => place.id === where)?.name ?? where;
}

/** Name of a walk-in of a site; null where none was chosen. */
export function walkInName(area: AreaPack, site: string, walkIn: string | null): string | null {
  if (walkIn === null) return null;
  const written = area.content.sites.find((entry) => entry.id === site)?.facts.walkIns;
  return written?.find((entry) => entry.id === walkIn)?.name ?? walkIn;
}
