import { type Drift, driftAt } from "./driftAt.ts";
import { type LocalNote, type NoteCell, turnNote } from "./localNote.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { SessionWindow } from "./sessionSteps.ts";
import type { SlopeAirDay } from "./slopeAirDay.ts";
import type { SlopeSite } from "./slopeSite.ts";
import type { SiteAir } from "./weighedDrift.ts";
import type { SiteWind } from "./windAtSite.ts";
import { withTurnMoved } from "./withTurnMoved.ts";

export interface SessionAirQuestion {
  site: SlopeSite;
  /** The day as computed, without local notes; null when the slope is not known, and then `airWhy` says so. */
  air: SlopeAirDay | null;
  airWhy: string | null;
  localNotes: readonly LocalNote[];
  constants: ModelConstants;
}

/** The air of a site on a day, turned by the local note that names this session and wind; null when it is not known. */
export function airOfSession(
  question: SessionAirQuestion,
  session: SessionWindow,
  wind: Pick<NoteCell, "windFrom" | "class">,
): SiteAir | null {
  const { air, site, constants } = question;
  if (!air || (air.directions.fallToDeg === null && site.landform !== "crest" && site.landform !== "flat"))
    return null;
  const note = turnNote(question.localNotes, {
    session: session.session,
    windFrom: wind.windFrom,
    class: wind.class,
  });
  const day = note?.turnsAt ? withTurnMoved(air, session, note.turnsAt, constants) : air;
  return { landform: site.landform, directions: day.directions, members: day.members };
}

/** Drift by the general wind alone, where the slope air is not known. */
export function generalWindDrift(wind: SiteWind, constants: ModelConstants): Drift {
  return driftAt(wind, { phase: "turning", speedMps: 0, toDeg: null, landform: "flat" }, constants);
}

/** Why calm and light wind can not be assessed without the slope air. */
export function unknownAirReason(question: Pick<SessionAirQuestion, "air" | "airWhy">): string {
  const why = question.airWhy ?? question.air?.directions.why ?? "the slope is not known";
  return `The slope air is not known: ${why}.`;
}
