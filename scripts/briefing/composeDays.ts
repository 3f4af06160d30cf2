import type { AreaContent, TripContent } from "../content/areaContent.ts";
import type { DetailsFile } from "../content/schema/detailsSchema.ts";
import type { PackDay } from "../content/schema/packSchema.ts";
import { daylight } from "../light/daylight.ts";
import { moonDay } from "../light/moonDay.ts";
import type { SunAnchorsOf } from "../light/sunAnchors.ts";
import { areaHunt } from "./hunt.ts";
import { legalLight, packShootingLight } from "./legalLight.ts";
import { almanacDates } from "./packDates.ts";
import { packInstant } from "./packInstant.ts";
import { packShare } from "./packNumbers.ts";

export interface ComposedDays {
  days: PackDay[];
  aboutEvents: DetailsFile["aboutEvents"];
  shootingNotes: DetailsFile["shootingNotes"];
}

/** The almanac: light, legal hours and moon of every day of the year and every trip day, at the area's centre. */
export function composeDays(
  area: AreaContent,
  trips: readonly TripContent[],
  year: number,
  sunOf: SunAnchorsOf,
): ComposedDays {
  const { centre, timezone, firstLightSunDeg } = area.facts;
  const hunt = areaHunt(area);
  const result: ComposedDays = { days: [], aboutEvents: [], shootingNotes: [] };
  for (const localDate of almanacDates(trips, year)) {
    const light = daylight(localDate, centre, timezone, firstLightSunDeg);
    const legal = legalLight(area, hunt, localDate, centre, sunOf);
    const moon = moonDay(localDate, centre, timezone);
    result.days.push({
      localDate,
      utcOffset: light.utcOffset,
      clockChangeAt: packInstant(light.clockChangeAt, timezone),
      nauticalDawn: packInstant(light.nauticalDawn, timezone),
      firstLight: packInstant(light.firstLight, timezone),
      sunrise: packInstant(light.sunrise, timezone),
      solarNoon: packInstant(light.solarNoon, timezone),
      sunset: packInstant(light.sunset, timezone),
      lastLight: packInstant(light.lastLight, timezone),
      nauticalDusk: packInstant(light.nauticalDusk, timezone),
      dayLengthMin: light.dayLengthMin,
      shootingLight: packShootingLight(legal, timezone),
      moon: {
        illuminated: packShare(moon.illuminated),
        phaseName: moon.phaseName,
        rise: packInstant(moon.rise, timezone),
        set: packInstant(moon.set, timezone),
        why: moon.why,
      },
      why: light.why,
    });
    if (light.about.length > 0) result.aboutEvents.push({ localDate, events: light.about });
    if (legal.notes.length > 0) result.shootingNotes.push({ localDate, notes: legal.notes });
  }
  return result;
}
