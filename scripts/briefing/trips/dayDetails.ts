import { COVERS } from "../../air/slopeSite.ts";
import type { DetailsFile } from "../../content/schema/detailsSchema.ts";
import { usableLight } from "../../light/usableLight.ts";
import { packRange } from "../composePhases.ts";
import type { ForecastHour } from "../forecastSeries.ts";
import { weatherOfDay } from "../forecastSeries.ts";
import { toModelStep } from "../modelTime.ts";
import { packInstant } from "../packInstant.ts";
import { packBearing, packShare, packSpeed, rounded } from "../packNumbers.ts";
import type { SiteInSession } from "./judgedSession.ts";
import { lookUpRows } from "./lookUpRows.ts";
import { rankedSites } from "./rankedSites.ts";
import type { PlannedSession, SitePlans } from "./sitePlans.ts";
import type { TripDayLight, TripFrame, TripSite } from "./tripFrame.ts";
import type { WalkPlan } from "./walkPlan.ts";

type DayDetails = NonNullable<DetailsFile["trips"]>[number]["days"][number];
type SessionDetails = DayDetails["sessions"][number];
type SiteDetails = SessionDetails["sites"][number];

/** What the pages of a trip day show beyond pack.json. */
export function dayDetails(
  sessions: readonly PlannedSession[],
  day: TripDayLight,
  frame: TripFrame,
): DayDetails {
  const { timezone } = frame.context;
  const open = frame.sites.filter((site) =>
    sessions.some(({ judged }) => judged.sites.some((entry) => entry.site === site && entry.bar === null)),
  );
  return {
    localDate: day.localDate,
    notes: day.shooting.notes,
    hours: frame.hours
      .filter((hour) => hour.localDate === day.localDate)
      .map((hour) => packHour(hour, timezone)),
    sites: open.map((site) => siteOfDay(site, day, frame)),
    sessions: sessions.map(({ judged, sits, plans }) => ({
      session: judged.window.id,
      sites: rankedSites(judged.sites).map((entry) =>
        siteDetails(entry, plans.find(({ site }) => site === entry.site.content.id) ?? null, timezone),
      ),
      sits: sits.map(({ hunter, entry, walk, stop }) => ({
        hunter: hunter.id,
        site: entry.site.content.id,
        walkIn: walk?.id ?? null,
        stopped: stop !== null,
      })),
      lookUp: lookUpRows(judged, day.localDate, frame),
    })),
  };
}

function siteDetails(entry: SiteInSession, plans: SitePlans | null, timezone: string): SiteDetails {
  const { judged, site } = entry;
  return {
    site: site.content.id,
    sitFromRange: packRange(judged?.sitFromRange ?? null, timezone),
    sitUntilRange: packRange(judged?.sitUntilRange ?? null, timezone),
    localNote: judged?.localNote ?? false,
    walks: (plans?.walks ?? []).map((plan) => walkDetails(plan, timezone)),
  };
}

function walkDetails(
  { walk, times, darkIn, darkOut }: WalkPlan,
  timezone: string,
): SiteDetails["walks"][number] {
  return {
    walkIn: walk.id,
    from: walk.from,
    inMin: walk.inMin === null ? null : [walk.inMin[0], walk.inMin[1]],
    quietMin: walk.quietMin,
    outMin: walk.outMin === null ? null : [walk.outMin[0], walk.outMin[1]],
    leaveAt: packInstant(times.leaveAt, timezone),
    atTreeAt: packInstant(times.atTreeAt, timezone),
    startDownAt: packInstant(times.startDownAt, timezone),
    outAt: packInstant(times.outAt, timezone),
    darkInMin: darkIn === null ? null : rounded(darkIn.darkMin, 1),
    moonlitInMin: darkIn === null ? null : rounded(darkIn.moonlitMin, 1),
    moonUpIn: darkIn === null ? null : darkIn.moon.isUpAtStart || darkIn.moon.isUpAtEnd,
    darkOutMin: darkOut === null ? null : rounded(darkOut.darkMin, 1),
    moonlitOutMin: darkOut === null ? null : rounded(darkOut.moonlitMin, 1),
    moonUpOut: darkOut === null ? null : darkOut.moon.isUpAtStart || darkOut.moon.isUpAtEnd,
    why: walk.why,
  };
}

/** Sun, usable light and turns of the air at a site under the day's forecast; the clear sky where there is none. */
function siteOfDay(site: TripSite, day: TripDayLight, frame: TripFrame): DayDetails["sites"][number] {
  const { timezone, constants } = frame.context;
  const { localDate } = day;
  const weather = weatherOfDay(frame.hours, localDate);
  const air = site.airOn(localDate, weather);
  const { position, cover } = site.content.facts;
  const lightConstants = {
    usableLightSunDeg: COVERS.map((of) => constants.usableLightSunDeg[of]),
    usableLightCloudDeg: constants.usableLightCloudDeg,
    usableLightCloudShare: constants.usableLightCloudShare,
  };
  const usable = (at: Date | null) => {
    const row = weather.findLast((held) => at !== null && held.at <= at) ?? weather[0];
    const cloudShare = row?.cloudShare ?? null;
    return usableLight({ localDate, timezone, position, cover, cloudShare }, lightConstants);
  };
  const morning = usable(day.sun.firstLight);
  const evening = usable(day.sun.lastLight);
  const why: Record<string, string> = {};
  if ((air?.sunOn ?? null) === null) {
    why.sunReachesAt = site.airWhy ?? air?.why.sunOn ?? "the slope is not known";
    why.sunLeavesAt = why.sunReachesAt;
  }
  if (morning.from === null) why.usableFrom = morning.why.from ?? "not known";
  if (evening.until === null) why.usableUntil = evening.why.until ?? "not known";
  return {
    site: site.content.id,
    sunReachesAt: packInstant(air?.sunOn ?? null, timezone),
    sunLeavesAt: packInstant(air?.sunLeaves ?? null, timezone),
    usableFrom: packInstant(morning.from, timezone),
    usableUntil: packInstant(evening.until, timezone),
    turns: (air?.spans ?? [])
      .filter(({ phase }) => phase === "turning")
      .map((span) => ({
        from: packInstant(toModelStep(span.from), timezone),
        to: packInstant(toModelStep(span.to), timezone),
        fromRange: packRange(span.fromRange, timezone),
        toRange: packRange(span.toRange, timezone),
      })),
    why,
  };
}

function packHour(hour: ForecastHour, timezone: string): DayDetails["hours"][number] {
  const known = <T>(value: number | null, of: (value: number) => T): T | null =>
    value === null ? null : of(value);
  return {
    at: packInstant(hour.at, timezone),
    wind: hour.wind,
    windFromDeg: known(hour.windFromDeg, packBearing),
    windSpeedMps: known(hour.windSpeedMps, packSpeed),
    gustMps: known(hour.gustMps, packSpeed),
    cloudShare: known(hour.cloudShare, packShare),
    tempC: known(hour.tempC, (c) => rounded(c, 1)),
    rainMmPerH: known(hour.rainMmPerH, (mm) => rounded(mm, 1)),
    thunder: hour.thunder,
    freezingRain: hour.freezingRain,
    issuedAt: packInstant(hour.issuedAt, timezone),
  };
}
