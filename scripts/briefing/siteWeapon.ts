import type { AreaContent, SharedData, TripContent } from "../content/areaContent.ts";
import type { Hunt } from "./hunt.ts";

export type Firearm = SharedData["firearms"][number];

/**
 * The weapon that site cards are made for: of those that the hunters of the packed trips carry the one that reaches farthest. Where one
 * is not written, those that the seasons of the area and the trips allow count too: one card serves all, so the most dangerous counts.
 *
 * @returns null when no weapon is written, or one of them is not known: a guess could be too short
 */
export function cardWeapon(
  area: AreaContent,
  trips: readonly TripContent[],
  firearms: readonly Firearm[],
): Firearm | null {
  const ofTrips = trips.flatMap(({ facts }) => facts.method ?? []);
  return mostDangerous(trips, [...area.facts.season.map(({ method }) => method), ...ofTrips], firearms);
}

/** The weapon of one trip by the same rule: of its own hunters, else of its own method. */
export function tripWeapon(trip: TripContent, hunt: Hunt, firearms: readonly Firearm[]): Firearm | null {
  return mostDangerous([trip], hunt.method === null ? [] : [hunt.method], firearms);
}

function mostDangerous(
  trips: readonly TripContent[],
  methods: readonly string[],
  firearms: readonly Firearm[],
): Firearm | null {
  const carried = trips.flatMap(({ facts }) => facts.hunters.map(({ firearmId }) => firearmId));
  const known = carried.flatMap((id) => firearms.find((firearm) => firearm.id === id) ?? []);
  if (known.length > 0 && known.length === carried.length) return farthest(known);
  const ofMethods = [...new Set(methods)].map((method) =>
    firearms.filter(({ weaponClass }) => weaponClass === method),
  );
  if (ofMethods.some((found) => found.length === 0)) return null;
  return ofMethods.length === 0 ? null : farthest([...known, ...ofMethods.flat()]);
}

function farthest(firearms: readonly Firearm[]): Firearm | null {
  const [first, ...rest] = firearms;
  if (first === undefined) return null;
  return rest.reduce((most, other) => (other.dangerM > most.dangerM ? other : most), first);
}
