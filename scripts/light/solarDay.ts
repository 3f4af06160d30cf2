import type { Position } from "../geo/position.ts";
import { noonOf } from "../time/civilTime.ts";
import { solarNoonNear } from "./sunAndMoon.ts";
import { isGrazing, isNearMiss, isSunAbove, type SunCurve, sunCurve, sunPassages } from "./sunCurve.ts";
import { CIVIL_SUN_DEG, type SunEventName, type SunMark, staysSentence, sunEvents } from "./sunEvents.ts";

/**
 * The sun's events on either side of one solar noon, for sessions and legal hours: the evening ones may fall after the
 * civil midnight, the morning ones before it. `why` says in a sentence why each null is one.
 */
export interface SolarDay {
  localDate: string;
  nauticalDawn: Date | null;
  firstLight: Date | null;
  sunrise: Date | null;
  solarNoon: Date;
  sunset: Date | null;
  lastLight: Date | null;
  nauticalDusk: Date | null;
  /** Events, happening or not, whose sun turns back within 0.5 degrees of their angle: print them with "about". */
  about: SunEventName[];
  why: Record<string, string>;
}

/** The two instants of a solar day at which the sun stands at an angle, each null when it does not come there. */
export interface SunAngleTimes {
  climbsAt: Date | null;
  sinksAt: Date | null;
  isClimbAbout: boolean;
  isSinkAbout: boolean;
  why: Record<string, string>;
}

const HALF_DAY_MS = 12 * 3_600_000;
const BEYOND_MS = 3 * 3_600_000; // past midnight, so that the turns there are seen

/**
 * The last dawn, first light and sunrise before the day's solar noon and the first sunset, last light and dusk after
 * it, no more than 12 hours away. Same horizon and angles as `daylight`, and the same instants on most days.
 *
 * @throws {RangeError} when date, position, zone or angle is none
 */
export function solarDay(
  localDate: string,
  position: Position,
  timezone: string,
  firstLightSunDeg: number = CIVIL_SUN_DEG,
): SolarDay {
  const noon = solarNoonNear(noonOf(localDate, timezone), position);
  const curve = curveAround(noon, position);
  const result: SolarDay = {
    localDate,
    nauticalDawn: null,
    firstLight: null,
    sunrise: null,
    solarNoon: noon,
    sunset: null,
    lastLight: null,
    nauticalDusk: null,
    about: [],
    why: {},
  };
  for (const { name, mark, climbs } of sunEvents(firstLightSunDeg)) {
    const passage = passageAround(noon, curve, mark, climbs);
    result[name] = passage.at;
    if (passage.at === null) result.why[name] = passage.why;
    if (passage.isAbout) result.about.push(name);
  }
  return result;
}

/**
 * When the sun climbs through an angle before the day's solar noon and sinks through it after, no more than 12 hours
 * away: the anchor of usable light and of any rule written as a sun angle.
 *
 * @param sunDeg   airless altitude of the centre of the sun, -90 to 90; sunrise and sunset are in `solarDay`
 * @throws {RangeError} when date, position, zone or angle is none
 */
export function sunAngleTimes(
  localDate: string,
  position: Position,
  timezone: string,
  sunDeg: number,
): SunAngleTimes {
  if (!(sunDeg >= -90 && sunDeg <= 90)) throw new RangeError(`sunDeg must be -90 to 90, found ${sunDeg}`);
  const noon = solarNoonNear(noonOf(localDate, timezone), position);
  const curve = curveAround(noon, position);
  const climb = passageAround(noon, curve, { of: "centre", sunDeg }, true);
  const sink = passageAround(noon, curve, { of: "centre", sunDeg }, false);
  const why: Record<string, string> = {};
  if (climb.at === null) why.climbsAt = climb.why;
  if (sink.at === null) why.sinksAt = sink.why;
  return {
    climbsAt: climb.at,
    sinksAt: sink.at,
    isClimbAbout: climb.isAbout,
    isSinkAbout: sink.isAbout,
    why,
  };
}

function curveAround(noon: Date, position: Position): SunCurve {
  const reachMs = HALF_DAY_MS + BEYOND_MS;
  return sunCurve(position, noon.getTime() - reachMs, noon.getTime() + reachMs);
}

function passageAround(noon: Date, curve: SunCurve, mark: SunMark, climbs: boolean) {
  const fromMs = noon.getTime() - (climbs ? HALF_DAY_MS : 0);
  const toMs = noon.getTime() + (climbs ? 0 : HALF_DAY_MS);
  const found = sunPassages(curve, mark, climbs, { fromMs, toMs });
  const at = (climbs ? found.at(-1) : found[0])?.at ?? null;
  const isAbout =
    at === null ? isNearMiss(curve, mark, fromMs - BEYOND_MS, toMs + BEYOND_MS) : isGrazing(curve, mark, at);
  const isAbove = isSunAbove(curve, mark, noon.getTime());
  const night = climbs ? "in the night before" : "in the night after";
  return { at, isAbout, why: staysSentence(mark, isAbove, isAbove ? night : "on this day") };
}
