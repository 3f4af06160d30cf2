import type { Prose, SharedData, SiteContent } from "../../content/areaContent.ts";
import type { SiteDetails } from "../../content/schema/detailsSchema.ts";
import type { PackDay, PackSite } from "../../content/schema/packSchema.ts";
import { aboutClock, instantOf } from "../words/clockText.ts";
import { dateText } from "../words/dateText.ts";
import { sentenceStart } from "../words/listWords.ts";
import { windSpeedText } from "../words/measureText.ts";
import { percentText } from "../words/shareWords.ts";
import { airSpansOn } from "./airSpans.ts";
import { type AreaFrame, areaSheetBase } from "./areaFrame.ts";
import type { DayTracksChart } from "./charts.ts";
import { type CheckRow, type FineRow, fineRows, openRows, worstCautions } from "./checkRows.ts";
import { type DayEvent, eventCell, packDay, usableText } from "./dayLight.ts";
import { dayTracksChart } from "./dayTracksChart.ts";
import { type LegalText, legalSource, legalText } from "./legalText.ts";
import { modelNumber } from "./modelNumber.ts";
import { type AreaPack, type FactRow, fact, type PageLink, type Sheet } from "./sheetParts.ts";
import { siteAnswer, siteException, strengthSentence } from "./siteAnswer.ts";
import { type SiteBar, siteBar } from "./siteBar.ts";
import {
  approachFacts,
  groundFacts,
  type LocalNoteRow,
  laneFacts,
  localNoteRows,
  type NoShootRow,
  noShootLine,
  noShootRows,
  placeFacts,
  treeFacts,
  walkInFacts,
} from "./siteFacts.ts";
import { type SiteWindTable, siteWindTable } from "./siteWindTable.ts";
import { type SitTimesRow, sitTimesRows } from "./sitTimes.ts";
import { EYES_DECIDE, standingLine } from "./standingLines.ts";
import { airSentence, type TurnRow, turnRows } from "./turnWords.ts";

/** The card of one site: can I sit here now, how do I get in and out? */
export interface SiteCardSheet extends Sheet {
  number: number;
  bar: SiteBar | null;
  /** "STOP: dead limb overhead." above the wind table of a barred site, else null */
  barredText: string | null;
  tiedOn: string;
  noShoot: string;
  windTable: SiteWindTable;
  windCaption: string;
  freshSentence: string;
  tablesFor: string;
  hasLocalNote: boolean;
  /** sits that suit, a row a session and time */
  sitTimes: FactRow[];
  tableDate: string;
  chart: DayTracksChart | null;
  /** why there is no chart of the slope air, else null */
  noAir: string | null;
  airDay: string | null;
  turns: FactRow[];
  turnCaveat: string;
  legal: LegalText;
  legalSource: string;
  usable: string;
  eyes: string;
  /** the four events of the day on a flat horizon */
  light: FactRow[];
  sun: FactRow[];
  ground: FactRow[];
  place: FactRow[];
  tree: FactRow[];
  walkIns: FactRow[];
  lanes: FactRow[];
  closed: NoShootRow[] | null;
  noClosed: string;
  approaches: FactRow[];
  /** STOP, CAUTION and NOT CHECKED, worst first */
  checks: CheckRow[];
  /** what was OK, a line a kind of check */
  fine: FineRow[];
  localNotes: LocalNoteRow[];
  prose: Prose["sections"];
  evidence: string;
  /** the cards of the sites before and after this one by number */
  siblings: PageLink[];
}

/** Site cards in number order; none in an edition without sites. */
export function siteCardSheets(frame: AreaFrame, shared: SharedData): SiteCardSheet[] {
  const { content, pack, details } = frame.area;
  return (pack.sites ?? []).map((site) => {
    const written = content.sites.find((s) => s.id === site.id);
    if (written === undefined) throw new RangeError(`pack.json has a site that was not written: ${site.id}`);
    return siteCardSheet(
      frame,
      site,
      written,
      details.sites?.find((s) => s.id === site.id),
      shared,
    );
  });
}

function siteCardSheet(
  frame: AreaFrame,
  site: PackSite,
  written: SiteContent,
  details: SiteDetails | undefined,
  shared: SharedData,
): SiteCardSheet {
  const { area } = frame;
  const { pack } = area;
  const { timezone, units, locale } = pack.area;
  const stepMin = modelNumber(shared.model, "turnPrintMin");
  const sessions = area.details.sessions.map((session) => session.id);
  const bar = siteBar(area, site);
  const spans = airSpansOn(site, pack.tableDate);
  const sun = details?.sun.find((row) => row.localDate === pack.tableDate);
  const day = packDay(area, pack.tableDate);
  const lightSpeed = windSpeedText(modelNumber(shared.model, "lightWindMps"), units);
  const tableDate = dateText(pack.tableDate, locale);
  const doubtful = details?.doubtfulTurns.some((turn) => turn.localDate === pack.tableDate) ?? false;
  const closed = noShootRows(area, site);
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}sites/${site.id}.html`,
      pageName: "Site card",
      title: `${site.number} ${site.name}`,
      answer: siteAnswer(site, bar, sessions, stepMin, timezone),
      exception: bar === null ? siteException(site, sessions) : null,
      cautions: worstCautions(site, area, shared),
    }),
    number: site.number,
    bar,
    barredText: bar === null ? null : `${bar.heading}: do not sit here.`,
    tiedOn: standingLine(shared, "tiedOn"),
    noShoot: noShootLine(area, site),
    windTable: siteWindTable(site, sessions, "light"),
    windCaption: `Light wind, about ${lightSpeed}`,
    freshSentence: strengthSentence(site, sessions, "fresh"),
    tablesFor: `Tables are for ${tableDate}, clear sky.`,
    hasLocalNote: site.sessionTable.some((row) => row.localNote),
    sitTimes: bar === null ? sitTimesRows(site, sessions, stepMin, timezone).map(sitFact) : [],
    tableDate,
    chart: day === undefined ? null : cardChart(frame, dayTracksChart(frame, site, day, details)),
    noAir: spans === null ? (site.why.phases ?? "The slope air was not worked out for this day.") : null,
    airDay: spans === null ? null : airSentence(spans, stepMin, timezone),
    turns: spans === null ? [] : turnRows(spans, stepMin, timezone).map(turnFact),
    turnCaveat: `If clear and calm. Cloud and wind blur the turn or stop it.${doubtful ? " A turn of this day may not happen." : ""}`,
    legal:
      day === undefined
        ? { window: "LEGAL HOURS NOT CONFIRMED", struck: false, mark: null, confirmed: false }
        : legalText(day.shootingLight, timezone),
    legalSource:
      day === undefined ? "No light was worked out for this day." : legalSource(day.shootingLight, area),
    usable:
      usableText(sun?.usableFrom ?? null, sun?.usableUntil ?? null, timezone) ??
      `not known: ${sun?.why.usableFrom ?? sun?.why.usableUntil ?? "not worked out"}`,
    eyes: EYES_DECIDE,
    light: day === undefined ? [] : lightRows(area, day),
    sun: [
      fact(
        "Sun",
        `on the ground here ${sunText(sun?.reachesAt, sun?.why.reachesAt, timezone)} to ${sunText(sun?.leavesAt, sun?.why.leavesAt, timezone)}`,
      ),
    ],
    ground: groundFacts(area, site, written),
    place: placeFacts(site),
    tree: treeFacts(details, written, units),
    walkIns: walkInFacts(area, site, written),
    lanes: laneFacts(area, site, written),
    closed,
    noClosed: site.why.noShoot ?? "not worked out",
    approaches: approachFacts(area, written, sessions),
    checks: openRows(site.checks, area, shared),
    fine: fineRows(site.checks, area, shared),
    localNotes: localNoteRows(area, written),
    prose: written.prose?.sections ?? [],
    evidence: evidenceText(site, locale),
    siblings: siblingLinks(pack.sites ?? [], site),
  };
}

// beside the column of words of a printed card, 54 mm and a gutter of 5 mm
const SIDE_MM = 59;

function siblingLinks(sites: readonly PackSite[], site: PackSite): PageLink[] {
  const at = sites.indexOf(site);
  return [
    { of: sites[at - 1], word: "Previous" },
    { of: sites[at + 1], word: "Next" },
  ].flatMap(({ of, word }) =>
    of === undefined ? [] : [{ href: `${of.id}.html`, text: `${word}: ${of.number} ${of.name}` }],
  );
}

/** On A4 and Letter the chart leaves room for words beside it. */
function cardChart(frame: AreaFrame, chart: DayTracksChart): DayTracksChart {
  return frame.paper === "a5" ? chart : { ...chart, wideMm: frame.frameWidthMm - SIDE_MM };
}

function lightRows(area: AreaPack, day: PackDay): FactRow[] {
  const cell = (event: DayEvent): string => eventCell(area, day, event);
  return [
    fact("First light", cell("firstLight")),
    fact("Sunrise", cell("sunrise")),
    fact("Sunset", cell("sunset")),
    fact("Last light", cell("lastLight")),
  ];
}

function sitFact(row: SitTimesRow): FactRow {
  return fact(sentenceStart(row.session), `${row.winds}: from ${row.from} until ${row.until}`);
}

function turnFact(turn: TurnRow): FactRow {
  return fact(sentenceStart(turn.change), `about ${turn.span}; at the widest ${turn.range}`);
}

function sunText(at: string | null | undefined, why: string | undefined, timezone: string): string {
  if (at === null || at === undefined) return `not known (${why ?? "not worked out"})`;
  return aboutClock(instantOf(at), 5, "nearest", timezone);
}

function evidenceText(site: PackSite, locale: string): string {
  const { activity } = site;
  if (activity === null) return `Cameras: ${site.why.activity ?? "no record"}.`;
  const shares = activity.sessions.map(
    (s) => `${s.session} ${percentText(s.share)} (${percentText(s.low)} to ${percentText(s.high)})`,
  );
  return `Cameras: ${activity.visits} visits, ${dateText(activity.from, locale)} to ${dateText(activity.to, locale)}; ${shares.join(", ")}.`;
}
