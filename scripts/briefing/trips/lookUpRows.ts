import { sessionTableRows } from "../../air/sessionTableRows.ts";
import type { DetailsFile } from "../../content/schema/detailsSchema.ts";
import { civilAt } from "../../time/civilTime.ts";
import { packRange } from "../composePhases.ts";
import { tableStretch } from "../daySessions.ts";
import { packInstant } from "../packInstant.ts";
import { packShare } from "../packNumbers.ts";
import { approachesOf, localNotesOf } from "../siteAir.ts";
import type { JudgedSession } from "./judgedSession.ts";
import type { TripFrame } from "./tripFrame.ts";

type LookUp = NonNullable<DetailsFile["trips"]>[number]["days"][number]["sessions"][number]["lookUp"];

/**
 * The wind table of the very day for a session without a forecast: the 33 winds for each site that nothing bars, clear sky.
 * Null where there is a forecast, or no such session.
 */
export function lookUpRows(judged: JudgedSession, localDate: string, frame: TripFrame): LookUp {
  const { window, forecast } = judged;
  const stretch = tableStretch(window);
  if (forecast.rows.length > 0 || stretch === null) return null;
  const { timezone, shapes, constants } = frame.context;
  return judged.sites
    .filter(({ site, bar }) => site.isAllowed && bar === null)
    .flatMap(({ site }) =>
      sessionTableRows({
        site: site.slope,
        air: site.airOn(localDate, []),
        airWhy: site.airWhy,
        sessions: [
          { session: window.id, ...stretch, approaches: approachesOf(site.content, window.id, shapes) },
        ],
        localNotes: localNotesOf(site.content, localDate, timezone),
        constants,
        clockText: (at) => civilAt(at, timezone).clock,
      }).map((row) => ({
        site: site.content.id,
        windFrom: row.windFrom,
        class: row.class,
        verdict: row.verdict,
        cleanShare: row.cleanShare === null ? null : packShare(row.cleanShare),
        sitFrom: packInstant(row.sitFrom, timezone),
        sitUntil: packInstant(row.sitUntil, timezone),
        sitFromRange: packRange(row.sitFromRange, timezone),
        sitUntilRange: packRange(row.sitUntilRange, timezone),
        reason: row.reason,
        localNote: row.localNote,
      })),
    );
}
