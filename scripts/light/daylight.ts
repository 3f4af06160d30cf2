import type { Position } from "../geo/position.ts";
import { civilAt, clockChangeAt, endOfDay, noonOf, startOfDay } from "../time/civilTime.ts";
import { type Crossing, nearestCrossing } from "./heightCurve.ts";
import { solarNoonNear } from "./sunAndMoon.ts";
import { isGrazing, isNearMiss, isSunAbove, type SunCurve, sunCurve, sunPassages } from "./sunCurve.ts";
import {
  CIVIL_SUN_DEG,
  type SunEvent,
  type SunEventName,
  type SunMark,
  staysSentence,
  sunEvents,
} from "./sunEvents.ts";

/** The sun's events inside one civil day; `why` says in a sentence why each null is one. */
export interface Daylight {
  localDate: string;
  /** Offset at 12:00 local, such as "+13:00". */
  utcOffset: string;
  clockChangeAt: Date | null;
  nauticalDawn: Date | null;
  firstLight: Date | null;
  sunrise: Date | null;
  solarNoon: Date | null;
  sunset: Date | null;
  lastLight: Date | null;
  nauticalDusk: Date | null;
  /** Sunset minus sunrise in minutes, 1 decimal. */
  dayLengthMin: number | null;
  /** Events, happening or not, whose sun turns back within 0.5 degrees of their angle: print them with "about". */
  about: SunEventName[];
  why: Record<string, string>;
}

const DAY_MS = 24 * 3_600_000;
const TURN_REACH_MS = 14 * 3_600_000; // far enough past midnight to see the turns on either side of every event

interface CivilDay {
  position: Position;
  timezone: string;
  startMs: number;
  endMs: number;
  /** The sun's noon nearest to 12:00 local; inside the day unless the zone can not be the place's own. */
  noonMs: number;
  curve: SunCurve;
}

/**
 * Dawn, light, rise, noon and set that fall inside a civil day, at any latitude; of two of one kind the one nearer the
 * day's solar noon. Level horizon, observer at height 0, average air. Does not cover hills, trees or weather.
 *
 * @param timezone            the area's IANA zone
 * @param firstLightSunDeg    angle of the sun at first and last light, -18 to 6; the ends of civil twilight by default
 * @returns                   instants to the millisecond: within 10 s of an almanac below latitude 60, 20 s at 60 to 65
 * @throws {RangeError} when date, position, zone or angle is none
 * @source US Naval Observatory, Rise, Set, and Twilight Definitions; Meeus, Astronomical Algorithms (1998), chapters 15, 25
 */
export function daylight(
  localDate: string,
  position: Position,
  timezone: string,
  firstLightSunDeg: number = CIVIL_SUN_DEG,
): Daylight {
  const events = sunEvents(firstLightSunDeg);
  const day = civilDay(localDate, position, timezone);
  const result: Daylight = {
    localDate,
    utcOffset: civilAt(noonOf(localDate, timezone), timezone).utcOffset,
    clockChangeAt: clockChangeAt(localDate, timezone),
    nauticalDawn: null,
    firstLight: null,
    sunrise: null,
    solarNoon: isInside(day, day.noonMs) ? new Date(day.noonMs) : null,
    sunset: null,
    lastLight: null,
    nauticalDusk: null,
    dayLengthMin: null,
    about: [],
    why: {},
  };
  if (result.clockChangeAt === null) result.why.clockChangeAt = "the clock does not change on this date";
  if (result.solarNoon === null) result.why.solarNoon = "the sun's noon does not fall inside this date";
  for (const event of events) addEvent(result, day, event);
  addDayLength(result);
  return result;
}

function civilDay(localDate: string, position: Position, timezone: string): CivilDay {
  const startMs = startOfDay(localDate, timezone).getTime();
  const endMs = endOfDay(localDate, timezone).getTime();
  const noonMs = solarNoonNear(noonOf(localDate, timezone), position).getTime();
  const curve = sunCurve(position, startMs - TURN_REACH_MS, endMs + TURN_REACH_MS);
  return { position, timezone, startMs, endMs, noonMs, curve };
}

function addEvent(result: Daylight, day: CivilDay, { name, mark, climbs, label }: SunEvent): void {
  const at = nearestCrossing(passagesInside(day, mark, climbs), day.noonMs);
  result[name] = at;
  if (at === null) result.why[name] = whyNot(day, mark, climbs, label);
  const isAbout =
    at === null
      ? isNearMiss(day.curve, mark, day.noonMs - TURN_REACH_MS, day.noonMs + TURN_REACH_MS)
      : isGrazing(day.curve, mark, at);
  if (isAbout) result.about.push(name);
}

function passagesInside(day: CivilDay, mark: SunMark, climbs: boolean): Crossing[] {
  const span = { fromMs: day.startMs, toMs: day.endMs };
  return sunPassages(day.curve, mark, climbs, span).filter(({ at }) => isInside(day, at.getTime()));
}

function whyNot(day: CivilDay, mark: SunMark, climbs: boolean, label: string): string {
  if (day.startMs === day.endMs) return "the clock skipped this date";
  if (passagesInside(day, mark, !climbs).length === 0) {
    return staysSentence(mark, isSunAbove(day.curve, mark, day.startMs), "on this date");
  }
  const threeDays = sunCurve(day.position, day.startMs - DAY_MS, day.endMs + DAY_MS);
  const nearest = nearestCrossing(sunPassages(threeDays, mark, climbs), (day.startMs + day.endMs) / 2);
  if (nearest === null) return `no ${label} on this date, the day before or the day after`;
  const { localDate, clock } = civilAt(nearest, day.timezone);
  return `no ${label} falls on this date: the nearest is at ${clock} on ${localDate}`;
}

function addDayLength(result: Daylight): void {
  const { sunrise, sunset, why } = result;
  if (sunrise === null || sunset === null) {
    why.dayLengthMin = why.sunrise ?? why.sunset ?? "no sunrise or no sunset on this date";
  } else if (sunset <= sunrise) {
    why.dayLengthMin = "the sunset of this date comes before its sunrise";
  } else {
    result.dayLengthMin = Math.round((sunset.getTime() - sunrise.getTime()) / 6000) / 10;
  }
}

function isInside(day: CivilDay, ms: number): boolean {
  return ms >= day.startMs && ms < day.endMs;
}
