import type { AreaContent } from "./areaContent.ts";
import type { AreaFile } from "./schema/areaSchema.ts";
import type { SiteFile } from "./schema/siteSchema.ts";
import type { TripFile } from "./schema/tripSchema.ts";

/** What an owner would write into a new file: fields with defaults may be left out. */
type Written<T> = { $schema: string } & Partial<T>;

/**
 * Facts of a new area: an invented place at 0, 0 that `check` warns of until it is replaced. No rule, season, permission
 * or number is made up, so pages print NOT CONFIRMED and blanks.
 */
export function newArea(name: string): Written<AreaFile> {
  return {
    $schema: "../../../data/schema/area.schema.json",
    name,
    summary: "Not described yet.",
    centre: { lat: 0, lon: 0 },
    timezone: "UTC",
    elevationM: 0,
  };
}

/**
 * Facts of a new site at the centre of its area, which `check` warns of until it is replaced: a ground seat without
 * tree, stand, approach, lane or way in, so that pages print NOT CHECKED and not assessed.
 *
 * @returns null when all numbers up to 99 are in use
 */
export function newSite(name: string, area: AreaContent): Written<SiteFile> | null {
  const number = nextNumber(area.sites.map((site) => site.facts.number));
  if (number === null) return null;
  return {
    $schema: "../../../../data/schema/site.schema.json",
    number,
    name,
    overlooks: "other",
    position: area.facts.centre,
    platformHeightM: 0,
    facingDeg: null,
    cover: "timber",
  };
}

/** Facts of a new trip on one day with one hunter, of whom nothing is known yet. */
export function newTrip(name: string, localDate: string): Written<TripFile> {
  return {
    $schema: "../../../../data/schema/trip.schema.json",
    name,
    from: localDate,
    to: localDate,
    hunters: [
      {
        id: "hunter-1",
        name: "Hunter 1",
        standId: null,
        firearmId: null,
        loadKg: { body: null, clothing: null, harness: null, pack: null, weapon: null, water: null },
        handed: null,
        newcomer: false,
        harness: { madeOn: null, replaceBy: null, fallen: null },
      },
    ],
  };
}

/** One more than the highest number in use; a gap below 99 when 99 is in use; null when none is left. */
export function nextNumber(used: readonly number[]): number | null {
  const highest = Math.max(0, ...used);
  if (highest < 99) return highest + 1;
  return Array.from({ length: 99 }, (_, i) => i + 1).find((n) => !used.includes(n)) ?? null;
}
