import type { PackDay } from "../../content/schema/packSchema.ts";
import { clockText, instantOf, roundedInstant } from "../words/clockText.ts";
import type { LightEvents } from "./charts.ts";
import type { AreaPack } from "./sheetParts.ts";

export type DayEvent =
  | "nauticalDawn"
  | "firstLight"
  | "sunrise"
  | "solarNoon"
  | "sunset"
  | "lastLight"
  | "nauticalDusk";

/** The day of pack.json, or undefined when it holds none of that date. */
export function packDay(area: AreaPack, localDate: string): PackDay | undefined {
  return area.pack.days.find((day) => day.localDate === localDate);
}

/**
 * Clock of an event to the nearest minute, with "about" when the sun only grazes its angle; "none" when it does not
 * happen that day.
 */
export function eventCell(area: AreaPack, day: PackDay, event: DayEvent): string {
  const text = day[event];
  if (text === null) return "none";
  const grazes = area.details.aboutEvents.some(
    (row) => row.localDate === day.localDate && row.events.includes(event),
  );
  return `${grazes ? "about " : ""}${clockText(instantOf(text), area.pack.area.timezone)}`;
}

/** Why events of a day do not happen, each sentence once. */
export function missingEventReasons(day: PackDay): string[] {
  const events: DayEvent[] = ["firstLight", "sunrise", "sunset", "lastLight"];
  return [
    ...new Set(events.flatMap((event) => (day[event] === null ? [day.why[event] ?? "does not happen"] : []))),
  ];
}

/** The four light events as instants. */
export function lightEvents(day: PackDay): LightEvents {
  const at = (text: string | null): Date | null => (text === null ? null : instantOf(text));
  return {
    firstLight: at(day.firstLight),
    sunrise: at(day.sunrise),
    sunset: at(day.sunset),
    lastLight: at(day.lastLight),
  };
}

/** Usable light under the cover of a site: inward to 5 min, "about" at both ends. */
export function usableText(from: string | null, until: string | null, timezone: string): string | null {
  const range = usableRange(from, until, timezone);
  return range === null
    ? null
    : `about ${clockText(range.from, timezone)} to about ${clockText(range.to, timezone)}`;
}

/** Usable light rounded inward to 5 min; null when an end is not known or nothing is left. */
export function usableRange(
  from: string | null,
  until: string | null,
  timezone: string,
): { from: Date; to: Date } | null {
  if (from === null || until === null) return null;
  const first = roundedInstant(instantOf(from), 5, "up", timezone);
  const last = roundedInstant(instantOf(until), 5, "down", timezone);
  return first < last ? { from: first, to: last } : null;
}
