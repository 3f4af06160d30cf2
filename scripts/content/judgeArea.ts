import type { AreaDraft } from "./areaDraft.ts";
import { checkCheckedDates } from "./checks/checkCheckedDates.ts";
import { checkClockTimes } from "./checks/checkClockTimes.ts";
import { checkMap } from "./checks/checkMap.ts";
import { checkOrder } from "./checks/checkOrder.ts";
import { checkPlace } from "./checks/checkPlace.ts";
import { checkProse } from "./checks/checkProse.ts";
import { checkSetbacks } from "./checks/checkSetbacks.ts";
import { checkTrips } from "./checks/checkTrips.ts";
import { numbersTwice, repeatedIds } from "./checks/repeatedIds.ts";
import { type SharedIds, unknownIds } from "./checks/unknownIds.ts";
import type { Problem } from "./problem.ts";

/**
 * What is wrong between the files of one area. Files that broke a rule of their own are judged by what could be read of
 * them, so that all problems show in one run.
 */
export function judgeArea(draft: AreaDraft, shared: SharedIds, asOf: string | undefined): Problem[] {
  return [
    ...checkPlace(draft),
    ...checkOrder(draft),
    ...repeatedIds(draft),
    ...numbersTwice(draft),
    ...unknownIds(draft, shared),
    ...checkClockTimes(draft),
    ...checkMap(draft),
    ...checkSetbacks(draft),
    ...checkTrips(draft),
    ...checkProse(draft),
    ...checkCheckedDates(draft, asOf),
  ];
}
