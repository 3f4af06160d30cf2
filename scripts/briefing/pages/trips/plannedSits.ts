import { decimalDegreesText } from "../../../geo/coordinateText.ts";
import { dayMonthText, weekdayName } from "../../words/dateText.ts";
import { sentenceStart } from "../../words/listWords.ts";
import { platformText } from "../../words/measureText.ts";
import type { AreaPack } from "../sheetParts.ts";
import { sessionSits } from "./daySits.ts";
import type { PackedTrip } from "./packedTrips.ts";
import { walkInOf } from "./scheduleRows.ts";
import { tripSessionDetails } from "./tripDetails.ts";
import { packSite } from "./tripNames.ts";

/** Who is where in one session, as a search team needs it. */
export interface PlannedSit {
  when: string;
  hunter: string;
  site: string;
  position: string;
  grid: string;
  /** the way in, and how high the seat is */
  way: string;
}

/** Every sit of a trip that may be taken, in order of time. */
export function plannedSits(area: AreaPack, packed: PackedTrip): PlannedSit[] {
  return packed.trip.days.flatMap((day) =>
    day.sessions.flatMap((session) => {
      const details = tripSessionDetails(area, packed.trip.id, day.localDate, session.session);
      return sessionSits(area, packed, day, session).flatMap((sit): PlannedSit[] => {
        const site = packSite(area, sit.siteId);
        if (sit.stop !== null || site === undefined) return [];
        const height = area.content.sites.find((entry) => entry.id === site.id)?.facts.platformHeightM;
        const way = walkInOf(area, details, sit);
        return [
          {
            when: `${weekdayName(day.localDate).slice(0, 3)} ${dayMonthText(day.localDate, area.pack.area.locale)}, ${sentenceStart(session.session).toLowerCase()}`,
            hunter: sit.hunter,
            site: sit.site,
            position: decimalDegreesText(site.position),
            grid: site.grid,
            way: [
              way === null ? "way in not said" : `by ${way}`,
              height === undefined
                ? []
                : height === 0
                  ? "on the ground"
                  : `seat ${platformText(height, area.pack.area.units)} up`,
            ]
              .flat()
              .join(", "),
          },
        ];
      });
    }),
  );
}
