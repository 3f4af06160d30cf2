import type { AreaContent, TripContent } from "../content/areaContent.ts";

/** What is hunted, how and on whose land: decides which rules and seasons apply. Null is not known. */
export interface Hunt {
  species: string | null;
  method: string | null;
  land: "public" | "private" | null;
}

/** The area's default: its first season entry. */
export function areaHunt(area: AreaContent): Hunt {
  const first = area.facts.season[0];
  return { species: first?.species ?? null, method: first?.method ?? null, land: first?.land ?? null };
}

/** A trip's own words, else the area's default. */
export function tripHunt(area: AreaContent, trip: TripContent): Hunt {
  const usual = areaHunt(area);
  return {
    species: trip.facts.species ?? usual.species,
    method: trip.facts.method ?? usual.method,
    land: trip.facts.land ?? usual.land,
  };
}

/** Whether a season of the area covers the hunt on that day. */
export function isInSeason(area: AreaContent, hunt: Hunt, localDate: string): boolean {
  return area.facts.season.some(
    (season) =>
      season.species === hunt.species &&
      season.method === hunt.method &&
      season.land === hunt.land &&
      season.from <= localDate &&
      localDate <= season.to,
  );
}
