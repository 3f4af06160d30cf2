import type { Stand } from "../../scripts/content/schema/sharedDataSchema.ts";
import type { SiteFile } from "../../scripts/content/schema/siteSchema.ts";
import type { SafetyLimits } from "../../scripts/safety/safetyLimits.ts";

/** Limits of the checks: common practice and defaults of the project, no published source, unless a check names one. */
export const limits: SafetyLimits = {
  taperMinMmPerM: 5,
  taperMaxMmPerM: 15,
  loadCautionShare: 0.9,
  platformUsualMaxM: 6,
  haulLineSpareM: 2,
  treeWindCautionKmh: 29,
  treeWindStopKmh: 39,
  treeGustStopKmh: 50,
  darkAloneCautionMin: 45,
  walkOutDarkCautionMin: 120,
  askAfterMin: 60,
  callAfterMin: 180,
  askAfterAloneMin: 30,
  callAfterAloneMin: 90,
  awakeCautionH: 15,
  awakeStopH: 17,
  leanCautionDeg: 5,
  leanStopDeg: 10,
  ticksOldMonths: 12,
  gridOffMaxM: 10,
  factOldMonths: 12,
  forecastOldH: 24,
  windChillCautionC: -10,
  windChillStopC: -27,
  positionErrorM: 10,
  boundaryNearM: 50,
  seatsApartM: 200,
  landingMinM: 30,
  landingPreferredM: 40,
  landingCautionDeg: 5,
  landingStopDeg: 10,
};

export const condition: NonNullable<SiteFile["tree"]>["condition"] = {
  dead: "clear",
  deadLimbs: "clear",
  hollow: "clear",
  fungus: "clear",
  canker: "clear",
  roots: "clear",
  lean: "clear",
  bark: "clear",
  twinStem: "clear",
  nestOrWires: "clear",
  leanDeg: 2,
  checkedOn: "2026-03-01",
  checkedBy: "owner",
};

export const stand: Stand = {
  id: "ridge-stand",
  name: "ridge stand",
  trunkMinMm: 200,
  trunkMaxMm: 500,
  ratedLoadKg: 120,
  weightKg: 9,
  maxPlatformHeightM: 9,
};

export const kmh = (speedKmh: number) => speedKmh / 3.6;
