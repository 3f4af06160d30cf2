import type { Check } from "../../safety/check.ts";
import type { HunterSit } from "./hunterSits.ts";
import type { JudgedSession } from "./judgedSession.ts";
import { rankedSites } from "./rankedSites.ts";
import type { TripDayLight, TripFrame } from "./tripFrame.ts";
import { type WalkPlan, walkPlan } from "./walkPlan.ts";
import { chosenWalk } from "./walkTimes.ts";

/** The ways to a ranked site in one session. */
export interface SitePlans {
  site: string;
  /** Every walk-in, in the order written. */
  walks: WalkPlan[];
  /** The one to take: that of the owner's sit there, else the quickest from the base. Null without any. */
  chosen: WalkPlan | null;
}

/** One session of a day with the sits in it and the plans of the sites that are ranked. */
export interface PlannedSession {
  judged: JudgedSession;
  sits: HunterSit[];
  /** C24 of each pair of seats, the session named. */
  apart: Check[];
  plans: SitePlans[];
}

/**
 * When to leave for each ranked site by each of its walk-ins. Where nobody is assigned the set-up minutes are those of the
 * slowest hunter of the trip.
 */
export function sitePlans(
  judged: JudgedSession,
  sits: readonly HunterSit[],
  day: TripDayLight,
  frame: TripFrame,
): SitePlans[] {
  const { from: sessionFrom, id: session } = judged.window;
  if (sessionFrom === null) return [];
  const { hunters, base } = frame.trip.facts;
  return rankedSites(judged.sites).map((entry): SitePlans => {
    const there = sits.filter((sit) => sit.entry === entry);
    const isNewcomer = (there.length > 0 ? there.map(({ hunter }) => hunter) : hunters).some(
      ({ newcomer }) => newcomer,
    );
    const { id } = entry.site.content;
    const walks = entry.site.walks.flatMap((walk) => {
      const plan = walkPlan(entry, walk, { session, sessionFrom, isNewcomer }, day, frame);
      return plan === null ? [] : [plan];
    });
    const written = there[0]?.walk?.id ?? null;
    const chosen = chosenWalk(entry.site.walks, written, base ?? null);
    return { site: id, walks, chosen: walks.find(({ walk }) => walk === chosen) ?? null };
  });
}
