import { civilAt, isoInZone } from "../time/civilTime.ts";
import { type Check, combined } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

type OverdueLimits = Pick<
  SafetyLimits,
  "askAfterMin" | "callAfterMin" | "askAfterAloneMin" | "callAfterAloneMin"
>;

export interface OverduePlan {
  outAt: Date | null;
  /** null = not known: the shorter times of a hunter alone are taken. */
  isAlone: boolean | null;
  /** The owner's own minutes; null takes the default. */
  askAfterMin: number | null;
  callAfterMin: number | null;
}

/** When someone at home starts asking and when they call for help; null when the time out is not known. */
export function overdueTimes(plan: OverduePlan, limits: OverdueLimits): { askAt: Date; callAt: Date } | null {
  if (plan.outAt === null) return null;
  const isTogether = plan.isAlone === false;
  const askMin = plan.askAfterMin ?? (isTogether ? limits.askAfterMin : limits.askAfterAloneMin);
  const callMin = plan.callAfterMin ?? (isTogether ? limits.callAfterMin : limits.callAfterAloneMin);
  const after = (minutes: number) => new Date(plan.outAt!.getTime() + minutes * 60_000);
  return { askAt: after(askMin), callAt: after(callMin) };
}

/** C15: the two overdue times as clock times. A call that does not come after the asking is a CAUTION. */
export function overdue(
  facts: OverduePlan & { subject: string; timezone: string },
  limits: OverdueLimits,
): Check {
  const { subject, timezone, outAt, isAlone, askAfterMin, callAfterMin } = facts;
  const times = overdueTimes(facts, limits);
  const iso = (at: Date | undefined | null) => (at ? isoInZone(at, timezone) : null);
  const inputs = {
    outAt: iso(outAt),
    isAlone,
    askAfterMin,
    callAfterMin,
    askAt: iso(times?.askAt),
    callAt: iso(times?.callAt),
  };
  if (times === null || outAt === null) {
    return {
      id: "C15",
      result: "NOT CHECKED",
      text: "Overdue times not known: no time out.",
      subject,
      inputs,
    };
  }
  const clock = (at: Date) => civilAt(at, timezone).clock;
  const isCallLate = times.callAt.getTime() > times.askAt.getTime();
  const result = combined([isAlone === null ? "NOT CHECKED" : "OK", isCallLate ? "OK" : "CAUTION"]);
  const company = isAlone === null ? "; alone or not is not entered" : "";
  const order = isCallLate ? "" : "; the call must come after the asking";
  const text = `Out by ${clock(outAt)}, start asking at ${clock(times.askAt)}, call for help at ${clock(times.callAt)}${company}${order}.`;
  return { id: "C15", result, text, subject, inputs };
}
