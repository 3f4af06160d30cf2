import { isoInZone } from "../time/civilTime.ts";
import { type Check, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** C19: hours awake when the climb down begins. Times in the wrong order are NOT CHECKED. Says nothing of sleep before. */
export function hoursAwake(
  facts: { subject: string; timezone: string; wakeAt: Date | null; downAt: Date | null },
  limits: Pick<SafetyLimits, "awakeCautionH" | "awakeStopH">,
): Check {
  const { subject, timezone, wakeAt, downAt } = facts;
  const iso = (at: Date | null) => (at === null ? null : isoInZone(at, timezone));
  const inputs = { wakeAt: iso(wakeAt), downAt: iso(downAt) };
  const awakeH =
    wakeAt === null || downAt === null ? null : (downAt.getTime() - wakeAt.getTime()) / 3_600_000;
  if (awakeH === null || awakeH < 0) {
    const text = awakeH === null ? "Hours awake not known." : "Hours awake not known: down before waking.";
    return { id: "C19", result: "NOT CHECKED", text, subject, inputs };
  }
  const result = awakeH > limits.awakeStopH ? "STOP" : awakeH > limits.awakeCautionH ? "CAUTION" : "OK";
  const tail = { OK: "", CAUTION: ": tired, go slowly", STOP: ": do not climb" }[result];
  return { id: "C19", result, text: `Awake ${figure(awakeH, 1)} h at climb-down${tail}.`, subject, inputs };
}
