import { isOlderThanMonths } from "../light/isOlderThanMonths.ts";
import { isoInZone } from "../time/civilTime.ts";
import { type Check, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** C26 for a fact with a source: checked over `factOldMonths` before the day shown is a CAUTION, not dated NOT CHECKED. */
export function factAge(
  facts: { subject: string; checkedOn: string | null; shownOn: string },
  limits: Pick<SafetyLimits, "factOldMonths">,
): Check {
  const { subject, checkedOn, shownOn } = facts;
  const inputs = { checkedOn, shownOn };
  if (checkedOn === null) {
    return { id: "C26", result: "NOT CHECKED", text: "No date of checking entered.", subject, inputs };
  }
  const isOld = isOlderThanMonths(checkedOn, shownOn, limits.factOldMonths);
  const text = isOld
    ? `Old: last checked on ${checkedOn}, over ${figure(limits.factOldMonths)} months before ${shownOn}.`
    : `Last checked on ${checkedOn}.`;
  return { id: "C26", result: isOld ? "CAUTION" : "OK", text, subject, inputs };
}

/** C26 for a forecast: issued over `forecastOldH` before the session starts is a CAUTION, unknown NOT CHECKED. */
export function forecastAge(
  facts: { subject: string; timezone: string; issuedAt: Date | null; sessionStart: Date | null },
  limits: Pick<SafetyLimits, "forecastOldH">,
): Check {
  const { subject, timezone, issuedAt, sessionStart } = facts;
  const iso = (at: Date | null) => (at === null ? null : isoInZone(at, timezone));
  const inputs = { issuedAt: iso(issuedAt), sessionStart: iso(sessionStart) };
  if (issuedAt === null || sessionStart === null) {
    const text = issuedAt === null ? "No forecast." : "Age of the forecast not known: no session start.";
    return { id: "C26", result: "NOT CHECKED", text, subject, inputs };
  }
  const ageH = (sessionStart.getTime() - issuedAt.getTime()) / 3_600_000;
  const isOld = ageH > limits.forecastOldH;
  const age = `issued ${figure(Math.max(0, ageH), 1)} h before the session`;
  return {
    id: "C26",
    result: isOld ? "CAUTION" : "OK",
    text: isOld ? `Old forecast, ${age}.` : `Forecast ${age}.`,
    subject,
    inputs,
  };
}
