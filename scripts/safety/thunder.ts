import type { Check } from "./check.ts";

/** C11: any thunder in the forecast of a sit is a STOP for climbing. */
export function thunder(facts: { subject: string; thunder: boolean | null }): Check {
  const { subject, thunder: isForecast } = facts;
  const inputs = { thunder: isForecast };
  if (isForecast === null) {
    return {
      id: "C11",
      result: "NOT CHECKED",
      text: "Thunder is not in the forecast given.",
      subject,
      inputs,
    };
  }
  return isForecast
    ? { id: "C11", result: "STOP", text: "Thunder forecast: do not climb.", subject, inputs }
    : { id: "C11", result: "OK", text: "No thunder forecast.", subject, inputs };
}
