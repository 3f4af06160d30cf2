import { type SessionVerdict, sessionVerdict } from "../../air/sessionVerdict.ts";
import { civilAt } from "../../time/civilTime.ts";
import { type ForecastHour, weatherOfDay } from "../forecastSeries.ts";
import { approachesOf, localNotesOf } from "../siteAir.ts";
import { leavesGap, windOfRows } from "./holdingRows.ts";
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
 * The verdict of a site for one session under the trip's own forecast, its reason with the end of the sit in words. A
 * site is never better than marginal while part of the wind is not known, nor where the slope air counts and the cloud is
 * not known: a clear sky is then taken.
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
  const doubt = found.verdict === "suits" ? doubtOf(site, window, forecast, frame) : null;
  return {
    ...found,
    verdict: doubt === null ? found.verdict : "marginal",
    reason: [found.reason, endSentence(found), doubt ?? ""].filter(Boolean).join(" "),
  };

  function endSentence({ sitUntil, reason }: SessionVerdict): string {
    if (sitUntil === null || /until/i.test(reason)) return "";
    return `Sit until the end of ${window.endWords}, ${clockText(window.to)}.`;
  }
}

/** What is not known and could turn a site that suits; null when all is known. */
function doubtOf(
  site: TripSite,
  { localDate, from, to }: JudgedWindow,
  { rows }: SessionForecast,
  { hours, context }: TripFrame,
): string | null {
  const { calmBelowMps } = context.constants;
  const isBlind = ({ windFromDeg, windSpeedMps }: ForecastHour): boolean =>
    windSpeedMps === null || (windFromDeg === null && windSpeedMps >= calmBelowMps);
  const inWindow = rows.filter((row) => row.from < to && row.until > from);
  if (leavesGap(rows, from, to) || inWindow.some(({ hour }) => isBlind(hour))) {
    return "Part of the wind is not known.";
  }
  const hasSlopeAir = site.slope.landform === "slope" || site.slope.landform === "floor";
  const isCloudKnown = hours.every(
    (hour) => hour.localDate !== localDate || hour.at >= to || hour.cloudShare !== null,
  );
  return hasSlopeAir && !isCloudKnown ? "The cloud is not known." : null;
}

/** Whether a sit lasts to the end of the window that was judged: its end is cut to the step of the model. */
export function isToEnd(sitUntil: Date, window: Pick<JudgedWindow, "to">, stepMin: number): boolean {
  return window.to.getTime() - sitUntil.getTime() < stepMin * 60_000;
}
