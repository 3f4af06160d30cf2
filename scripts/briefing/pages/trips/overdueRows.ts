import { clockText, instantOf, roundedInstant } from "../../words/clockText.ts";
import { dayMonthText, weekdayName } from "../../words/dateText.ts";
import { sentenceStart } from "../../words/listWords.ts";
import type { AreaPack } from "../sheetParts.ts";
import { sessionSits } from "./daySits.ts";
import type { PackedTrip } from "./packedTrips.ts";
import type { PackTripSession } from "./sessionStops.ts";
import { hunterNames } from "./tripNames.ts";

/** Back by, start asking, call for help for people who are out together; null is a blank for the pen. */
export interface OverdueRow {
  day: string;
  session: string;
  who: string;
  out: string | null;
  ask: string | null;
  call: string | null;
}

type What = PackTripSession["schedule"][number]["what"];

/** The overdue times of every session of a trip that has people out, in order of time. */
export function overdueRows(area: AreaPack, packed: PackedTrip): OverdueRow[] {
  return packed.trip.days.flatMap((day) =>
    day.sessions.flatMap((session) => {
      const sits = sessionSits(area, packed, day, session);
      const groups = new Map<string, string[]>();
      for (const sit of sits) {
        if (sit.stop !== null) continue;
        const key = JSON.stringify(
          (["out", "ask", "call"] as const).map((what) => timeOf(area, session, what, sit.hunterId)),
        );
        groups.set(key, [...(groups.get(key) ?? []), sit.hunterId]);
      }
      return [...groups].map(([key, who]): OverdueRow => {
        const [out, ask, call] = JSON.parse(key) as [string | null, string | null, string | null];
        const date = day.localDate;
        return {
          day: `${weekdayName(date).slice(0, 3)} ${dayMonthText(date, area.pack.area.locale)}`,
          session: sentenceStart(session.session),
          who: hunterNames(packed.written, who),
          out: out === null ? null : `about ${out}`,
          ask,
          call,
        };
      });
    }),
  );
}

/** A clock time of a hunter, on 5 min, later never earlier than the schedule says. */
function timeOf(area: AreaPack, session: PackTripSession, what: What, hunter: string): string | null {
  const row = session.schedule.find((entry) => entry.what === what && entry.who.includes(hunter));
  if (row === undefined) return null;
  const { timezone } = area.pack.area;
  const at = instantOf(row.at);
  return clockText(row.about ? roundedInstant(at, 5, "up", timezone) : at, timezone);
}
