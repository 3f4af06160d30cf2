import type { PackSite } from "../../content/schema/packSchema.ts";
import { aboutClock, instantOf } from "../words/clockText.ts";
import { windRunsText } from "../words/windWords.ts";
import type { SessionRow } from "./siteWindTable.ts";

/** Winds that share a sit: "light or fresh from SW to NW", from about 06:45 until about 09:15. */
export interface SitTimesRow {
  session: string;
  winds: string;
  from: string;
  until: string;
}

/** Every sit that suits, winds with the same printed times joined, in the order of the sessions; sit until is rounded down, sit from up. */
export function sitTimesRows(
  site: PackSite,
  sessions: string[],
  stepMin: number,
  timezone: string,
): SitTimesRow[] {
  return sessions.flatMap((session) => {
    const groups = new Map<string, { from: string; until: string; winds: Map<string, string[]> }>();
    for (const row of site.sessionTable) {
      if (row.session !== session || row.verdict !== "suits") continue;
      const { from, until } = sitText(row, stepMin, timezone);
      const key = `${from} ${until}`;
      const group = groups.get(key) ?? { from, until, winds: new Map() };
      group.winds.set(row.class, [...(group.winds.get(row.class) ?? []), row.windFrom]);
      groups.set(key, group);
    }
    return [...groups.values()].map(({ from, until, winds }) => ({
      session,
      winds: windsText(winds),
      from,
      until,
    }));
  });
}

/** Winds by strength in words; strengths with the same winds are joined. */
function windsText(winds: ReadonlyMap<string, string[]>): string {
  const strengths = new Map<string, string[]>();
  for (const [strength, points] of winds) {
    const text = strength === "calm" ? "calm" : `from ${windRunsText(points)}`;
    strengths.set(text, [...(strengths.get(text) ?? []), strength]);
  }
  return [...strengths]
    .map(([text, names]) => (text === "calm" ? "calm" : `${names.join(" or ")} ${text}`))
    .join("; ");
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
