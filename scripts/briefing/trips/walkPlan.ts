import { type WalkDarkness, walkDarkness } from "../../light/walkDarkness.ts";
import type { SiteInSession } from "./judgedSession.ts";
import { planningMinutes } from "./planningMinutes.ts";
import { plus, type SitTimes, sitTimes } from "./sitTimes.ts";
import type { TripDayLight, TripFrame } from "./tripFrame.ts";
import type { WalkTimes } from "./walkTimes.ts";

/** A sit at a site by one walk-in: its times and how dark the ways are. */
export interface WalkPlan {
  walk: WalkTimes;
  times: SitTimes;
  /** Null when the minutes of the walk are not known. */
  darkIn: WalkDarkness | null;
  darkOut: WalkDarkness | null;
}

/**
 * The plan of a sit; null without a session that day.
 *
 * @param sessionFrom   start of the whole session
 */
export function walkPlan(
  entry: SiteInSession,
  walk: WalkTimes,
  facts: { session: string; sessionFrom: Date; isNewcomer: boolean },
  day: TripDayLight,
  frame: TripFrame,
): WalkPlan | null {
  const times = planTimes(entry, walk, facts, day, frame);
  if (times === null) return null;
  const { leaveAt, atTreeAt, startDownAt, outAt, minutes } = times;
  return {
    walk,
    times,
    darkIn: leaveAt === null ? null : dark(plus(leaveAt, minutes.packUpMin ?? 0), atTreeAt),
    darkOut: outAt === null ? null : dark(startDownAt, outAt),
  };

  function dark(from: Date, to: Date): WalkDarkness {
    const { area, constants } = frame.context;
    const { firstLightSunDeg } = area.content.facts;
    const { darkMoonShare } = constants;
    const { position } = entry.site.content.facts;
    return walkDarkness({ from, to, position }, { darkMoonShare, firstLightSunDeg });
  }
}

/** The times of a sit, also where no walk-in is known; null without a session that day. */
export function planTimes(
  { ends }: SiteInSession,
  walk: WalkTimes | null,
  facts: { session: string; sessionFrom: Date; isNewcomer: boolean },
  day: TripDayLight,
  frame: TripFrame,
): SitTimes | null {
  if (ends === null) return null;
  const { area, constants } = frame.context;
  const { session, sessionFrom, isNewcomer } = facts;
  return sitTimes({
    sessionFrom,
    solarNoon: day.sun.solarNoon,
    ends,
    walk,
    planning: planningMinutes({ area: area.content.facts, session, isNewcomer }, constants),
  });
}
