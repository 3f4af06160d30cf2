import { daylight } from "../../scripts/light/daylight.ts";
import { moonDay } from "../../scripts/light/moonDay.ts";
import { solarNoonNear } from "../../scripts/light/sunAndMoon.ts";
import { civilAt, endOfDay, noonOf, startOfDay } from "../../scripts/time/civilTime.ts";
import { almanacMoon, almanacNoons, almanacRises, almanacSunPassages } from "./almanac.ts";
import { type PlaceDay, seededPlaceDays } from "./seededPlaces.ts";

/** One event of one place and day, ours beside the almanac's; the error is null when one side or both have none. */
export interface ComparedEvent extends PlaceDay {
  field: string;
  ours: Date | null;
  theirs: Date | null;
  errorS: number | null;
  isAbout: boolean;
  /** Whether our event, if any, falls on the civil date it is printed under. */
  isOnItsDate: boolean;
}

const SUN_FIELDS = [
  { field: "nauticalDawn", sunDeg: -12, climbs: true },
  { field: "firstLight", sunDeg: -6, climbs: true },
  { field: "sunrise", sunDeg: null, climbs: true },
  { field: "solarNoon", sunDeg: null, climbs: null },
  { field: "sunset", sunDeg: null, climbs: false },
  { field: "lastLight", sunDeg: -6, climbs: false },
  { field: "nauticalDusk", sunDeg: -12, climbs: false },
] as const;

/** The seven sun events of every seeded place and day: 3500 rows. */
export function compareSun(places: PlaceDay[] = seededPlaceDays()): ComparedEvent[] {
  return places.flatMap((row) => {
    const { position, localDate, timezone } = row;
    const ours = daylight(localDate, position, timezone);
    const start = startOfDay(localDate, timezone);
    const end = endOfDay(localDate, timezone);
    const noon = solarNoonNear(noonOf(localDate, timezone), position);
    return SUN_FIELDS.map(({ field, sunDeg, climbs }) => {
      const candidates =
        climbs === null
          ? almanacNoons(position, start, end)
          : sunDeg === null
            ? almanacRises("sun", position, climbs, start, end)
            : almanacSunPassages(position, sunDeg, climbs, start, end);
      const isAbout = field !== "solarNoon" && ours.about.includes(field);
      return compared(row, field, ours[field], nearest(candidates, noon), isAbout);
    });
  });
}

/** Moonrise and moonset of every seeded place and day: 1000 rows. */
export function compareMoon(places: PlaceDay[] = seededPlaceDays()): ComparedEvent[] {
  return places.flatMap((row) => {
    const { position, localDate, timezone } = row;
    const ours = moonDay(localDate, position, timezone);
    const start = startOfDay(localDate, timezone);
    const end = endOfDay(localDate, timezone);
    const noon = solarNoonNear(noonOf(localDate, timezone), position);
    return (["rise", "set"] as const).map((field) => {
      const theirs = nearest(almanacRises("moon", position, field === "rise", start, end), noon);
      return compared(row, `moon${field}`, ours[field], theirs, false);
    });
  });
}

/** Our lit share of the moon minus the almanac's, at 12:00 of every seeded day. */
export function compareMoonLight(places: PlaceDay[] = seededPlaceDays()): { row: PlaceDay; error: number }[] {
  return places.map((row) => {
    const { position, localDate, timezone } = row;
    const theirs = almanacMoon(noonOf(localDate, timezone)).illuminated;
    return { row, error: moonDay(localDate, position, timezone).illuminated - theirs };
  });
}

function compared(
  row: PlaceDay,
  field: string,
  ours: Date | null,
  theirs: Date | null,
  isAbout: boolean,
): ComparedEvent {
  const errorS = ours && theirs ? (ours.getTime() - theirs.getTime()) / 1000 : null;
  const isOnItsDate = ours === null || civilAt(ours, row.timezone).localDate === row.localDate;
  return { ...row, field, ours, theirs, errorS, isAbout, isOnItsDate };
}

function nearest(candidates: Date[], noon: Date): Date | null {
  const distance = (at: Date): number => Math.abs(at.getTime() - noon.getTime());
  return candidates.toSorted((a, b) => distance(a) - distance(b))[0] ?? null;
}
