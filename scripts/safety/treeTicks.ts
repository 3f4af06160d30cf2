import type { SiteFile } from "../content/schema/siteSchema.ts";
import { isOlderThanMonths } from "../light/isOlderThanMonths.ts";
import { type Check, combined, figure, listed } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

export type TreeCondition = NonNullable<SiteFile["tree"]>["condition"];

type TreeTick = Exclude<keyof TreeCondition, "leanDeg" | "checkedOn" | "checkedBy">;

const TICK_WORDS: Readonly<Record<TreeTick, string>> = {
  dead: "dead or dying",
  deadLimbs: "dead limb overhead",
  hollow: "hollow or cracked",
  fungus: "fungus",
  canker: "canker",
  roots: "roots or soil lifted",
  lean: "fresh lean",
  bark: "loose or slick bark",
  twinStem: "twin stem",
  nestOrWires: "nest or wires",
};

const TREE_TICKS = Object.keys(TICK_WORDS) as TreeTick[];

/**
 * C23: the ten answers about a tree, its lean, and when and by whom it was looked at. Any fault is a STOP that nothing
 * outweighs; an open answer, an unknown lean or looker, or a list older than `ticksOldMonths` is NOT CHECKED. The person on
 * the ground decides.
 *
 * @param facts.condition   null = no tree entered
 */
export function treeTicks(
  facts: { subject: string; condition: TreeCondition | null; onDate: string },
  limits: Pick<SafetyLimits, "leanCautionDeg" | "leanStopDeg" | "ticksOldMonths">,
): Check {
  const { subject, condition, onDate } = facts;
  if (condition === null) {
    return { id: "C23", result: "NOT CHECKED", text: "No tree entered.", subject, inputs: { onDate } };
  }
  const { checkedOn, checkedBy } = condition;
  const leanDeg = condition.leanDeg ?? null;
  const faults: string[] = TREE_TICKS.filter((tick) => condition[tick] === "fault").map(
    (tick) => TICK_WORDS[tick],
  );
  if (leanDeg !== null && leanDeg > limits.leanStopDeg) faults.push(`leans ${figure(leanDeg, 1)}°`);
  const open = TREE_TICKS.filter((tick) => condition[tick] === null).length;
  const missing = [
    open > 0 ? `${open} of ${TREE_TICKS.length} answers` : "",
    leanDeg === null ? "lean" : "",
    checkedOn === null ? "date" : "",
    checkedBy === null ? "who looked" : "",
  ].filter(Boolean);
  const isOld = checkedOn !== null && isOlderThanMonths(checkedOn, onDate, limits.ticksOldMonths);
  const isEarly = checkedOn !== null && checkedOn > onDate;
  const isLeaning = leanDeg !== null && leanDeg > limits.leanCautionDeg;
  const result = combined([
    faults.length > 0 ? "STOP" : "OK",
    missing.length > 0 || isOld || isEarly ? "NOT CHECKED" : "OK",
    isLeaning ? "CAUTION" : "OK",
  ]);
  const ticks = Object.fromEntries(TREE_TICKS.map((tick) => [tick, condition[tick]]));
  return {
    id: "C23",
    result,
    text: textOf(),
    subject,
    inputs: { ...ticks, leanDeg, checkedOn, checkedBy, onDate },
  };

  function textOf(): string {
    if (faults.length > 0)
      return `Tree: ${listed(faults.slice(0, 3))}${faults.length > 3 ? " and more" : ""}.`;
    if (missing.length > 0) return `Tree list incomplete: ${listed(missing)} not entered.`;
    if (isOld)
      return `Tree last looked at on ${checkedOn}, over ${figure(limits.ticksOldMonths)} months before.`;
    if (isEarly) return `Tree list is dated ${checkedOn}, after ${onDate}.`;
    const lean = isLeaning ? `leans ${figure(leanDeg, 1)}°, ` : "";
    return `Tree: ${lean}ten answers clear on ${checkedOn}.`;
  }
}
