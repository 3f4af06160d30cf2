import type { TripContent } from "../../../content/areaContent.ts";
import type { PackTrip } from "../../../content/schema/packSchema.ts";
import type { AreaPack } from "../sheetParts.ts";

/** A trip of the pack with what its owner wrote. */
export interface PackedTrip {
  trip: PackTrip;
  written: TripContent;
}

/**
 * Trips of this edition in the order of pack.json; none where the edition has none.
 *
 * @throws {RangeError} when pack.json has a trip that was not written
 */
export function packedTrips(area: AreaPack): PackedTrip[] {
  return (area.pack.trips ?? []).map((trip) => {
    const written = area.content.trips.find((content) => content.id === trip.id);
    if (written === undefined) throw new RangeError(`pack.json has a trip that was not written: ${trip.id}`);
    return { trip, written };
  });
}

/** Files of a trip in the output tree, in reading order: a sheet a day, then the trip intentions. */
export function tripPermalinks(folder: string, trip: PackTrip): { days: string[]; intentions: string } {
  const base = `${folder}trips/${trip.id}/`;
  return {
    days: trip.days.map((day) => `${base}day-${day.localDate}.html`),
    intentions: `${base}intentions.html`,
  };
}
