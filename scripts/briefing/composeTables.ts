import type { SessionTableRow } from "../air/sessionTableRows.ts";
import { sessionTableRows } from "../air/sessionTableRows.ts";
import { type TableQuestion, type WindTableRow, windTableRows } from "../air/windTableRows.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import { civilAt } from "../time/civilTime.ts";
import { packRange } from "./composePhases.ts";
import { packInstant } from "./packInstant.ts";
import { packBearing, packShare, packSpeed } from "./packNumbers.ts";

type PackWindRow = PackSite["windTable"][number];
type PackSessionRow = PackSite["sessionTable"][number];

export interface ComposedTables {
  windTable: PackWindRow[];
  sessionTable: PackSessionRow[];
  sitRanges: SiteDetails["sitRanges"];
}

/** A site's wind table and session table in the shape of pack.json, and the ranges of its sits beside them. */
export function composeTables(question: TableQuestion, timezone: string): ComposedTables {
  const clockText = (at: Date): string => civilAt(at, timezone).clock;
  const sessions = sessionTableRows({ ...question, clockText });
  return {
    windTable: windTableRows(question).map(packWindRow),
    sessionTable: sessions.map((row) => packSessionRow(row, timezone)),
    sitRanges: sessions.map((row) => ({
      windFrom: row.windFrom,
      class: row.class,
      session: row.session,
      sitFromRange: packRange(row.sitFromRange, timezone),
      sitUntilRange: packRange(row.sitUntilRange, timezone),
    })),
  };
}

function packWindRow(row: WindTableRow): PackWindRow {
  return {
    windFrom: row.windFrom,
    class: row.class,
    session: row.session,
    phase: row.phase,
    driftToDeg: row.driftToDeg === null ? null : packBearing(row.driftToDeg),
    driftSpeedMps: row.driftSpeedMps === null ? null : packSpeed(row.driftSpeedMps),
    reachShare: row.reachShare === null ? null : packShare(row.reachShare),
    verdict: row.verdict,
    reason: row.reason,
    modelVerdict: row.modelVerdict,
    localNote: row.localNote,
    why: { ...row.why },
  };
}

function packSessionRow(row: SessionTableRow, timezone: string): PackSessionRow {
  const why: Record<string, string> = {};
  const reason = row.reason.replace(/\.$/, "");
  for (const key of ["cleanShare", "sitFrom", "sitUntil"] as const) {
    if (row[key] === null) why[key] = reason;
  }
  return {
    windFrom: row.windFrom,
    class: row.class,
    session: row.session,
    verdict: row.verdict,
    cleanShare: row.cleanShare === null ? null : packShare(row.cleanShare),
    sitFrom: packInstant(row.sitFrom, timezone),
    sitUntil: packInstant(row.sitUntil, timezone),
    reason: row.reason,
    localNote: row.localNote,
    why,
  };
}
