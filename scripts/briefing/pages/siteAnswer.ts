import type { PackSite } from "../../content/schema/packSchema.ts";
import { clockText, instantOf, roundedInstant } from "../words/clockText.ts";
import { listWords, sentenceStart } from "../words/listWords.ts";
import { windRunsText } from "../words/windWords.ts";
import type { SiteBar } from "./siteBar.ts";
import type { SessionRow } from "./siteWindTable.ts";

/** Answer line of a site card. A barred site is never offered; the reason of a STOP stands in the Warning below. */
export function siteAnswer(
  site: PackSite,
  bar: SiteBar | null,
  sessions: string[],
  stepMin: number,
  timezone: string,
): { core: string; rest: string | null } {
  if (bar !== null)
    return { core: `${bar.heading}: do not sit here.`, rest: bar.heading === "STOP" ? null : bar.reason };
  const offers = sessions.flatMap((session) => {
    const rows = rowsOf(site, session, "light", "suits");
    if (rows.length === 0) return [];
    return [
      `${session} from ${windRunsText(rows.map((row) => row.windFrom))}${untilText(rows, stepMin, timezone)}`,
    ];
  });
  if (offers.length > 0) return { core: `Suits light wind: ${listWords(offers, "and")}.`, rest: null };
  const marginal = sessions.flatMap((session) => {
    const rows = rowsOf(site, session, "light", "marginal");
    return rows.length === 0 ? [] : [`${session} from ${windRunsText(rows.map((row) => row.windFrom))}`];
  });
  return {
    core: "No light wind suits this site.",
    rest: marginal.length === 0 ? null : `Marginal: ${listWords(marginal)}.`,
  };
}

/** Exception line: which light winds to avoid, and the reason most of them share; null when there are none. */
export function siteException(site: PackSite, sessions: string[]): string | null {
  const parts = sessions.flatMap((session) => {
    const rows = rowsOf(site, session, "light", "avoid");
    return rows.length === 0 ? [] : [{ session, winds: windRunsText(rows.map((row) => row.windFrom)), rows }];
  });
  if (parts.length === 0) return null;
  const [first] = parts;
  const same = parts.length === sessions.length && parts.every((part) => part.winds === first?.winds);
  const winds = same
    ? `light wind from ${first?.winds} in any session`
    : `light wind, ${listWords(parts.map((part) => `${part.session} from ${part.winds}`))}`;
  return `Avoid ${winds}. ${sentenceStart(mostCommonReason(parts.flatMap((part) => part.rows)))}`;
}

/** "Fresh wind: morning suits from W; evening suits none." One sentence a strength, for what the table does not hold. */
export function strengthSentence(site: PackSite, sessions: string[], windClass: "light" | "fresh"): string {
  const parts = sessions.map((session) => {
    const suits = windRunsText(rowsOf(site, session, windClass, "suits").map((row) => row.windFrom));
    const marginal = windRunsText(rowsOf(site, session, windClass, "marginal").map((row) => row.windFrom));
    const words = [suits === "" ? "suits none" : `suits from ${suits}`];
    if (marginal !== "") words.push(`marginal from ${marginal}`);
    return `${session} ${words.join(", ")}`;
  });
  return `${sentenceStart(windClass)} wind: ${parts.join("; ")}.`;
}

/** The earliest printed sit until of the rows, unless one of them is not known. */
function untilText(rows: SessionRow[], stepMin: number, timezone: string): string {
  const ends = rows.map((row) => row.sitUntil);
  if (ends.some((end) => end === null)) return "";
  const instants = ends.flatMap((end) =>
    end === null ? [] : [roundedInstant(instantOf(end), stepMin, "down", timezone).getTime()],
  );
  return ` until about ${clockText(new Date(Math.min(...instants)), timezone)}`;
}

function mostCommonReason(rows: SessionRow[]): string {
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(row.reason, (counts.get(row.reason) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "";
}

function rowsOf(site: PackSite, session: string, windClass: string, verdict: string): SessionRow[] {
  return site.sessionTable.filter(
    (row) => row.session === session && row.class === windClass && row.verdict === verdict,
  );
}
