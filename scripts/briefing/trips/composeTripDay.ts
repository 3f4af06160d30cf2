import type { DetailsFile } from "../../content/schema/detailsSchema.ts";
import type { PackTrip } from "../../content/schema/packSchema.ts";
import { packShootingLight } from "../legalLight.ts";
import { packInstant } from "../packInstant.ts";
import { dayChecks } from "./dayChecks.ts";
import { dayDetails } from "./dayDetails.ts";
import { type HunterBefore, type HunterSit, hunterSits } from "./hunterSits.ts";
import { judgedSession } from "./judgedSession.ts";
import { packDayCheck } from "./packDayCheck.ts";
import { packForecast } from "./packForecast.ts";
import { rankedSites, rankingRow, stoppedRows } from "./rankedSites.ts";
import { scheduleRows } from "./scheduleRows.ts";
import { separatedSits } from "./separatedSits.ts";
import { siteOnDay } from "./siteOnDay.ts";
import { type PlannedSession, sitePlans } from "./sitePlans.ts";
import type { TripDayLight, TripFrame } from "./tripFrame.ts";

type PackTripDay = PackTrip["days"][number];
type PackTripSession = PackTripDay["sessions"][number];
type DayDetails = NonNullable<DetailsFile["trips"]>[number]["days"][number];

export interface ComposedTripDay {
  day: PackTripDay;
  details: DayDetails;
}

/**
 * One day of a trip: its checks and sessions as pack.json holds them, and what pages show beyond.
 *
 * @param before   what each hunter has behind him; brought up to the end of the day
 */
export function composeTripDay(
  localDate: string,
  before: Map<string, HunterBefore>,
  frame: TripFrame,
): ComposedTripDay {
  const day = frame.dayLight(localDate);
  const sites = frame.sites.map((site) => siteOnDay(site, localDate, frame));
  const inTime = day.sessions.toSorted((a, b) => startMs(a.from) - startMs(b.from));
  const planned = new Map(
    inTime.map((window): [string, PlannedSession] => {
      const judged = judgedSession(window, day, sites, frame);
      const { sits, checks: apart } = separatedSits(hunterSits(judged, day, before, frame), frame);
      for (const sit of sits) remember(sit, localDate, before);
      return [window.id, { judged, sits, apart, plans: sitePlans(judged, sits, day, frame) }];
    }),
  );
  const sessions = day.sessions.flatMap(({ id }) => planned.get(id) ?? []);
  return {
    day: {
      localDate,
      checks: dayChecks(sessions, day, frame).map(packDayCheck),
      sessions: sessions.map((session) => packSession(session, day, frame)),
    },
    details: dayDetails(sessions, day, frame),
  };
}

function packSession(session: PlannedSession, day: TripDayLight, frame: TripFrame): PackTripSession {
  const { judged, sits, plans } = session;
  const { window, forecast } = judged;
  const { timezone } = frame.context;
  const why: Record<string, string> = {};
  if (window.from === null || window.to === null) {
    why.from = window.why.from ?? "There is no such session that day.";
    why.to = window.why.to ?? why.from;
  }
  const packed = packForecast(forecast, frame.trip.facts.forecast?.source ?? null, timezone);
  if (packed === null) {
    const reason = why.from ?? "No forecast for this session: read the wind table of the day.";
    why.forecast = reason;
    why.ranking = reason;
  }
  return {
    session: window.id,
    from: packInstant(window.from, timezone),
    to: packInstant(window.to, timezone),
    shootingLight: packShootingLight(day.shooting, timezone),
    forecast: packed,
    ranking:
      packed === null
        ? null
        : rankedSites(judged.sites).map((entry) =>
            rankingRow(
              entry,
              plans.find(({ site }) => site === entry.site.content.id)?.chosen ?? null,
              timezone,
            ),
          ),
    stopped: stoppedRows(judged.sites),
    assignment: sits.map(({ hunter, entry, stop }) => ({
      hunter: hunter.id,
      site: entry.site.content.id,
      by: "owner",
      reason: stop ?? "written in the trip",
    })),
    schedule: scheduleRows(sits, day, frame),
    why,
  };
}

function remember(
  { hunter, times, wakeAt }: HunterSit,
  localDate: string,
  before: Map<string, HunterBefore>,
): void {
  if (times === null) return;
  // The time out is not known without the minutes of the walk; the climb down is the least that is known.
  before.set(hunter.id, { backAt: times.outAt ?? times.startDownAt, localDate, wakeAt });
}

function startMs(from: Date | null): number {
  return from?.getTime() ?? 0;
}
