import type { PackSite } from "../../content/schema/packSchema.ts";
import { COMPASS_POINTS, pointBearingDeg } from "../../geo/compassPoints.ts";
import { bearingText } from "../words/bearingText.ts";

export type VerdictWord = PackSite["sessionTable"][number]["verdict"];
export type SessionRow = PackSite["sessionTable"][number];

/** A verdict in a cell: the word decides the mark; a local note is marked. */
export interface VerdictCell {
  verdict: VerdictWord;
  localNote: boolean;
}

export interface SiteWindRow {
  wind: string;
  /** three digits, null for calm */
  degrees: string | null;
  /** N, E, S, W and Calm have the heavier rule above */
  heavy: boolean;
  cells: VerdictCell[];
}

export interface SiteWindTable {
  class: "light" | "fresh";
  sessions: string[];
  /** winds N to SSE, then S to NNW */
  halves: [SiteWindRow[], SiteWindRow[]];
  calm: SiteWindRow;
}

/** The 16 winds and calm of one site, a column a session, as two halves that stand side by side. */
export function siteWindTable(
  site: PackSite,
  sessions: string[],
  windClass: "light" | "fresh",
): SiteWindTable {
  const row = (wind: string): SiteWindRow => ({
    ...windHead(wind),
    cells: sessions.map((session) => sessionCell(site, session, wind, windClass)),
  });
  return {
    class: windClass,
    sessions,
    halves: [COMPASS_POINTS.slice(0, 8).map(row), COMPASS_POINTS.slice(8).map(row)],
    calm: row("calm"),
  };
}

/** Head of a wind row: its name, whole degrees and rule. */
export function windHead(wind: string): { wind: string; degrees: string | null; heavy: boolean } {
  const point = COMPASS_POINTS.find((p) => p === wind);
  if (point === undefined) return { wind: "Calm", degrees: null, heavy: true };
  return {
    wind: point,
    degrees: bearingText(pointBearingDeg(point)),
    heavy: point.length === 1,
  };
}

/** Verdict of a site for a wind and session; a row that is not there is not assessed. */
export function sessionCell(site: PackSite, session: string, wind: string, windClass: string): VerdictCell {
  const row = sessionRowFor(site, session, wind, windClass);
  return { verdict: row?.verdict ?? "not assessed", localNote: row?.localNote ?? false };
}

/** The row of the session table for a wind; calm belongs to both strengths. */
export function sessionRowFor(
  site: PackSite,
  session: string,
  wind: string,
  windClass: string,
): SessionRow | undefined {
  return site.sessionTable.find(
    (r) =>
      r.session === session &&
      r.windFrom === wind &&
      (wind === "calm" ? r.class === "calm" : r.class === windClass),
  );
}
