import type { ShootingRules } from "../../scripts/shooting/shootingRules.ts";

/** Constants of lines of fire and closed bearings: defaults of the project, no published source unless a test names one. */
export const rules: ShootingRules = {
  muzzleHeightSeatedM: 1.2,
  muzzleHeightStandingM: 1.5,
  aimPointHeightM: 0.8,
  laneStepM: 25,
  laneCheckToM: 200,
  backstopEarthM: 50,
  backstopFarM: 300,
  backstopLookM: 1000,
  gridErrorCoarseM: 5,
  gridErrorFineM: 2,
  gridErrorCoarseFromM: 20,
  noShootMinHalfDeg: 15,
  noShootClearM: 50,
  noShootRoadFarM: 400,
  noShootBoundaryFarM: 200,
};
