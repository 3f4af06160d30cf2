import type { ANCHORS } from "../content/schema/primitives.ts";
import type { Position } from "../geo/position.ts";
import { solarDay } from "./solarDay.ts";
import { CIVIL_SUN_DEG } from "./sunEvents.ts";

export type SunAnchor = (typeof ANCHORS)[number];

/**
 * The sun's events that rules and sessions count from, for one day at one place: the last dawn and rise before and the
 * first set and dusk after the day's solar noon, even past midnight. null = does not happen, `why` then says so; `about`
 * names events whose sun turns back close to their angle.
 */
export type SunAnchors = Record<SunAnchor, Date | null> & { about: SunAnchor[]; why: Record<string, string> };

/** Looks up the sun's events of a civil day at a place, flat horizon, height 0. */
export type SunAnchorsOf = (localDate: string, position: Position) => SunAnchors;

/** The events in words, for notes and reasons. */
export const ANCHOR_WORDS: Readonly<Record<SunAnchor, string>> = {
  sunrise: "sunrise",
  sunset: "sunset",
  civilDawn: "civil dawn",
  civilDusk: "civil dusk",
  nauticalDawn: "nautical dawn",
  nauticalDusk: "nautical dusk",
  solarNoon: "solar noon",
};

/**
 * The anchors of a civil day under the names that rules use; civil twilight is 6 degrees whatever the area calls first
 * light.
 *
 * @throws {RangeError} when date, position or zone is none
 */
export function sunAnchors(localDate: string, position: Position, timezone: string): SunAnchors {
  const { firstLight, lastLight, about, why, ...day } = solarDay(
    localDate,
    position,
    timezone,
    CIVIL_SUN_DEG,
  );
  const reasons = Object.entries(why).map(([name, reason]) => [anchorOf(name), reason]);
  return {
    sunrise: day.sunrise,
    sunset: day.sunset,
    civilDawn: firstLight,
    civilDusk: lastLight,
    nauticalDawn: day.nauticalDawn,
    nauticalDusk: day.nauticalDusk,
    solarNoon: day.solarNoon,
    about: about.map(anchorOf),
    why: Object.fromEntries(reasons),
  };
}

function anchorOf(eventName: string): SunAnchor {
  if (eventName === "firstLight") return "civilDawn";
  if (eventName === "lastLight") return "civilDusk";
  return eventName as SunAnchor;
}
