import { aboutClock, instantOf } from "../../words/clockText.ts";
import { listWords } from "../../words/listWords.ts";
import { usableText } from "../dayLight.ts";
import { type AreaPack, type FactRow, fact } from "../sheetParts.ts";
import type { Sit } from "./daySits.ts";
import { type TripDayDetails, tripSessionDetails } from "./tripDetails.ts";
import { siteName } from "./tripNames.ts";

/** Usable light, sun and turns of the air at a site on the day, in one line. */
export function siteLightRow(area: AreaPack, details: TripDayDetails | undefined, siteId: string): FactRow {
  const { timezone } = area.pack.area;
  const row = details?.sites.find((site) => site.site === siteId);
  const label = siteName(area, siteId);
  if (row === undefined) return fact(label, "light and air of this day not worked out");
  const about = (at: string, stepMin: number, way: "down" | "up" | "nearest"): string =>
    aboutClock(instantOf(at), stepMin, way, timezone);
  const usable = usableText(row.usableFrom, row.usableUntil, timezone);
  const sun =
    row.sunReachesAt === null || row.sunLeavesAt === null
      ? `sun: ${row.why.sunReachesAt ?? "not known"}`
      : `sun on the ground ${about(row.sunReachesAt, 5, "nearest")} to ${about(row.sunLeavesAt, 5, "nearest")}`;
  const turns = row.turns.map((turn) => `${about(turn.from, 15, "down")} to ${about(turn.to, 15, "up")}`);
  return fact(
    label,
    [
      `usable light ${usable ?? `not known (${row.why.usableFrom ?? row.why.usableUntil ?? "not worked out"})`}`,
      sun,
      turns.length === 0 ? "no turn of the air worked out" : `air turns ${listWords(turns)}`,
    ].join("; "),
  );
}

/** Minutes in the dark of the sits of a session: "Odell to 2: 35 min in, 0 min out". */
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
    const part = (dark: number | null, moonlit: number | null, way: string): string =>
      dark === null
        ? `${way} not known`
        : `${upTo5(dark)} min ${way}${moonlit === null || moonlit === 0 ? "" : ` and ${upTo5(moonlit)} min under the moon`}`;
    return [
      `${sit.hunter}, site ${sit.number}: about ${part(walk.darkInMin, walk.moonlitInMin, "in")}, ${part(walk.darkOutMin, walk.moonlitOutMin, "out")}`,
    ];
  });
}

function upTo5(minutes: number): number {
  return Math.ceil(minutes / 5) * 5;
}
