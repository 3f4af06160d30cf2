import { type LeaveMinutes, leaveAt } from "../../safety/leaveTime.ts";
import { startDownAt } from "../../safety/startDown.ts";
import type { PlanningMinutes } from "./planningMinutes.ts";
import type { WalkTimes } from "./walkTimes.ts";

/** The times of one sit by one walk-in, whole minutes, all on the safe side: there earlier, down earlier. */
export interface SitTimes {
  /** Null where the sit is later than the day's solar noon: nobody is woken for it. */
  wakeAt: Date | null;
  /** Null when the minutes of the walk are not known. */
  leaveAt: Date | null;
  atTreeAt: Date;
  aloftAt: Date;
  settledAt: Date;
  startDownAt: Date;
  /** Null when the minutes of the walk are not known. */
  outAt: Date | null;
  minutes: LeaveMinutes;
}

/** What the end of a sit is made of. */
export interface SitEnds {
  /** The end of legal light in the session; null where the hours are not confirmed. */
  legalEnd: Date | null;
  /** The end of the sit by air and session, whichever comes first. */
  ownLimit: Date;
}

/** A schedule counted back from the start of a session, and on from its end. */
export function sitTimes(facts: {
  sessionFrom: Date;
  solarNoon: Date;
  ends: SitEnds;
  walk: WalkTimes | null;
  planning: PlanningMinutes;
}): SitTimes {
  const { sessionFrom, solarNoon, ends, walk, planning } = facts;
  const { packUpMin, coolDownMin, setUpMin, settleMin } = planning;
  const slowInMin = walk?.inMin?.[1] ?? null;
  const minutes: LeaveMinutes = {
    packUpMin,
    walkMin: slowInMin === null || walk === null ? null : slowInMin + walk.quietMin,
    coolDownMin,
    setUpMin,
    settleMin,
  };
  const settledAt = wholeMinute(plus(sessionFrom, -planning.seatBeforeMin));
  const leave = leaveAt(settledAt, minutes);
  const aloftAt = plus(settledAt, -settleMin);
  const down = wholeMinute(startDownAt(ends.legalEnd, ends.ownLimit, 0) ?? ends.ownLimit);
  const slowOutMin = walk?.outMin?.[1] ?? null;
  return {
    wakeAt: leave === null || settledAt >= solarNoon ? null : plus(leave, -planning.wakeMin),
    leaveAt: leave,
    atTreeAt: plus(aloftAt, -setUpMin - coolDownMin),
    aloftAt,
    settledAt,
    startDownAt: down,
    outAt: slowOutMin === null ? null : plus(down, slowOutMin),
    minutes,
  };
}

export function plus(at: Date, minutes: number): Date {
  return new Date(at.getTime() + minutes * 60_000);
}

function wholeMinute(at: Date): Date {
  return new Date(Math.floor(at.getTime() / 60_000) * 60_000);
}
