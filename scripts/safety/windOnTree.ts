import { type Check, combined, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

const KMH_PER_MPS = 3.6;
const ROUNDING_KMH = 1e-6; // a forecast of 29 km/h comes back from metres a second as 28.999...

/**
 * C10: forecast mean wind and gusts for a sit in a tree, 10 m open wind. An unknown gust leaves a mean short of STOP not
 * checked. The limits are defaults: what the tree does under the hunter decides.
 */
export function windOnTree(
  facts: { subject: string; windSpeedMps: number | null; gustMps: number | null },
  limits: Pick<SafetyLimits, "treeWindCautionKmh" | "treeWindStopKmh" | "treeGustStopKmh">,
): Check {
  const { subject, windSpeedMps, gustMps } = facts;
  const meanKmh = windSpeedMps === null ? null : windSpeedMps * KMH_PER_MPS + ROUNDING_KMH;
  const gustKmh = gustMps === null ? null : gustMps * KMH_PER_MPS + ROUNDING_KMH;
  const result = combined([
    meanKmh === null
      ? "NOT CHECKED"
      : meanKmh >= limits.treeWindStopKmh
        ? "STOP"
        : meanKmh >= limits.treeWindCautionKmh
          ? "CAUTION"
          : "OK",
    gustKmh === null ? "NOT CHECKED" : gustKmh >= limits.treeGustStopKmh ? "STOP" : "OK",
  ]);
  const mean = meanKmh === null ? "Mean wind not known" : `Mean ${figure(meanKmh)} km/h`;
  const gusts =
    gustKmh === null ? "gusts not known" : `gusts ${figure(gustKmh)}${meanKmh === null ? " km/h" : ""}`;
  const { treeWindCautionKmh, treeWindStopKmh, treeGustStopKmh } = limits;
  const tail = {
    OK: "",
    "NOT CHECKED": "",
    CAUTION: `: small trees sway; the default limit is ${figure(treeWindCautionKmh)} km/h`,
    STOP: `: do not climb; default limits ${figure(treeWindStopKmh)} km/h, gusts ${figure(treeGustStopKmh)} km/h`,
  }[result];
  return { id: "C10", result, text: `${mean}, ${gusts}${tail}.`, subject, inputs: { windSpeedMps, gustMps } };
}
