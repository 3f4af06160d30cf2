import type { AreaContent, TripContent } from "../content/areaContent.ts";
import { addDays, daysBetween, eachDay } from "../time/civilTime.ts";

/**
 * Year of the almanac: the one asked for, else that of the earliest trip packed, else of the first season entry, else of
 * the as-of date.
 */
export function packYear(
  area: AreaContent,
  trips: readonly TripContent[],
  asked: number | null,
  asOfDate: string,
): number {
  if (asked !== null) return asked;
  const day = earliestTripDay(trips) ?? area.facts.season[0]?.from ?? asOfDate;
  return Number(day.slice(0, 4));
}

/**
 * The day for which date-free tables are computed, always printed with them: first day of the earliest trip packed, else
 * the middle day of the first season entry, else 15 October north and 15 April south of the equator of the pack's year.
 */
export function tableDate(area: AreaContent, trips: readonly TripContent[], year: number): string {
  const tripDay = earliestTripDay(trips);
  if (tripDay !== null) return tripDay;
  const season = area.facts.season[0];
  if (season !== undefined) return addDays(season.from, Math.floor(daysBetween(season.from, season.to) / 2));
  return area.facts.centre.lat >= 0 ? `${year}-10-15` : `${year}-04-15`;
}

/**
 * Last day a pack may be relied on: the owner's own date, else the last trip day, else the last season day, else a year
 * after the as-of date.
 */
export function notValidAfter(area: AreaContent, trips: readonly TripContent[], asOfDate: string): string {
  if (area.facts.notValidAfter !== undefined) return area.facts.notValidAfter;
  const ends =
    trips.length > 0 ? trips.map((trip) => trip.facts.to) : area.facts.season.map((entry) => entry.to);
  return ends.length > 0 ? ends.toSorted().at(-1)! : addDays(asOfDate, 365);
}

/** Every day of the year, then any trip day outside it; in date order. */
export function almanacDates(trips: readonly TripContent[], year: number): string[] {
  return sortedDates([...eachDay(`${year}-01-01`, `${year}-12-31`), ...tripDates(trips)]);
}

/** The days whose slope air is shown: the 1st and 16th of each month, the table date and every trip day; in date order. */
export function phaseDates(trips: readonly TripContent[], year: number, table: string): string[] {
  const halfMonths = Array.from({ length: 12 }, (_, month) => {
    const text = `${year}-${String(month + 1).padStart(2, "0")}`;
    return [`${text}-01`, `${text}-16`];
  }).flat();
  return sortedDates([...halfMonths, table, ...tripDates(trips)]);
}

/** Every day of every trip, in date order, each once. */
export function tripDates(trips: readonly TripContent[]): string[] {
  return sortedDates(trips.flatMap((trip) => eachDay(trip.facts.from, trip.facts.to)));
}

function earliestTripDay(trips: readonly TripContent[]): string | null {
  return sortedDates(trips.map((trip) => trip.facts.from))[0] ?? null;
}

function sortedDates(dates: readonly string[]): string[] {
  return [...new Set(dates)].sort();
}
