import type { LocalNote } from "../air/localNote.ts";
import type { ModelConstants } from "../air/modelConstants.ts";
import type { Approach } from "../air/reachShare.ts";
import {
  type SlopeAirDay,
  type SlopeAirQuestion,
  type SlopePhases,
  slopeAirDay,
  slopePhases,
} from "../air/slopeAirDay.ts";
import { CLEAR_SKY, type SlopeSite, type WeatherRow } from "../air/slopeSite.ts";
import type { SiteContent } from "../content/areaContent.ts";
import type { CompassPoint } from "../geo/compassPoints.ts";
import { dayOfYear, endOfDay, resolveClock, startOfDay } from "../time/civilTime.ts";
import { approachOf } from "./approachSector.ts";
import { type MapShape, shapeById } from "./mapShapes.ts";
import type { SunTableOf } from "./sunTables.ts";

/**
 * The slope air of a site on a local day under the weather given, a clear sky without any, with all members of the ensemble: for
 * verdicts.
 */
export function airOfDay(...asked: AirOfDay): SlopeAirDay {
  return slopeAirDay(questionOf(...asked));
}

/** The phases of the same day alone: for strips and months. */
export function phasesOfDay(...asked: AirOfDay): SlopePhases {
  return slopePhases(questionOf(...asked));
}

type AirOfDay = Parameters<typeof questionOf>;

function questionOf(
  site: SlopeSite,
  localDate: string,
  timezone: string,
  weather: readonly WeatherRow[],
  sunOf: SunTableOf,
  constants: ModelConstants,
): SlopeAirQuestion {
  return {
    site,
    sun: sunOf(localDate),
    dayStart: startOfDay(localDate, timezone),
    dayEnd: endOfDay(localDate, timezone),
    dayOfYear: dayOfYear(localDate),
    weather: weather.length === 0 ? CLEAR_SKY : weather,
    constants,
  };
}

/** The approaches of a session as sectors; one that has neither bearings nor a drawn feature near is left out. */
export function approachesOf(site: SiteContent, session: string, shapes: readonly MapShape[]): Approach[] {
  return (site.facts.approaches[session] ?? []).flatMap((approach) => {
    const shape = approach.along === undefined ? null : shapeById(shapes, approach.along);
    const found = approachOf(approach, site.facts.position, shape);
    return found === null ? [] : [found];
  });
}

/** A site's local notes on the day that is computed: clock times become instants. */
export function localNotesOf(site: SiteContent, localDate: string, timezone: string): LocalNote[] {
  return site.facts.localNotes.map((note) => ({
    session: note.session,
    phase: note.phase ?? null,
    windFrom: (note.windFrom as CompassPoint | "calm" | undefined) ?? null,
    class: note.class ?? null,
    verdict: note.verdict ?? null,
    turnsAt: note.turnsAt === undefined ? null : clockOn(localDate, note.turnsAt, timezone),
    note: note.note,
    seenOn: note.seenOn,
  }));
}

/** On a clock-change night the first of two equal times; null for one that the clock skips. */
function clockOn(localDate: string, clock: string, timezone: string): Date | null {
  const found = resolveClock(localDate, clock, timezone);
  if (found.kind === "one") return found.at;
  return found.kind === "repeated" ? found.first : null;
}
