import type { SharedData } from "../../../content/areaContent.ts";
import { clockText, instantOf } from "../../words/clockText.ts";
import { dateText, weekdayName } from "../../words/dateText.ts";
import { listWords, sentenceStart } from "../../words/listWords.ts";
import { type AreaFrame, areaSheetBase } from "../areaFrame.ts";
import type { DayTracksChart } from "../charts.ts";
import type { CheckRow } from "../checkRows.ts";
import { packDay } from "../dayLight.ts";
import { dayTracksChart } from "../dayTracksChart.ts";
import type { LegalText } from "../legalText.ts";
import { modelNumber } from "../modelNumber.ts";
import { type PenRow, penRow } from "../penRow.ts";
import type { AreaPack, CautionBox, FactRow, PageLink, Sheet } from "../sheetParts.ts";
import { EYES_DECIDE, standingLine } from "../standingLines.ts";
import type { WindMatrix } from "../windMatrix.ts";
import { dayAnswer, dayException } from "./dayAnswer.ts";
import { dayCautions, dayCheckRows, okElsewhere } from "./dayCheckRows.ts";
import { clockLine, legalRows, lightFigures, moonText } from "./dayLightRows.ts";
import { dayLookup } from "./dayLookup.ts";
import { darkTexts, type SiteLightRow, siteLightRow } from "./daySiteRows.ts";
import { openSits, type Sit, sessionSits } from "./daySits.ts";
import { type ForecastRow, forecastRows, issueTexts } from "./forecastRows.ts";
import { forecastSource, forecastText } from "./forecastText.ts";
import { type PackedTrip, tripPermalinks } from "./packedTrips.ts";
import {
  type RankedGroup,
  rankedGroups,
  rankedSites,
  type StoppedGroup,
  stoppedGroups,
} from "./rankingRows.ts";
import { type ScheduleRow, scheduleRows } from "./scheduleRows.ts";
import { type PackTripDay, type PackTripSession, sessionStop } from "./sessionStops.ts";
import { tripDayDetails, tripSessionDetails } from "./tripDetails.ts";

/** One session of a day sheet. */
export interface DaySession {
  title: string;
  /** "STOP: Thunder is in the forecast.", else null */
  stop: string | null;
  forecast: { text: string | null; source: string | null; old: boolean } | null;
  noForecast: string | null;
  sits: Sit[];
  rankingCaption: string;
  scheduleCaption: string;
  ranking: RankedGroup[] | null;
  stopped: StoppedGroup[];
  schedule: ScheduleRow[];
  noSchedule: string | null;
}

/** What do we do today, at what minute? */
export interface DaySheet extends Sheet {
  trip: string;
  clock: string;
  light: FactRow[];
  moon: string;
  legal: { title: string; legal: LegalText; source: string }[];
  legalNotes: string[];
  /** usable light, sun and turns of the air at the sites of the day */
  sites: SiteLightRow[];
  dark: string | null;
  eyes: string;
  seasonNote: string | null;
  /** light and air at the first site of the day; none without a site */
  charts: DayTracksChart[];
  sessions: DaySession[];
  /** the winds of the day when there is no forecast, else empty */
  lookup: WindMatrix[];
  forecast: ForecastRow[];
  forecastSource: string | null;
  /** STOP, CAUTION and NOT CHECKED, worst first */
  checks: CheckRow[];
  /** what was OK, a sentence or more a check */
  fine: CheckRow[];
  /** what was OK and has its figures in the schedule above or on the site card */
  fineElsewhere: string | null;
  contacts: PenRow[];
  checkIn: string | null;
  notes: string | null;
  meetPartner: string | null;
  lawFirst: string;
  hasLocalNote: boolean;
  links: PageLink[];
}

/** A sheet for every day of every trip of the pack. */
export function daySheets(frame: AreaFrame, packed: readonly PackedTrip[], shared: SharedData): DaySheet[] {
  return packed.flatMap((trip) => trip.trip.days.map((day) => daySheet(frame, trip, day, shared)));
}

function daySheet(frame: AreaFrame, packed: PackedTrip, day: PackTripDay, shared: SharedData): DaySheet {
  const { area } = frame;
  const { written, trip } = packed;
  const { locale } = area.pack.area;
  const light = packDay(area, day.localDate);
  if (light === undefined) throw new RangeError(`pack.json has no light for the trip day ${day.localDate}`);
  const sessions = day.sessions.map((session) => daySession(area, packed, day, session, shared));
  const open = [...new Set(sessions.flatMap((session) => openSits(session.sits).map((sit) => sit.siteId)))];
  const shown = open.length > 0 ? open : firstRanked(day);
  const links = tripPermalinks(frame.folder, trip);
  const details = tripDayDetails(area, trip.id, day.localDate);
  const boxes = dayCautions(area, shared, packed, day);
  const rows = dayCheckRows(area, shared, packed, day);
  const issues = issueTexts(area, details);
  const dark = day.sessions.flatMap((session) =>
    darkTexts(area, trip.id, day.localDate, session.session, sessionSits(area, packed, day, session)),
  );
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}trips/${trip.id}/day-${day.localDate}.html`,
      pageName: `Day sheet, ${written.facts.name}`,
      title: `${weekdayName(day.localDate)} ${dateText(day.localDate, locale)}`,
      answer: dayAnswer(area, packed, day),
      exception: dayException(area, packed, day),
      cautions: [...boxes, ...(boxes.some((box) => box.isOldForecast) ? [] : forecastNote(day, shared))].map(
        ({ level, title: hazard, text }) => ({ level, title: hazard, text }),
      ),
    }),
    trip: written.facts.name,
    clock: clockLine(area, light),
    light: lightFigures(area, light),
    moon: moonText(area, light),
    legal: legalRows(area, day).map(({ sessions: of, legal, source }) => ({
      title: of.length === day.sessions.length ? "Legal hours" : `Legal hours, ${listWords(of)}`,
      legal,
      source,
    })),
    legalNotes: details?.notes ?? [],
    sites: shown.map((id) => siteLightRow(area, details, id)),
    dark: dark.length === 0 ? null : `${dark.join("; ")}.`,
    eyes: EYES_DECIDE,
    seasonNote: isInSeason(area, day.localDate) ? null : standingLine(shared, "seasonNotConfirmed"),
    charts: shown.slice(0, 1).flatMap((id) => {
      const site = area.pack.sites?.find((entry) => entry.id === id);
      const details = area.details.sites?.find((entry) => entry.id === id);
      return site === undefined ? [] : [tripChart(frame, day, dayTracksChart(frame, site, light, details))];
    }),
    sessions,
    lookup: dayLookup(area, trip.id, day),
    forecast: forecastRows(area, details),
    forecastSource: sourceText(packed, issues),
    checks: rows.filter((row) => row.result !== "OK"),
    fine: rows.filter((row) => row.result === "OK"),
    fineElsewhere: okElsewhere(area, shared, packed, day),
    contacts: contactRows(area, packed),
    checkIn: written.facts.checkIn ?? null,
    notes: written.facts.notes ?? null,
    meetPartner: written.facts.hunters.length > 1 ? standingLine(shared, "meetPartner") : null,
    lawFirst: standingLine(shared, "lawFirst"),
    hasLocalNote: sessions.some(
      (session) => session.ranking?.some((group) => group.rows.some((row) => row.localNote)) ?? false,
    ),
    links: [
      { href: "intentions.html", text: "Trip intentions" },
      ...links.days
        .filter((permalink) => !permalink.endsWith(`day-${day.localDate}.html`))
        .map((permalink) => {
          const date = permalink.slice(-15, -5);
          return { href: `day-${date}.html`, text: `${weekdayName(date)} ${dateText(date, locale)}` };
        }),
      { href: "../../emergency.html", text: "Emergency page, the last sheet" },
    ],
  };
}

function daySession(
  area: AreaPack,
  packed: PackedTrip,
  day: PackTripDay,
  session: PackTripSession,
  shared: SharedData,
): DaySession {
  const stepMin = modelNumber(shared.model, "turnPrintMin");
  const details = tripSessionDetails(area, packed.trip.id, day.localDate, session.session);
  const stop = sessionStop(day, session);
  const sits = sessionSits(area, packed, day, session);
  const { forecast } = session;
  const hasHours = (tripDayDetails(area, packed.trip.id, day.localDate)?.hours ?? []).length > 0;
  return {
    title: sessionTitle(area, session),
    stop: stop === null ? null : `STOP: ${stop.reason}`,
    forecast:
      forecast === null
        ? null
        : {
            text: hasHours ? null : `Expected: ${forecastText(forecast, area.pack.area.units)}.`,
            source: forecast.old || !hasHours ? `${forecastSource(forecast, area)}.` : null,
            old: forecast.old,
          },
    noForecast: forecast === null ? standingLine(shared, "noForecast") : null,
    sits,
    rankingCaption: `Sites by verdict, ${session.session}`,
    scheduleCaption: `Schedule, ${session.session}`,
    ranking: rankedGroups(rankedSites(area, day, session, details, stepMin)),
    stopped: stoppedGroups(area, day, session),
    schedule: scheduleRows(area, packed, session, details, sits),
    noSchedule: noScheduleText(session, sits),
  };
}

function sessionTitle(area: AreaPack, { session, from, to, why }: PackTripSession): string {
  const { timezone } = area.pack.area;
  const name = sentenceStart(session);
  if (from === null || to === null)
    return `${name}: no session, ${why.from ?? why.to ?? "it does not happen this day"}`;
  return `${name}, ${clockText(instantOf(from), timezone)} to ${clockText(instantOf(to), timezone)}`;
}

function sourceText({ written }: PackedTrip, issues: readonly string[]): string | null {
  const { forecast } = written.facts;
  return forecast === undefined || issues.length === 0
    ? null
    : `Expected: ${forecast.source}, issued ${listWords(issues)}. Open wind at 10 m; a row holds until the next.`;
}

function noScheduleText(session: PackTripSession, sits: readonly Sit[]): string | null {
  if (openSits(sits).length > 0 && session.schedule.length > 0) return null;
  if (sits.length === 0) return "Nobody is written for this session.";
  return session.why.schedule ?? "No schedule: no choice here may be taken.";
}

function forecastNote(day: PackTripDay, shared: SharedData): CautionBox[] {
  const old = day.sessions.filter((session) => session.forecast?.old === true).map(({ session }) => session);
  return old.length === 0
    ? []
    : [
        {
          level: "note",
          title: `old forecast, ${listWords(old)}`,
          text: standingLine(shared, "oldForecast"),
        },
      ];
}

function firstRanked(day: PackTripDay): string[] {
  const first = day.sessions.flatMap((session) => session.ranking ?? [])[0]?.site;
  return first === undefined ? [] : [first];
}

/** The legal hours of the trip's own hunt on the chart, not those of the area. */
function tripChart(frame: AreaFrame, day: PackTripDay, chart: DayTracksChart): DayTracksChart {
  const light = day.sessions[0]?.shootingLight;
  const same = day.sessions.every(
    (session) =>
      session.shootingLight.start === light?.start &&
      session.shootingLight.end === light?.end &&
      session.shootingLight.status === "confirmed",
  );
  const start = light?.start ?? null;
  const end = light?.end ?? null;
  return {
    ...chart,
    wideMm: frame.frameWidthMm,
    legal: same && start !== null && end !== null ? { from: instantOf(start), to: instantOf(end) } : null,
  };
}

function contactRows(area: AreaPack, { written }: PackedTrip): PenRow[] {
  const { hunters } = written.facts;
  const own = area.pack.edition === "owner";
  return [
    ...hunters.map((hunter) => penRow(hunter.name, null)),
    ...hunters.flatMap((hunter) =>
      own && hunter.contact !== undefined ? [penRow(`Home of ${hunter.name}`, hunter.contact)] : [],
    ),
  ];
}

function isInSeason(area: AreaPack, localDate: string): boolean {
  return area.content.facts.season.some((season) => season.from <= localDate && localDate <= season.to);
}
