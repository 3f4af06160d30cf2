import type { Check } from "./check.ts";

/** C28: a fire ban on the day. It changes by the day, so the answer is written by pen: unknown keeps its blank. */
export function fireBan(facts: { subject: string; isBanned: boolean | null }): Check {
  const { subject, isBanned } = facts;
  const inputs = { isBanned };
  if (isBanned === null) {
    return {
      id: "C28",
      result: "NOT CHECKED",
      text: "Fire ban today: not known, ask and write it in.",
      subject,
      inputs,
    };
  }
  return isBanned
    ? { id: "C28", result: "CAUTION", text: "Fire ban: no flame of any kind.", subject, inputs }
    : { id: "C28", result: "OK", text: "No fire ban.", subject, inputs };
}
