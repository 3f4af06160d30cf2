import { type Check, combined, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/**
 * C8: the height of a platform. Above the label's limit a STOP; above the usual height a CAUTION unless a reason was
 * entered on purpose.
 */
export function heightCheck(
  facts: {
    subject: string;
    platformHeightM: number | null;
    maxPlatformHeightM: number | null;
    heightReason: string | null;
  },
  limits: Pick<SafetyLimits, "platformUsualMaxM">,
): Check {
  const { subject, platformHeightM, maxPlatformHeightM, heightReason } = facts;
  const inputs = { platformHeightM, maxPlatformHeightM, heightReason };
  if (platformHeightM === null) {
    return { id: "C8", result: "NOT CHECKED", text: "Platform height not entered.", subject, inputs };
  }
  const isOverLabel = maxPlatformHeightM !== null && platformHeightM > maxPlatformHeightM;
  const isHigh = platformHeightM > limits.platformUsualMaxM;
  const result = combined([
    isOverLabel ? "STOP" : maxPlatformHeightM === null ? "NOT CHECKED" : "OK",
    isHigh && heightReason === null ? "CAUTION" : "OK",
  ]);
  const label =
    maxPlatformHeightM === null
      ? "the label's limit is not entered"
      : `the label allows ${figure(maxPlatformHeightM, 1)} m`;
  const usual = `over the usual ${figure(limits.platformUsualMaxM, 1)} m${heightReason === null ? " without a reason" : ", on purpose"}`;
  const text = `Platform at ${figure(platformHeightM, 1)} m; ${label}${isHigh ? `; ${usual}` : ""}.`;
  return { id: "C8", result, text, subject, inputs };
}
