import type { PackTrip } from "../../content/schema/packSchema.ts";
import { packInstant } from "../packInstant.ts";
import { packShare } from "../packNumbers.ts";
import type { SiteInSession } from "./judgedSession.ts";
import type { WalkPlan } from "./walkPlan.ts";

type PackSession = PackTrip["days"][number]["sessions"][number];
type RankingRow = NonNullable<PackSession["ranking"]>[number];

const ORDER = ["suits", "marginal", "avoid", "not assessed"] as const;

/** The sites that are judged, best first: by verdict, then clean share, then number. Barred sites are never among them. */
export function rankedSites(sites: readonly SiteInSession[]): SiteInSession[] {
  const rank = ({ judged }: SiteInSession): number => ORDER.indexOf(judged?.verdict ?? "not assessed");
  const clean = ({ judged }: SiteInSession): number => judged?.cleanShare ?? -1;
  const number = ({ site }: SiteInSession): number => site.content.facts.number;
  return sites
    .filter(({ site, bar, judged }) => site.isAllowed && bar === null && judged !== null)
    .sort((a, b) => rank(a) - rank(b) || clean(b) - clean(a) || number(a) - number(b));
}

/** One row of a ranking in the shape of pack.json. */
export function rankingRow(entry: SiteInSession, plan: WalkPlan | null, timezone: string): RankingRow {
  const { judged } = entry;
  const why: Record<string, string> = {};
  const reason = judged?.reason ?? "There is no forecast.";
  for (const key of ["cleanShare", "sitFrom", "sitUntil"] as const) {
    if ((judged?.[key] ?? null) === null) why[key] = reason.replace(/\.$/, "");
  }
  const leaveAt = plan?.times.leaveAt ?? null;
  if (plan === null) why.walkIn = "no walk-in is given";
  if (leaveAt === null) why.leaveAt = plan?.walk.why ?? "no walk-in is given";
  const share = judged?.cleanShare ?? null;
  return {
    site: entry.site.content.id,
    verdict: judged?.verdict ?? "not assessed",
    cleanShare: share === null ? null : packShare(share),
    sitFrom: packInstant(judged?.sitFrom ?? null, timezone),
    sitUntil: packInstant(judged?.sitUntil ?? null, timezone),
    walkIn: plan?.walk.id ?? null,
    leaveAt: packInstant(leaveAt, timezone),
    reason,
    why,
  };
}

/** The sites that a trip would choose from and may not sit at in this session, by number. */
export function stoppedRows(sites: readonly SiteInSession[]): PackSession["stopped"] {
  return sites.flatMap(({ site, bar }) =>
    site.isAllowed && bar !== null ? [{ site: site.content.id, check: bar.check, reason: bar.reason }] : [],
  );
}
