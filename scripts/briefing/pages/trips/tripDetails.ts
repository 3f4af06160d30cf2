import type { DetailsFile } from "../../../content/schema/detailsSchema.ts";
import type { AreaPack } from "../sheetParts.ts";

export type TripDayDetails = NonNullable<DetailsFile["trips"]>[number]["days"][number];
export type TripSessionDetails = TripDayDetails["sessions"][number];

/** What details.json holds of a trip day; undefined where it holds nothing. */
export function tripDayDetails(area: AreaPack, trip: string, localDate: string): TripDayDetails | undefined {
  const days = area.details.trips?.find((entry) => entry.id === trip)?.days;
  return days?.find((day) => day.localDate === localDate);
}

/** What details.json holds of a session of a trip day. */
export function tripSessionDetails(
  area: AreaPack,
  trip: string,
  localDate: string,
  session: string,
): TripSessionDetails | undefined {
  return tripDayDetails(area, trip, localDate)?.sessions.find((entry) => entry.session === session);
}
