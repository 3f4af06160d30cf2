import type { ModelConstants } from "../../air/modelConstants.ts";
import type { AreaFile } from "../../content/schema/areaSchema.ts";

/** The minutes that a schedule is counted back with, the walk apart. */
export interface PlanningMinutes {
  wakeMin: number;
  packUpMin: number;
  coolDownMin: number;
  setUpMin: number;
  settleMin: number;
  /** Settled this long before the session starts. */
  seatBeforeMin: number;
}

/** The planning minutes of a session: the area's own, else those of the model. A newcomer is never quicker than the model's. */
export function planningMinutes(
  facts: { area: AreaFile; session: string; isNewcomer: boolean },
  constants: ModelConstants,
): PlanningMinutes {
  const { area, session, isNewcomer } = facts;
  const usualBeforeMin =
    session === "morning" ? constants.seatBeforeMorningMin : constants.seatBeforeOtherMin;
  const setUpMin = area.setUpMin ?? constants.setUpMin;
  return {
    wakeMin: area.wakeMin ?? constants.wakeMin,
    packUpMin: constants.packUpMin,
    coolDownMin: constants.coolDownMin,
    setUpMin: isNewcomer ? Math.max(setUpMin, constants.setUpNewcomerMin) : setUpMin,
    settleMin: area.settleMin ?? constants.settleMin,
    seatBeforeMin: area.seatBeforeMin?.[session] ?? usualBeforeMin,
  };
}
