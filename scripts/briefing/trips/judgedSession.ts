import type { SessionVerdict } from "../../air/sessionVerdict.ts";
import type { SessionWindow } from "../../light/sessionWindows.ts";
import type { Check } from "../../safety/check.ts";
import { orderChecks } from "../../safety/orderChecks.ts";
import { sessionChecks } from "../../safety/sessionChecks.ts";
import { tableStretch } from "../daySessions.ts";
import { isToEnd, type JudgedWindow, judgedSite } from "./judgedSite.ts";
import { legalCheck } from "./legalCheck.ts";
import { planningMinutes } from "./planningMinutes.ts";
import { type SessionForecast, sessionForecast } from "./sessionForecast.ts";
import type { SiteBar, SiteOnDay } from "./siteOnDay.ts";
import type { SitEnds } from "./sitTimes.ts";
import type { TripDayLight, TripFrame } from "./tripFrame.ts";

/** A site in one session: barred with the reason, or judged. */
export interface SiteInSession extends SiteOnDay {
  bar: SiteBar | null;
  /** Null where the site is barred or there is no forecast. */
  judged: SessionVerdict | null;
  /** The ends of a sit there; null without a session. */
  ends: SitEnds | null;
}

/** One session of a trip day as judged, before anybody is sent anywhere. */
export interface JudgedSession {
  window: SessionWindow;
  forecast: SessionForecast;
  /** C1 and the weather; empty when there is no such session that day. */
  checks: Check[];
  sites: SiteInSession[];
}

/**
 * One session of a trip day: its legal light, forecast and weather checks, and each site barred or judged. Legal light that
 * is closed and a weather STOP bar every site.
 */
export function judgedSession(
  window: SessionWindow,
  day: TripDayLight,
  sites: readonly SiteOnDay[],
  frame: TripFrame,
): JudgedSession {
  const { timezone, constants } = frame.context;
  const stretch = tableStretch(window);
  if (window.from === null || window.to === null || stretch === null) {
    const none = { rows: [], weather: [], first: null, issuedAt: null, lastIssuedAt: null, isOld: false };
    const noSession = sites.map((entry) => ({ ...entry, judged: null, ends: null }));
    return { window, forecast: none, checks: [], sites: noSession };
  }
  const forecast = forecastOf(window.id, window.from, window.to, frame);
  const legal = legalCheck(window, day.shooting, timezone);
  const weather = sessionChecks(
    {
      session: window.id,
      timezone,
      weather: forecast.weather,
      issuedAt: forecast.issuedAt,
      sessionStart: window.from,
    },
    frame.limits,
  );
  const checks = orderChecks([legal, ...weather]);
  const stop = checks.find(({ result }) => result === "STOP");
  const barOfAll: SiteBar | null = stop === undefined ? null : { check: stop.id, reason: stop.text };
  const isShortened = stretch.to < window.to;
  const judgedWindow: JudgedWindow = {
    session: window.id,
    localDate: day.localDate,
    sessionFrom: window.from,
    ...stretch,
    endWords: isShortened ? "legal light" : "the session",
  };
  return {
    window,
    forecast,
    checks,
    sites: sites.map((entry): SiteInSession => {
      const bar = entry.bar ?? barOfAll;
      const isJudged = bar === null && forecast.rows.length > 0;
      const judged = isJudged ? judgedSite(entry.site, judgedWindow, forecast, frame) : null;
      return { ...entry, bar, judged, ends: endsOf(judged, judgedWindow, window, day, constants.stepMin) };
    }),
  };
}

function forecastOf(session: string, from: Date, to: Date, frame: TripFrame): SessionForecast {
  const { context, trip, hours, limits } = frame;
  const isNewcomer = trip.facts.hunters.some(({ newcomer }) => newcomer);
  const planning = planningMinutes(
    { area: context.area.content.facts, session, isNewcomer },
    context.constants,
  );
  const { seatBeforeMin, settleMin, setUpMin, coolDownMin } = planning;
  return sessionForecast({
    hours,
    from,
    to,
    timezone: context.timezone,
    beforeMin: seatBeforeMin + settleMin + setUpMin + coolDownMin,
    afterMin: setUpMin,
    oldH: limits.forecastOldH,
  });
}

/**
 * The end of a sit: the end of legal light in the session, and the end by air and session. A rule that is not confirmed ends
 * no sit later than it says, but confirms nothing.
 */
function endsOf(
  judged: SessionVerdict | null,
  judgedWindow: JudgedWindow,
  window: SessionWindow,
  day: TripDayLight,
  stepMin: number,
): SitEnds {
  const { status, end } = day.shooting;
  const sitUntil = judged?.sitUntil ?? null;
  const byAir = sitUntil === null || isToEnd(sitUntil, judgedWindow, stepMin) ? null : sitUntil;
  const limits = [window.to, byAir, status === "confirmed" ? null : end].flatMap((at) =>
    at === null || (window.from !== null && at <= window.from) ? [] : [at],
  );
  const ownLimit = new Date(Math.min(...limits.map((at) => at.getTime())));
  return { legalEnd: status === "confirmed" ? (window.usable.at(-1)?.end ?? null) : null, ownLimit };
}
