import { type Check, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** C9: whether the haul line reaches from the seat to the ground with the spare length; a short line is a STOP. */
export function haulLine(
  facts: { subject: string; haulLineM: number | null; platformHeightM: number | null },
  limits: Pick<SafetyLimits, "haulLineSpareM">,
): Check {
  const { subject, haulLineM, platformHeightM } = facts;
  const inputs = { haulLineM, platformHeightM };
  if (platformHeightM === null) {
    return { id: "C9", result: "NOT CHECKED", text: "Platform height not entered.", subject, inputs };
  }
  const neededM = platformHeightM + limits.haulLineSpareM;
  const needed = `at least ${figure(neededM, 1)} m needed`;
  if (haulLineM === null) {
    return {
      id: "C9",
      result: "NOT CHECKED",
      text: `Haul line: ${needed}, length not entered.`,
      subject,
      inputs,
    };
  }
  const isShort = haulLineM < neededM - 1e-9; // 4.2 + 2 is not quite 6.2 in binary
  const text = `Haul line ${figure(haulLineM, 1)} m, ${needed}${isShort ? ": too short" : ""}.`;
  return { id: "C9", result: isShort ? "STOP" : "OK", text, subject, inputs };
}
