import { COMPASS_POINTS, type CompassPoint, pointBearingDeg } from "../geo/compassPoints.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { WindClass } from "./slopeSite.ts";
import type { OpenWind } from "./windAtSite.ts";

/** One row of a wind table. */
export interface TableWind {
  windFrom: CompassPoint | "calm";
  class: WindClass;
  wind: OpenWind;
}

/** The 33 winds of every table: for each of the 16 points clockwise from N light then fresh, and calm last. */
export function tableWinds(constants: ModelConstants): TableWind[] {
  const points = COMPASS_POINTS.flatMap((windFrom): TableWind[] => {
    const windFromDeg = pointBearingDeg(windFrom);
    return [
      { windFrom, class: "light", wind: { windFromDeg, windSpeedMps: constants.lightWindMps } },
      { windFrom, class: "fresh", wind: { windFromDeg, windSpeedMps: constants.freshWindMps } },
    ];
  });
  const calm: TableWind = {
    windFrom: "calm",
    class: "calm",
    wind: { windFromDeg: null, windSpeedMps: constants.calmWindMps },
  };
  return [...points, calm];
}
