import { type Check, combined, figure } from "../../safety/check.ts";
import { leaveTime } from "../../safety/leaveTime.ts";
import { civilAt, isoInZone, startOfDay } from "../../time/civilTime.ts";
import type { SitTimes } from "./sitTimes.ts";

export interface PlanQuestion {
  subject: string;
  localDate: string;
  timezone: string;
  times: SitTimes;
  /** When the hunter is back from the sit before; null when there is none, or it is not known. */
  backAt: Date | null;
  /** The latest issue of the forecast that the sit was chosen by; null without one. */
  issuedAt: Date | null;
  /** Minutes of the quiet last stretch, part of the walk. */
  quietMin: number;
  /** What of the way to the start of the walk is not known, in words; null when the walk starts at the base. */
  wayToStart: string | null;
}

/**
 * C13: when to leave, with every reason why the plan can not be kept: a start before midnight, waking or leaving before the
 * last sit is over, leaving before the forecast was issued. A walk that starts away from the base is NOT CHECKED: the way
 * to its start is not known.
 */
export function leaveCheck(question: PlanQuestion): Check {
  const { subject, localDate, timezone, times, backAt, quietMin } = question;
  const check = leaveTime({
    subject,
    localDate,
    timezone,
    settledAt: times.settledAt,
    minutes: times.minutes,
    backAt,
  });
  const faults = check.result === "NOT CHECKED" ? [] : planFaults(question, check.result === "CAUTION");
  const { wayToStart } = question;
  const isUnknown = check.result === "NOT CHECKED" || wayToStart !== null;
  const iso = (at: Date | null): string | null => (at === null ? null : isoInZone(at, timezone));
  return {
    ...check,
    result: combined([
      isUnknown ? "NOT CHECKED" : check.result,
      faults.length > 0 || check.result === "CAUTION" ? "CAUTION" : "OK",
    ]),
    text: [check.text.replace(/\.$/, ""), ...faults, wayToStart ?? ""].filter(Boolean).join("; ").concat("."),
    inputs: {
      ...check.inputs,
      quietMin,
      wakeAt: iso(times.wakeAt),
      forecastIssuedAt: iso(question.issuedAt),
    },
  };
}

function planFaults(question: PlanQuestion, isLeaveBad: boolean): string[] {
  const { localDate, timezone, times, backAt, issuedAt } = question;
  const { wakeAt, leaveAt } = times;
  if (leaveAt === null) return [];
  const faults: string[] = [];
  const clock = (at: Date): string => civilAt(at, timezone).clock;
  if (wakeAt !== null && !isLeaveBad) {
    const isEarly = wakeAt < startOfDay(localDate, timezone);
    if (isEarly) faults.push(`waking at ${clock(wakeAt)} is before midnight`);
    if (backAt !== null && wakeAt < backAt) {
      const shortMin = (backAt.getTime() - wakeAt.getTime()) / 60_000;
      faults.push(`waking at ${clock(wakeAt)} is ${figure(shortMin)} min before the last sit is over`);
    }
  }
  if (issuedAt !== null && leaveAt < issuedAt) {
    faults.push(`that is before the forecast was issued at ${clock(issuedAt)}: read it before you choose`);
  }
  return faults;
}
