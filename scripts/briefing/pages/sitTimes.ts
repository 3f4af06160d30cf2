import type { PackSite } from "../../content/schema/packSchema.ts";
import { aboutClock, instantOf } from "../words/clockText.ts";
import { listWords } from "../words/listWords.ts";
import { windRunsText } from "../words/windWords.ts";
import type { SessionRow } from "./siteWindTable.ts";

/** Winds that share a sit: "SW to NW" in light wind, from about 06:45 until about 09:15. */
export interface SitTimesRow {
  session: string;
  winds: string;
  strength: string;
  verdict: SessionRow["verdict"];
  from: string;
  until: string;
}

interface SitGroup {
  verdict: SessionRow["verdict"];
  class: SessionRow["class"];
  session: string;
  from: string;
  until: string;
  winds: string[];
}

/** Every sit that suits, winds with the same printed times joined, in the order of the sessions; sit until is rounded down, sit from up. */
export function sitTimesRows(
  site: PackSite,
  sessions: string[],
  stepMin: number,
  timezone: string,
): SitTimesRow[] {
  const groups: SitGroup[] = [];
  for (const session of sessions) {
    for (const windClass of ["light", "fresh", "calm"] as const) {
      for (const row of site.sessionTable) {
        if (row.session !== session || row.class !== windClass || row.verdict !== "suits") continue;
        const { from, until } = sitText(row, stepMin, timezone);
        const same = groups.find(
          (g) => g.session === session && g.class === windClass && g.from === from && g.until === until,
        );
        if (same) same.winds.push(row.windFrom);
        else
          groups.push({
            verdict: row.verdict,
            class: windClass,
            session,
            from,
            until,
            winds: [row.windFrom],
          });
      }
    }
  }
  return groups.map((g) => ({
    session: g.session,
    winds: g.class === "calm" ? "calm" : `from ${windRunsText(g.winds)}`,
    strength: g.class,
    verdict: g.verdict,
    from: g.from,
    until: g.until,
  }));
}

/** The printed ends of a sit. */
export function sitText(
  row: Pick<SessionRow, "sitFrom" | "sitUntil">,
  stepMin: number,
  timezone: string,
): { from: string; until: string } {
  return {
    from: row.sitFrom === null ? "not known" : aboutClock(instantOf(row.sitFrom), stepMin, "up", timezone),
    until:
      row.sitUntil === null ? "not known" : aboutClock(instantOf(row.sitUntil), stepMin, "down", timezone),
  };
}

/** Words for a set of winds of one session: "morning from SW to NW". */
export function suitsPhrase(
  site: PackSite,
  session: string,
  windClass: string,
  verdict: SessionRow["verdict"],
): string {
  const winds = site.sessionTable
    .filter((row) => row.session === session && row.class === windClass && row.verdict === verdict)
    .map((row) => row.windFrom);
  return windRunsText(winds);
}

/** "morning and evening" for lists of sessions. */
export function sessionList(sessions: string[]): string {
  return listWords(sessions);
}
