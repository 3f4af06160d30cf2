import { normalizeDeg } from "../geo/bearings.ts";
import { COMPASS_POINTS, type CompassPoint, pointBearingDeg } from "../geo/compassPoints.ts";
import type { Verdict, WindClass } from "./slopeSite.ts";

/** One site's session table, as far as coverage needs it. */
export interface SiteSessionTable {
  siteId: string;
  rows: readonly { windFrom: CompassPoint | "calm"; class: WindClass; session: string; verdict: Verdict }[];
}

export interface CoverageRow {
  session: string;
  windFrom: CompassPoint | "calm";
  class: WindClass;
  /** Sites that suit, in the order given. */
  suits: string[];
  gap: boolean;
  /**
   * For a gap: bearing from an approach at which a new site would lie, straight down the general wind; null in a calm
   * and where there is no gap. Slope air is not looked at.
   */
  fillBearingDeg: number | null;
}

const POINTS: readonly (CompassPoint | "calm")[] = [...COMPASS_POINTS, "calm"];
const CLASSES: readonly WindClass[] = ["light", "fresh", "calm"];

/**
 * Which sites suit each session and wind, and the gaps where none does. Rows in the order of the sessions given, then
 * winds clockwise from N with light before fresh, then calm.
 */
export function coverage(tables: readonly SiteSessionTable[], sessions: readonly string[]): CoverageRow[] {
  const suits = new Map<string, string[]>();
  for (const { siteId, rows } of tables) {
    for (const row of rows) {
      if (row.verdict !== "suits") continue;
      const key = keyOf(row.session, row.windFrom, row.class);
      suits.set(key, [...(suits.get(key) ?? []), siteId]);
    }
  }
  return sessions.flatMap((session) =>
    POINTS.flatMap((windFrom) =>
      CLASSES.filter((c) => (windFrom === "calm") === (c === "calm")).map((ofClass): CoverageRow => {
        const own = suits.get(keyOf(session, windFrom, ofClass)) ?? [];
        const gap = own.length === 0;
        const fillBearingDeg =
          gap && windFrom !== "calm" ? normalizeDeg(pointBearingDeg(windFrom) + 180) : null;
        return { session, windFrom, class: ofClass, suits: own, gap, fillBearingDeg };
      }),
    ),
  );
}

/**
 * The gaps in words, one sentence for both strengths and one for each strength that stands alone; a run of three and
 * more neighbouring winds is told by its ends. No gap: one sentence that says so.
 *
 * @example "No site suits: from NE evening, calm evening."
 */
export function gapSentences(rows: readonly CoverageRow[]): string[] {
  const sessions = [...new Set(rows.map((r) => r.session))];
  const gapsOf = (session: string, ofClass: WindClass): Set<string> =>
    new Set(rows.filter((r) => r.session === session && r.class === ofClass && r.gap).map((r) => r.windFrom));
  const parts = { both: [] as string[], light: [] as string[], fresh: [] as string[] };
  for (const session of sessions) {
    const light = gapsOf(session, "light");
    const fresh = gapsOf(session, "fresh");
    const both = COMPASS_POINTS.filter((p) => light.has(p) && fresh.has(p));
    add(parts.both, both, session);
    if (gapsOf(session, "calm").size > 0) parts.both.push(`calm ${session}`);
    add(
      parts.light,
      COMPASS_POINTS.filter((p) => light.has(p) && !fresh.has(p)),
      session,
    );
    add(
      parts.fresh,
      COMPASS_POINTS.filter((p) => fresh.has(p) && !light.has(p)),
      session,
    );
  }
  const sentences: string[] = [];
  if (parts.both.length > 0) sentences.push(`No site suits: ${parts.both.join(", ")}.`);
  if (parts.light.length > 0) sentences.push(`No site suits in light wind: ${parts.light.join(", ")}.`);
  if (parts.fresh.length > 0) sentences.push(`No site suits in fresh wind: ${parts.fresh.join(", ")}.`);
  return sentences.length > 0 ? sentences : ["Some site suits in every wind of the table."];
}

function add(to: string[], points: readonly CompassPoint[], session: string): void {
  if (points.length === COMPASS_POINTS.length) to.push(`every wind ${session}`);
  else if (points.length > 0) to.push(`from ${runsOf(points).join(" and ")} ${session}`);
}

/** Neighbouring points as runs: "N", "NE and ENE", "SE to SW". */
function runsOf(points: readonly CompassPoint[]): string[] {
  const isIn = (i: number): boolean => points.includes(COMPASS_POINTS[(i + 16) % 16] as CompassPoint);
  const runs: string[] = [];
  for (let i = 0; i < 16; i++) {
    if (!isIn(i) || isIn(i - 1)) continue;
    let length = 1;
    while (isIn(i + length)) length++;
    const first = COMPASS_POINTS[i] as CompassPoint;
    const last = COMPASS_POINTS[(i + length - 1) % 16] as CompassPoint;
    runs.push(length === 1 ? first : length === 2 ? `${first} and ${last}` : `${first} to ${last}`);
  }
  return runs;
}

function keyOf(session: string, windFrom: string, ofClass: string): string {
  return `${session}|${windFrom}|${ofClass}`;
}
