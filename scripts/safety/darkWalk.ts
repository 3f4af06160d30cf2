import { type Check, combined, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/**
 * C12: dark minutes of the way in and the way out. Either way over the limit is a CAUTION for a hunter alone.
 *
 * @param facts.darkInMin   minutes without sun or moon light, from `walkDarkness`
 */
export function darkWalk(
  facts: { subject: string; darkInMin: number | null; darkOutMin: number | null; isAlone: boolean | null },
  limits: Pick<SafetyLimits, "darkAloneCautionMin">,
): Check {
  const { subject, darkInMin, darkOutMin, isAlone } = facts;
  const isLong = [darkInMin, darkOutMin].some((min) => min !== null && min > limits.darkAloneCautionMin);
  const isKnown = darkInMin !== null && darkOutMin !== null;
  const result =
    isLong && isAlone === true
      ? "CAUTION"
      : combined([isKnown ? "OK" : "NOT CHECKED", isLong && isAlone === null ? "NOT CHECKED" : "OK"]);
  const minutes = (min: number | null) => (min === null ? "not known" : `${figure(min)} min`);
  const company = isAlone === null ? "; alone or not is not entered" : isAlone ? ", alone" : ", together";
  const text = `Dark on the way in ${minutes(darkInMin)}, on the way out ${minutes(darkOutMin)}${company}.`;
  return { id: "C12", result, text, subject, inputs: { darkInMin, darkOutMin, isAlone } };
}
