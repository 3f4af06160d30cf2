import { type SessionVerdict, sessionVerdict } from "../../air/sessionVerdict.ts";
import { civilAt } from "../../time/civilTime.ts";
import { weatherOfDay } from "../forecastSeries.ts";
import { approachesOf, localNotesOf } from "../siteAir.ts";
import { windOfRows } from "./holdingRows.ts";
import { isOldAt, type SessionForecast } from "./sessionForecast.ts";
import type { TripFrame, TripSite } from "./tripFrame.ts";

/** The stretch of a session that is judged: its usable time, and what ends it. */
export interface JudgedWindow {
  session: string;
  localDate: string;
  /** Start of the whole session. */
  sessionFrom: Date;
  from: Date;
  to: Date;
  endWords: "the session" | "legal light";
}

/**
 * The verdict of a site for one session under the trip's own forecast, its reason with the end of the sit in words. Where
 * the slope air counts and the cloud is not known, a clear sky was taken: then the site is never better than marginal.
 */
export function judgedSite(
  site: TripSite,
  window: JudgedWindow,
  forecast: SessionForecast,
  frame: TripFrame,
): SessionVerdict {
  const { context, limits } = frame;
  const { shapes, timezone, constants } = context;
  const clockText = (at: Date): string => civilAt(at, timezone).clock;
  const found = sessionVerdict({
    site: site.slope,
    air: site.airOn(window.localDate, weatherOfDay(frame.hours, window.localDate)),
    airWhy: site.airWhy,
    window,
    approaches: approachesOf(site.content, window.session, shapes),
    wind: windOfRows(forecast.rows, window.from, window.to, ({ hour }) =>
      isOldAt(hour.issuedAt, window.sessionFrom, limits.forecastOldH),
    ),
    tableCell: null,
    localNotes: localNotesOf(site.content, window.localDate, timezone),
    clockText,
    constants,
  });
  const isCloudKnown = forecast.rows.every(({ hour }) => hour.cloudShare !== null);
  const hasSlopeAir = site.slope.landform === "slope" || site.slope.landform === "floor";
  const isDoubtful = found.verdict === "suits" && !isCloudKnown && hasSlopeAir;
  return {
    ...found,
    verdict: isDoubtful ? "marginal" : found.verdict,
    reason: [found.reason, endSentence(found), isDoubtful ? "The cloud is not known." : ""]
      .filter(Boolean)
      .join(" "),
  };

  function endSentence({ sitUntil, reason }: SessionVerdict): string {
    if (sitUntil === null || /until/i.test(reason)) return "";
    return `Sit until the end of ${window.endWords}, ${clockText(window.to)}.`;
  }
}

/** Whether a sit lasts to the end of the window that was judged: its end is cut to the step of the model. */
export function isToEnd(sitUntil: Date, window: Pick<JudgedWindow, "to">, stepMin: number): boolean {
  return window.to.getTime() - sitUntil.getTime() < stepMin * 60_000;
}
