import type { AreaPack } from "../sheetParts.ts";
import type { PackedTrip } from "./packedTrips.ts";
import { type PackTripDay, type PackTripSession, siteStopOf } from "./sessionStops.ts";
import { hunterName, siteName, siteNumber } from "./tripNames.ts";

/** One hunter's place in a session: the owner's choice, or why it may not be taken. */
export interface Sit {
  hunterId: string;
  hunter: string;
  siteId: string;
  number: string;
  site: string;
  reason: string;
  /** why the choice may not be taken, else null */
  stop: string | null;
}

const STOP_WORD = /^STOP\b(?: C\d+)?:?\s*/;

/** Who sits where in a session; a choice that a STOP forbids keeps its row and says so. */
export function sessionSits(
  area: AreaPack,
  { written }: PackedTrip,
  day: PackTripDay,
  session: PackTripSession,
): Sit[] {
  return session.assignment.map((row) => {
    const stop = siteStopOf(area, day, session, row.site);
    const said = STOP_WORD.test(row.reason) ? row.reason.replace(STOP_WORD, "") : null;
    return {
      hunterId: row.hunter,
      hunter: hunterName(written, row.hunter),
      siteId: row.site,
      number: siteNumber(area, row.site),
      site: siteName(area, row.site),
      reason: row.reason,
      stop: said ?? stop?.reason ?? null,
    };
  });
}

/** Sits that may be taken as far as this pack knows. */
export function openSits(sits: readonly Sit[]): Sit[] {
  return sits.filter((sit) => sit.stop === null);
}
