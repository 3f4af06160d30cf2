import type { SlopeAirDay } from "../../air/slopeAirDay.ts";
import type { SlopeSite, WeatherRow } from "../../air/slopeSite.ts";
import type { SiteContent, TripContent } from "../../content/areaContent.ts";
import type { SessionWindow } from "../../light/sessionWindows.ts";
import type { ShootingLight } from "../../light/shootingLight.ts";
import { type SolarDay, solarDay } from "../../light/solarDay.ts";
import type { Check } from "../../safety/check.ts";
import { type SafetyLimits, safetyLimits } from "../../safety/safetyLimits.ts";
import { seatPlane } from "../../shooting/seatPlane.ts";
import type { ComposedSite } from "../composeSite.ts";
import { daySessions } from "../daySessions.ts";
import { type ForecastHour, forecastHours } from "../forecastSeries.ts";
import { type Hunt, tripHunt } from "../hunt.ts";
import { legalLight } from "../legalLight.ts";
import type { PackContext } from "../packContext.ts";
import { airOfDay } from "../siteAir.ts";
import { siteSetbacks } from "../siteMapChecks.ts";
import { tripWeapon } from "../siteWeapon.ts";
import { type WalkTimes, walkTimes } from "./walkTimes.ts";

export type Hunter = TripContent["facts"]["hunters"][number];

/** A site that a trip may sit at, with what its days are judged by. */
export interface TripSite {
  content: SiteContent;
  /** Named by the trip for choosing from; else only because a sit names it. */
  isAllowed: boolean;
  slope: SlopeSite;
  /** The slope air of a day under a weather, each computed once; null when the slope is not known. */
  airOn: (localDate: string, weather: readonly WeatherRow[]) => SlopeAirDay | null;
  /** Why the slope is not known; null when it is. */
  airWhy: string | null;
  walks: WalkTimes[];
  /** The checks against map and boundary that may bar it for the weapons of the trip: C2 and C30. */
  mapChecks: Check[];
}

/** One civil day of a trip: legal light of its hunt, sun and sessions at the centre of the area. */
export interface TripDayLight {
  localDate: string;
  shooting: ShootingLight;
  sun: SolarDay;
  sessions: SessionWindow[];
}

/** One trip with all that its days are composed from. */
export interface TripFrame {
  context: PackContext;
  trip: TripContent;
  hunt: Hunt;
  limits: SafetyLimits;
  /** By number. */
  sites: TripSite[];
  /** The trip's own forecast, in order of time. */
  hours: ForecastHour[];
  dayLight: (localDate: string) => TripDayLight;
}

/** The frame of one trip; other trips on the same days have no say in it. */
export function tripFrame(
  context: PackContext,
  trip: TripContent,
  composed: ReadonlyMap<string, ComposedSite>,
): TripFrame {
  const { area, shared, timezone } = context;
  const hunt = tripHunt(area.content, trip);
  const dayLight = dayLightOf(context, hunt);
  const { allowedSites, sits } = trip.facts;
  const weapon = tripWeapon(trip, hunt, shared.firearms);
  const limits = safetyLimits(shared.model);
  const named = new Set(sits.map((sit) => sit.site));
  const sites = area.content.sites.flatMap((content): TripSite[] => {
    const isAllowed = allowedSites === undefined || allowedSites.includes(content.id);
    const found = composed.get(content.id);
    if (found === undefined || !(isAllowed || named.has(content.id))) return [];
    const { slope, slopeWhy: airWhy } = found;
    const airOn = airWhy === null ? airOnDays(slope, context) : () => null;
    const walks = walkTimes(content, found.site, context);
    const mapChecks = [
      siteSetbacks(content, seatPlane(content.facts.position), weapon, context, limits),
      ...found.site.checks.filter(({ id, subject }) => id === "C30" && subject === content.id),
    ];
    return [{ content, isAllowed, slope, airOn, airWhy, walks, mapChecks }];
  });
  return {
    context,
    trip,
    hunt,
    limits,
    sites,
    hours: forecastHours(trip, timezone, (localDate, session) => {
      const window = dayLight(localDate).sessions.find(({ id }) => id === session);
      return window?.from ?? null;
    }),
    dayLight,
  };
}

function airOnDays(slope: SlopeSite, context: PackContext): TripSite["airOn"] {
  const { timezone, sunTableOf, constants } = context;
  const known = new Map<string, SlopeAirDay>();
  return (localDate, weather) => {
    const key = JSON.stringify([localDate, weather]);
    let air = known.get(key);
    if (air === undefined) {
      air = airOfDay(slope, localDate, timezone, weather, sunTableOf, constants);
      known.set(key, air);
    }
    return air;
  };
}

function dayLightOf(context: PackContext, hunt: Hunt): (localDate: string) => TripDayLight {
  const { area, timezone, sunOf } = context;
  const { centre, firstLightSunDeg } = area.content.facts;
  const known = new Map<string, TripDayLight>();
  return (localDate) => {
    let day = known.get(localDate);
    if (day === undefined) {
      const shooting = legalLight(area.content, hunt, localDate, centre, sunOf);
      const sun = solarDay(localDate, centre, timezone, firstLightSunDeg);
      const sessions = daySessions(area.content, localDate, shooting, sunOf);
      day = { localDate, shooting, sun, sessions };
      known.set(localDate, day);
    }
    return day;
  };
}
