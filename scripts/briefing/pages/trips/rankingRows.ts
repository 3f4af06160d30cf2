import { aboutClock, instantOf } from "../../words/clockText.ts";
import { listWords } from "../../words/listWords.ts";
import type { AreaPack } from "../sheetParts.ts";
import { sitText } from "../sitTimes.ts";
import { type PackTripDay, type PackTripSession, siteStopOf } from "./sessionStops.ts";
import type { TripSessionDetails } from "./tripDetails.ts";
import { packSite, siteName, walkInName } from "./tripNames.ts";

/** A site that may be chosen in a session, with the reason of its verdict. */
export interface RankedSite {
  verdict: NonNullable<PackTripSession["ranking"]>[number]["verdict"];
  site: string;
  number: number;
  /** "about 07:00 until about 09:15"; null when there is no stretch worth sitting */
  sit: string | null;
  /** "about 05:20 by Ridge way"; null when nobody should go */
  leave: string | null;
  reason: string;
  localNote: boolean;
}

/** Sites of one verdict, best first. */
export interface RankedGroup {
  verdict: RankedSite["verdict"];
  rows: RankedSite[];
}

/** Sites that nobody may sit at for the same reason. */
export interface StoppedGroup {
  sites: string;
  reason: string;
}

/** Ranked sites, best first, those with a STOP taken out; null without a forecast. */
export function rankedSites(
  area: AreaPack,
  day: PackTripDay,
  session: PackTripSession,
  details: TripSessionDetails | undefined,
  stepMin: number,
): RankedSite[] | null {
  const { timezone } = area.pack.area;
  return (
    session.ranking
      ?.filter((row) => siteStopOf(area, day, session, row.site) === null)
      .map((row) => {
        const sit = sitText(row, stepMin, timezone);
        const hasSit = row.sitFrom !== null && row.sitUntil !== null;
        return {
          verdict: row.verdict,
          site: siteName(area, row.site),
          number: packSite(area, row.site)?.number ?? 0,
          sit: hasSit ? `${sit.from} until ${sit.until}` : null,
          leave: hasSit ? leaveText(area, row) : null,
          reason: shortReason(row.reason),
          localNote: details?.sites.find((site) => site.site === row.site)?.localNote ?? false,
        };
      }) ?? null
  );
}

/** Ranked sites by verdict in the order of the ranking; null without a forecast. */
export function rankedGroups(ranking: readonly RankedSite[] | null): RankedGroup[] | null {
  if (ranking === null) return null;
  const verdicts = [...new Set(ranking.map((row) => row.verdict))];
  return verdicts.map((verdict) => ({ verdict, rows: ranking.filter((row) => row.verdict === verdict) }));
}

/** Every site of the session that a STOP takes out, each once, by number; those with the same reason together. */
export function stoppedGroups(area: AreaPack, day: PackTripDay, session: PackTripSession): StoppedGroup[] {
  const ids = [
    ...session.stopped.map((row) => row.site),
    ...(session.ranking ?? []).map((row) => row.site),
    ...session.assignment.map((row) => row.site),
  ];
  const sites = [...new Set(ids)]
    .flatMap((id) => {
      const stop = siteStopOf(area, day, session, id);
      return stop === null
        ? []
        : [{ name: siteName(area, id), number: packSite(area, id)?.number ?? 0, stop }];
    })
    .sort((a, b) => a.number - b.number);
  const reasons = [...new Set(sites.map((site) => site.stop.reason))];
  return reasons.map((reason) => ({
    sites: listWords(sites.filter((site) => site.stop.reason === reason).map((site) => site.name)),
    reason,
  }));
}

function leaveText(area: AreaPack, row: NonNullable<PackTripSession["ranking"]>[number]): string {
  const way = walkInName(area, row.site, row.walkIn);
  if (row.leaveAt === null) return `at a time not known: ${row.why.leaveAt ?? "not worked out"}`;
  const at = aboutClock(instantOf(row.leaveAt), 5, "down", area.pack.area.timezone);
  return way === null ? at : `${at} by ${way}`;
}

/** The end of the session stands in the column beside it; every other end is told. */
function shortReason(reason: string): string {
  return reason.replace(/ Sit until the end of the session, \d\d:\d\d\.$/, "");
}
