import type { ModelConstants } from "../air/modelConstants.ts";
import type { BroadSlopeRules } from "../terrain/broadSlope.ts";
import type { ColdAirPathRules } from "../terrain/coldAirPath.ts";
import type { DrainageRules } from "../terrain/drainageSurface.ts";
import type { HorizonRules } from "../terrain/horizonProfile.ts";
import type { LandformRules } from "../terrain/landform.ts";
import type { UpwindRules } from "../terrain/maxUpwindSlope.ts";

export interface TerrainRules
  extends BroadSlopeRules,
    LandformRules,
    HorizonRules,
    UpwindRules,
    ColdAirPathRules,
    DrainageRules {
  groundHorizonHeightM: number;
}

/** The rules of the terrain room in the constants of data/model.json. */
export function terrainRules(constants: ModelConstants): TerrainRules {
  return {
    fitRadiusMinM: constants.slopeFitMinRadiusM,
    fitRadiusCells: constants.slopeFitCellFactor,
    fitCellsMin: constants.slopeFitMinCells,
    trustCellM: constants.trustCellM,
    coarseCellM: constants.coarseCellM,
    aspectFromSlopeDeg: constants.aspectFromSlopeDeg,
    flatSlopeDeg: constants.flatSlopeDeg,
    landformHeightM: constants.landformHeightM,
    landformRadiusM: constants.landformRadiusM,
    horizonReachM: constants.horizonReachM,
    horizonNearM: constants.horizonNearM,
    refraction: constants.refraction,
    earthRadiusM: constants.earthRadiusM,
    groundHorizonHeightM: constants.groundHorizonHeightM,
    sxDistanceM: constants.sxDistanceM,
    sxStepM: constants.sxStepM,
    sxWindowDeg: constants.sxWindowDeg,
    sxWindowStepDeg: constants.sxWindowStepDeg,
    pathLengthM: constants.pathLengthM,
    pathStepM: constants.pathStepM,
    pathBearingM: constants.pathStartM,
    pathFlatDeg: constants.flatSlopeDeg,
    pathFlatM: constants.pathStartM,
    pathSmoothM: constants.pathSmoothM,
    pathSmoothCellMaxM: constants.pathSmoothMaxCellM,
    pitEpsilonM: constants.pitEpsilonM,
  };
}
