import type { DetailsFile } from "../../content/schema/detailsSchema.ts";
import type { PackTrip } from "../../content/schema/packSchema.ts";
import { eachDay } from "../../time/civilTime.ts";
import type { ComposedSite } from "../composeSite.ts";
import type { PackContext } from "../packContext.ts";
import { composeTripDay } from "./composeTripDay.ts";
import type { HunterBefore } from "./hunterSits.ts";
import { tripFrame } from "./tripFrame.ts";

export interface ComposedTrips {
  trips: PackTrip[];
  /** Null without a trip. */
  details: DetailsFile["trips"];
}

/** Every day of every trip that is packed, and what its pages show beyond pack.json. Trips stand as the area has them. */
export function composeTrips(context: PackContext, sites: readonly ComposedSite[]): ComposedTrips {
  const composed = new Map(sites.map((entry) => [entry.site.id, entry]));
  const trips = context.trips.map((trip) => {
    const { from, to } = trip.facts;
    const frame = tripFrame(context, trip, composed);
    const before = new Map<string, HunterBefore>();
    const days = eachDay(from, to).map((localDate) => composeTripDay(localDate, before, frame));
    return {
      pack: { id: trip.id, from, to, days: days.map(({ day }) => day) },
      details: { id: trip.id, days: days.map(({ details }) => details) },
    };
  });
  return {
    trips: trips.map(({ pack }) => pack),
    details: trips.length === 0 ? null : trips.map(({ details }) => details),
  };
}
