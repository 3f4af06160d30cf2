import { dateSpanText, dayMonthText, weekdayName } from "../../words/dateText.ts";
import { listWords } from "../../words/listWords.ts";
import type { AreaPack, PageLink } from "../sheetParts.ts";
import { packedTrips, tripPermalinks } from "./packedTrips.ts";

/** A trip with the way to its pages; a trip that is not packed has none. */
export interface TripLinks {
  name: string;
  dates: string;
  hunters: string;
  links: PageLink[];
}

/** Every trip that was written, with links from the folder of the area: a day sheet a day, then the trip intentions. */
export function tripLinks(area: AreaPack): TripLinks[] {
  const { locale } = area.pack.area;
  const packed = packedTrips(area);
  return area.content.trips.map(({ id, facts }) => {
    const trip = packed.find((entry) => entry.trip.id === id)?.trip;
    const pages = trip === undefined ? null : tripPermalinks("", trip);
    return {
      name: facts.name,
      dates: dateSpanText(facts.from, facts.to, locale),
      hunters: listWords(facts.hunters.map((hunter) => hunter.name)),
      links:
        pages === null || trip === undefined
          ? []
          : [
              ...trip.days.map((day, i) => ({
                href: pages.days[i]!,
                text: `${weekdayName(day.localDate).slice(0, 3)} ${dayMonthText(day.localDate, locale)}`,
              })),
              { href: pages.intentions, text: "Trip intentions" },
            ],
    };
  });
}
