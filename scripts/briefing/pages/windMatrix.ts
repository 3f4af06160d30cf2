import type { PackSite } from "../../content/schema/packSchema.ts";
import { COMPASS_POINTS } from "../../geo/compassPoints.ts";
import { sentenceStart } from "../words/listWords.ts";
import type { AreaPack } from "./sheetParts.ts";
import { siteBar } from "./siteBar.ts";
import { sessionCell, type VerdictCell, windHead } from "./siteWindTable.ts";

/** A column group of a matrix: one site. A barred site has one cell a row with its word. */
export interface MatrixSite {
  number: number;
  name: string;
  /** the word that stands in every row of a barred site, else null */
  barred: string | null;
}

export interface MatrixColumn {
  /** a few letters, or the name of an arrow of the slope-air strip */
  short: string;
  full: string;
  arrow: boolean;
}

/** The cells of one site in one row; `barred` sites have no verdict cells. */
export interface MatrixGroup {
  barred: string | null;
  cells: VerdictCell[];
}

export interface MatrixRow {
  wind: string;
  /** three digits, null for calm */
  degrees: string | null;
  heavy: boolean;
  groups: MatrixGroup[];
}

/** Winds in rows, sites in column groups. */
export interface WindMatrix {
  caption: string;
  sites: MatrixSite[];
  /** the columns of each site */
  columns: MatrixColumn[];
  rows: MatrixRow[];
}

const WINDS = [...COMPASS_POINTS, "calm"] as const;
const PHASES = ["falling", "turning", "rising"] as const;

/** A session in two letters where it has them: am and pm; else its first word. */
export function sessionShort(session: string): string {
  if (session === "morning") return "am";
  if (session === "evening") return "pm";
  return session.split("-")[0] ?? session;
}

/** Sites x winds by session for one strength, split into sheets of at most `perSheet` sites. */
export function sessionMatrices(
  area: AreaPack,
  windClass: "light" | "fresh",
  title: string,
  perSheet: number,
): WindMatrix[] {
  const sessions = area.details.sessions.map((session) => session.id);
  const columns = sessions.map((session) => ({
    short: sessionShort(session),
    full: sentenceStart(session),
    arrow: false,
  }));
  return split(area, perSheet).map((sites, sheet, all) => ({
    caption: `${title} by session${sheetText(sheet, all.length)}`,
    sites: sites.map((site) => matrixSite(area, site)),
    columns,
    rows: WINDS.map((wind) => ({
      ...windHead(wind),
      groups: sites.map((site) => ({
        barred: matrixSite(area, site).barred,
        cells: sessions.map((session) => sessionCell(site, session, wind, windClass)),
      })),
    })),
  }));
}

/** Sites x winds by phase of the slope air, for one strength and session. */
export function phaseMatrices(
  area: AreaPack,
  windClass: "light" | "fresh",
  session: string,
  perSheet: number,
): WindMatrix[] {
  const columns = PHASES.map((phase) => ({ short: phase, full: sentenceStart(phase), arrow: true }));
  return split(area, perSheet).map((sites, sheet, all) => ({
    caption: `${sentenceStart(windClass)} wind, ${session}, by phase of the slope air${sheetText(sheet, all.length)}`,
    sites: sites.map((site) => matrixSite(area, site)),
    columns,
    rows: WINDS.map((wind) => ({
      ...windHead(wind),
      groups: sites.map((site) => ({
        barred: matrixSite(area, site).barred,
        cells: PHASES.map((phase) => phaseCell(site, session, wind, windClass, phase)),
      })),
    })),
  }));
}

function phaseCell(
  site: PackSite,
  session: string,
  wind: string,
  windClass: string,
  phase: string,
): VerdictCell {
  const row = site.windTable.find(
    (r) =>
      r.session === session &&
      r.phase === phase &&
      r.windFrom === wind &&
      (wind === "calm" ? r.class === "calm" : r.class === windClass),
  );
  return { verdict: row?.verdict ?? "not assessed", localNote: row?.localNote ?? false };
}

function matrixSite(area: AreaPack, site: PackSite): MatrixSite {
  const bar = siteBar(area, site);
  return {
    number: site.number,
    name: site.name,
    barred: bar === null ? null : bar.heading === "STOP" ? "STOP" : "ask",
  };
}

function split(area: AreaPack, perSheet: number): PackSite[][] {
  const sites = area.pack.sites ?? [];
  const sheets: PackSite[][] = [];
  for (let i = 0; i < sites.length; i += perSheet) sheets.push(sites.slice(i, i + perSheet));
  return sheets;
}

function sheetText(sheet: number, of: number): string {
  return of === 1 ? "" : `, sheet ${sheet + 1} of ${of}`;
}
