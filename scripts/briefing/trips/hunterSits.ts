import type { WalkDarkness } from "../../light/walkDarkness.ts";
import type { Check } from "../../safety/check.ts";
import { hoursAwake } from "../../safety/hoursAwake.ts";
import { gearChecks } from "./gearChecks.ts";
import type { JudgedSession, SiteInSession } from "./judgedSession.ts";
import type { SitTimes } from "./sitTimes.ts";
import type { Hunter, TripDayLight, TripFrame } from "./tripFrame.ts";
import { planTimes, walkPlan } from "./walkPlan.ts";
import { chosenWalk, type WalkTimes } from "./walkTimes.ts";

/** What a hunter has behind him when a session begins. */
export interface HunterBefore {
  /** Out from the last sit that was kept; null when its time out is not known. */
  backAt: Date | null;
  /** The day of that sit and the waking before the day's first sit; null when nobody was woken for it. */
  localDate: string;
  wakeAt: Date | null;
}

/** A sit that the owner wrote, as it can be kept. */
export interface HunterSit {
  hunter: Hunter;
  entry: SiteInSession;
  /** C5 to C8 of hunter and stand there. */
  gear: Check[];
  /** C19; null where the sit does not come to it. */
  awake: Check | null;
  /** Why the sit is stopped, "STOP" and the check's words; null = kept, with times. */
  stop: string | null;
  walk: WalkTimes | null;
  /** Null when stopped. */
  times: SitTimes | null;
  darkIn: WalkDarkness | null;
  darkOut: WalkDarkness | null;
  before: HunterBefore | null;
  wakeAt: Date | null;
}

/**
 * The sits written for a session in the order of the trip's hunters: each kept, or stopped by the first STOP of the site,
 * the weather, the law, the hunter's kit or the hours awake. A stopped sit is never replaced by another.
 */
export function hunterSits(
  judged: JudgedSession,
  day: TripDayLight,
  before: ReadonlyMap<string, HunterBefore>,
  frame: TripFrame,
): HunterSit[] {
  const { hunters, sits } = frame.trip.facts;
  return hunters.flatMap((hunter) => {
    const sit = sits.find(
      (written) =>
        written.hunter === hunter.id &&
        written.localDate === day.localDate &&
        written.session === judged.window.id,
    );
    const entry = judged.sites.find(({ site }) => site.content.id === sit?.site);
    if (sit === undefined || entry === undefined) return [];
    return [hunterSit(hunter, entry, sit.walkIn ?? null, judged, day, before.get(hunter.id) ?? null, frame)];
  });
}

function hunterSit(
  hunter: Hunter,
  entry: SiteInSession,
  written: string | null,
  { window }: JudgedSession,
  day: TripDayLight,
  before: HunterBefore | null,
  frame: TripFrame,
): HunterSit {
  const gear = gearChecks(hunter, entry.site.content, day.localDate, frame);
  const walk = chosenWalk(entry.site.walks, written, frame.trip.facts.base ?? null);
  const sit: HunterSit = {
    ...{
      hunter,
      entry,
      gear,
      walk,
      before,
      awake: null,
      times: null,
      darkIn: null,
      darkOut: null,
      wakeAt: null,
    },
    stop: stopWords(entry, gear, window.from === null ? (window.why.from ?? "No such session.") : null),
  };
  if (sit.stop !== null || window.from === null) return sit;
  const facts = { session: window.id, sessionFrom: window.from, isNewcomer: hunter.newcomer };
  const plan = walk === null ? null : walkPlan(entry, walk, facts, day, frame);
  const found = plan?.times ?? planTimes(entry, null, facts, day, frame);
  const isUp = before !== null && before.localDate === day.localDate;
  const times = found === null || !isUp ? found : { ...found, wakeAt: null };
  const wakeAt = isUp ? before.wakeAt : (times?.wakeAt ?? null);
  const awake = hoursAwake(
    { subject: hunter.id, timezone: frame.context.timezone, wakeAt, downAt: times?.startDownAt ?? null },
    frame.limits,
  );
  if (awake.result === "STOP") return { ...sit, awake, stop: `STOP ${awake.id}: ${awake.text}` };
  return {
    ...sit,
    awake,
    times,
    darkIn: plan?.darkIn ?? null,
    darkOut: plan?.darkOut ?? null,
    wakeAt,
  };
}

function stopWords(entry: SiteInSession, gear: readonly Check[], noSession: string | null): string | null {
  if (noSession !== null) return `STOP: ${noSession}`;
  if (entry.bar !== null) return `STOP ${entry.bar.check}: ${entry.bar.reason}`;
  const stop = gear.find(({ result }) => result === "STOP");
  return stop === undefined ? null : `STOP ${stop.id}: ${stop.text}`;
}
