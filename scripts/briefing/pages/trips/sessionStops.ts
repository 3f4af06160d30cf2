import type { PackTrip } from "../../../content/schema/packSchema.ts";
import { orderChecks } from "../../../safety/orderChecks.ts";
import { checkTitle } from "../checkTitle.ts";
import type { AreaPack } from "../sheetParts.ts";
import { siteBar } from "../siteBar.ts";
import { packSite } from "./tripNames.ts";

export type PackTripDay = PackTrip["days"][number];
export type PackTripSession = PackTripDay["sessions"][number];

/** A STOP in words: "Thunder: Thunder is in the forecast." */
export interface StopWords {
  title: string;
  reason: string;
}

/**
 * The STOP that keeps everybody on the ground for a session: a check of the day that is about the session itself. Null when
 * there is none, which promises nothing.
 */
export function sessionStop(day: PackTripDay, session: PackTripSession): StopWords | null {
  const stops = day.checks.filter((check) => check.result === "STOP" && check.subject === session.session);
  const [worst] = orderChecks(stops);
  return worst === undefined ? null : { title: checkTitle(worst.id), reason: worst.text };
}

/**
 * Why nobody may sit at a site in a session: a STOP of the session, the site's own row among the stopped, or its bar in
 * the area. Whatever a ranking or an owner's choice says, this wins.
 */
export function siteStopOf(
  area: AreaPack,
  day: PackTripDay,
  session: PackTripSession,
  siteId: string,
): StopWords | null {
  const row = session.stopped.find((stopped) => stopped.site === siteId);
  if (row !== undefined) return { title: checkTitle(row.check), reason: row.reason };
  const ofSession = sessionStop(day, session);
  if (ofSession !== null) return ofSession;
  const site = packSite(area, siteId);
  if (site === undefined) return { title: "Site", reason: "The site is not in this pack." };
  const bar = siteBar(area, site);
  return bar === null ? null : { title: bar.heading, reason: bar.reason };
}
