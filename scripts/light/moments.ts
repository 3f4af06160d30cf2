import type { Moment, RuleMoment } from "../content/schema/primitives.ts";
import { endOfDay, startOfDay } from "../time/civilTime.ts";
import { clockInstant } from "./clockInstant.ts";
import { ANCHOR_WORDS, type SunAnchor, type SunAnchors } from "./sunAnchors.ts";
import { earlier, later } from "./timeWindows.ts";

/** What a moment of the day is counted from. */
export interface MomentContext {
  localDate: string;
  timezone: string;
  sun: SunAnchors;
  /** Which end of a stretch the moment is: on a clock-change night the reading that shortens the stretch is taken. */
  side: "start" | "end";
  /** Minutes added to every time of the sun, for rules written as "base place plus minutes". */
  plusMin?: number;
  /** First and last light as the area defines them; asked for by sessions only. */
  light?: { firstLight: Date | null; lastLight: Date | null; why: Record<string, string> };
  /** Legal shooting light; asked for by sessions only. */
  shooting?: { start: Date | null; end: Date | null; why: Record<string, string> };
}

/** An instant, or null with the reason in a plain sentence. */
export type ResolvedMoment = { at: Date; why: null } | { at: null; why: string };

/**
 * The instant of a moment of the day: a time of the sun with its offset, a clock time, or for `none` the start or end of
 * the civil day; moved inside its notBefore and notAfter clock limits.
 *
 * @returns `at` null with a reason when the sun's event does not happen, light or hours are not known, or the zone keeps
 *   no summer time in which the clock time is written
 */
export function resolveMoment(moment: Moment | RuleMoment, context: MomentContext): ResolvedMoment {
  const { localDate, timezone, side } = context;
  if (moment.anchor === "none") {
    return {
      at: side === "start" ? startOfDay(localDate, timezone) : endOfDay(localDate, timezone),
      why: null,
    };
  }
  const found = moment.anchor === "clock" ? atClock(moment, context) : atEvent(moment, context);
  if (found.at === null) return found;
  let { at } = found;
  const clockOf = (clock: string) =>
    clockInstant({ localDate, clock, timezone, side, system: "as-in-force" }) ?? at;
  if (moment.notBefore !== undefined) at = later(at, clockOf(moment.notBefore));
  if (moment.notAfter !== undefined) at = earlier(at, clockOf(moment.notAfter));
  return { at, why: null };
}

function atClock(moment: Extract<Moment, { anchor: "clock" }>, context: MomentContext): ResolvedMoment {
  const { localDate, timezone, side } = context;
  const at = clockInstant({
    localDate,
    clock: moment.at,
    timezone,
    side,
    system: moment.clock ?? "as-in-force",
  });
  if (at !== null) return { at, why: null };
  return { at: null, why: `${moment.at} is written in summer time, which this zone does not keep that year` };
}

function atEvent(
  moment: {
    anchor: SunAnchor | "firstLight" | "lastLight" | "shootingStart" | "shootingEnd";
    offsetMin?: number | undefined;
  },
  context: MomentContext,
): ResolvedMoment {
  const { at, why } = eventInstant(moment.anchor, context);
  if (at === null) return { at, why };
  return { at: new Date(at.getTime() + (moment.offsetMin ?? 0) * 60_000), why: null };
}

function eventInstant(
  anchor: SunAnchor | "firstLight" | "lastLight" | "shootingStart" | "shootingEnd",
  { sun, light, shooting, plusMin }: MomentContext,
): ResolvedMoment {
  if (anchor === "firstLight" || anchor === "lastLight") {
    return known(light?.[anchor] ?? null, light?.why[anchor] ?? "first and last light are not known");
  }
  if (anchor === "shootingStart" || anchor === "shootingEnd") {
    const end = anchor === "shootingStart" ? "start" : "end";
    return known(shooting?.[end] ?? null, shooting?.why[end] ?? "legal hours are not confirmed");
  }
  const event = sun[anchor];
  const reason = sun.why[anchor] ?? `there is no ${ANCHOR_WORDS[anchor]} that day`;
  return known(event === null ? null : new Date(event.getTime() + (plusMin ?? 0) * 60_000), reason);
}

function known(at: Date | null, why: string): ResolvedMoment {
  return at === null ? { at: null, why } : { at, why: null };
}
