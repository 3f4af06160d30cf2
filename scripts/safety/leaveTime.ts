import { civilAt, isoInZone, startOfDay } from "../time/civilTime.ts";
import { type Check, figure, listed } from "./check.ts";

/** Minutes between leaving and sitting still, in the order they pass; null = not known. */
export interface LeaveMinutes {
  packUpMin: number | null;
  /** The slow end of the walk, the quiet last stretch included. */
  walkMin: number | null;
  coolDownMin: number | null;
  setUpMin: number | null;
  settleMin: number | null;
}

/** When to start packing up, so as to be still at `settledAt`; null when a part is not known. */
export function leaveAt(settledAt: Date, minutes: LeaveMinutes): Date | null {
  const parts = Object.values(minutes) as (number | null)[];
  if (parts.some((min) => min === null)) return null;
  const sumMin = parts.reduce<number>((sum, min) => sum + (min ?? 0), 0);
  return new Date(settledAt.getTime() - sumMin * 60_000);
}

/**
 * C13: the time to leave, counted back from sitting still. A start before midnight, or before the party is back from its
 * last sit, is a CAUTION: the plan can not be kept.
 *
 * @param facts.backAt   when the hunter is back from the sit before; null when there is none
 */
export function leaveTime(facts: {
  subject: string;
  localDate: string;
  timezone: string;
  settledAt: Date | null;
  minutes: LeaveMinutes;
  backAt: Date | null;
}): Check {
  const { subject, localDate, timezone, settledAt, minutes, backAt } = facts;
  const iso = (at: Date | null) => (at === null ? null : isoInZone(at, timezone));
  const clock = (at: Date) => civilAt(at, timezone).clock;
  const leave = settledAt === null ? null : leaveAt(settledAt, minutes);
  const inputs = { ...minutes, settledAt: iso(settledAt), backAt: iso(backAt), leaveAt: iso(leave) };
  if (settledAt === null || leave === null) {
    const missing = Object.entries(minutes)
      .filter(([, min]) => min === null)
      .map(([name]) => MINUTE_WORDS[name] ?? name);
    const all = settledAt === null ? ["time to be still", ...missing] : missing;
    return {
      id: "C13",
      result: "NOT CHECKED",
      text: `Leaving time not known: ${listed(all)} not known.`,
      subject,
      inputs,
    };
  }
  const sumMin = (settledAt.getTime() - leave.getTime()) / 60_000;
  const plan = `Leave by ${clock(leave)} to be still at ${clock(settledAt)}: ${figure(sumMin)} min`;
  const isBeforeMidnight = leave.getTime() < startOfDay(localDate, timezone).getTime();
  const isBeforeBack = backAt !== null && leave.getTime() < backAt.getTime();
  const problem = isBeforeMidnight
    ? "; that is before midnight"
    : isBeforeBack
      ? `; back from the last sit only at ${clock(backAt)}`
      : "";
  return {
    id: "C13",
    result: problem === "" ? "OK" : "CAUTION",
    text: `${plan}${problem}.`,
    subject,
    inputs,
  };
}

const MINUTE_WORDS: Readonly<Record<string, string>> = {
  packUpMin: "pack-up",
  walkMin: "walk",
  coolDownMin: "cool-down",
  setUpMin: "set-up",
  settleMin: "settling",
};
