import { clockText, instantOf, roundedInstant } from "../../words/clockText.ts";
import { listWords } from "../../words/listWords.ts";
import { usableText } from "../dayLight.ts";
import type { AreaPack } from "../sheetParts.ts";
import type { Sit } from "./daySits.ts";
import { type TripDayDetails, tripSessionDetails } from "./tripDetails.ts";
import { siteName } from "./tripNames.ts";

/** Light and air at a site on the day, each in its own cell. */
export interface SiteLightRow {
  site: string;
  usable: string;
  sun: string;
  turns: string;
}

/** Usable light, sun and turns of the air at a site on the day; what is not known says why. */
export function siteLightRow(
  area: AreaPack,
  details: TripDayDetails | undefined,
  siteId: string,
): SiteLightRow {
  const { timezone } = area.pack.area;
  const row = details?.sites.find((entry) => entry.site === siteId);
  const site = siteName(area, siteId);
  if (row === undefined) return { site, usable: NOT_WORKED_OUT, sun: NOT_WORKED_OUT, turns: NOT_WORKED_OUT };
  const clock = (at: string, stepMin: number, way: "down" | "up" | "nearest"): string =>
    clockText(roundedInstant(instantOf(at), stepMin, way, timezone), timezone);
  const why = row.why.usableFrom ?? row.why.usableUntil ?? NOT_WORKED_OUT;
  const turns = row.turns.map(
    (turn) => `about ${clock(turn.from, 15, "down")} to ${clock(turn.to, 15, "up")}`,
  );
  return {
    site,
    usable: usableText(row.usableFrom, row.usableUntil, timezone) ?? `not known: ${why}`,
    sun:
      row.sunReachesAt === null || row.sunLeavesAt === null
        ? `none: ${row.why.sunReachesAt ?? row.why.sunLeavesAt ?? NOT_WORKED_OUT}`
        : `about ${clock(row.sunReachesAt, 5, "nearest")} to ${clock(row.sunLeavesAt, 5, "nearest")}`,
    turns: turns.length === 0 ? "no turn worked out" : listWords(turns),
  };
}

const NOT_WORKED_OUT = "not worked out";

/** Minutes in the dark of the sits of a session: "Odell, site 2: about 35 min dark in, light out". */
export function darkTexts(
  area: AreaPack,
  trip: string,
  localDate: string,
  session: string,
  sits: readonly Sit[],
): string[] {
  const details = tripSessionDetails(area, trip, localDate, session);
  return sits.flatMap((sit) => {
    if (sit.stop !== null) return [];
    const chosen = details?.sits.find((row) => row.hunter === sit.hunterId)?.walkIn;
    const walk = details?.sites
      .find((row) => row.site === sit.siteId)
      ?.walks.find((row) => row.walkIn === chosen);
    if (walk === undefined) return [];
    const way = wayText(walk.darkInMin, walk.moonlitInMin, "in");
    const back = wayText(walk.darkOutMin, walk.moonlitOutMin, "out");
    return [`${sit.hunter}, site ${sit.number}: ${way}, ${back}`];
  });
}

/** "about 55 min in by moonlight", "light out", "in not known". */
function wayText(dark: number | null, moonlit: number | null, way: "in" | "out"): string {
  if (dark === null) return `${way} not known`;
  const parts = [
    dark > 0 ? [`about ${upTo5(dark)} min dark`] : [],
    moonlit !== null && moonlit > 0 ? [`about ${upTo5(moonlit)} min by moonlight`] : [],
  ].flat();
  return parts.length === 0 ? `light ${way}` : `${parts.join(" and ")} ${way}`;
}

function upTo5(minutes: number): number {
  return Math.ceil(minutes / 5) * 5;
}
