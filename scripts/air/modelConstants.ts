import { COVERS, type Cover } from "./slopeSite.ts";

/** One row of data/model.json. */
export interface ModelRow {
  id: string;
  value: number | number[] | string[] | Record<string, number>;
  unit: string;
  low: number | null;
  high: number | null;
  reason: string;
  source?: string | undefined;
  status: "published" | "fitted" | "choice";
}

/** Constants with one value for each cover. */
const COVER_IDS = [
  "albedo",
  "riseLagMin",
  "fallLagMin",
  "slopeAirCover",
  "windCover",
  "meanderMps",
  "turbulenceShare",
  "usableLightSunDeg",
] as const;

/** Constants with one value. */
const NUMBER_IDS = [
  "solarConstantWm2",
  "clearTransmittance",
  "clearTransmittanceHigh",
  "clearTransmittanceLow",
  "airMassExponent",
  "earthSunAmplitude",
  "airScaleHeightM",
  "haurwitzWm2",
  "haurwitzExponent",
  "diffuseShareMin",
  "airTempC",
  "relativeHumidity",
  "cloudBeamFactor",
  "cloudBeamExponent",
  "longwaveCloudMin",
  "riseNetWm2",
  "fallNetWm2",
  "riseNetEarlyWm2",
  "riseNetLateWm2",
  "fallNetEarlyWm2",
  "fallNetLateWm2",
  "sunOffDirectWm2",
  "coolingShareMin",
  "spanMinMin",
  "gapMinMin",
  "runInMin",
  "flatSlopeDeg",
  "landformHeightM",
  "landformRadiusM",
  "floorRiseLagMin",
  "floorFallLagMin",
  "floorHoldMin",
  "riseSpeedMps",
  "riseSpeedNetWm2",
  "fallSpeedMps",
  "fallSpeedNetWm2",
  "speedDriveMax",
  "speedSlopeDeg",
  "slopeFactorMax",
  "floorRiseMps",
  "floorFallMps",
  "fallStartShare",
  "fallGrowMin",
  "fadeFromMps",
  "fadeToMps",
  "sxDistanceM",
  "sxStepM",
  "sxWindowDeg",
  "shelterPerDeg",
  "shelterMin",
  "shelterMax",
  "leeSxDeg",
  "leeWindMps",
  "leeSpreadShare",
  "spreadMinMps",
  "forecastErrorMps",
  "directionSpreadDeg",
  "doubtfulDirectionSpreadDeg",
  "slopeAirErrorShare",
  "turnSpreadMps",
  "steadyMin",
  "kappaMax",
  "anyDirectionMps",
  "calmBelowMps",
  "freshFromMps",
  "calmWindMps",
  "lightWindMps",
  "freshWindMps",
  "sectorMarginDeg",
  "scentRangeM",
  "suitsBelow",
  "avoidFrom",
  "stepMin",
  "lastingAvoidMin",
  "sitMinMin",
  "sitCleanShareMin",
  "rangeTrim",
  "mayNotHappenBelow",
  "ensembleCloud",
  "ensembleLongwave",
  "ensembleSlope",
  "ensembleAspectDeg",
  "ensembleLagLong",
  "ensembleLagShort",
  "ensembleFloorLagLong",
  "ensembleFloorLagShort",
  "ensembleHorizonDeg",
  "slopeFitMinRadiusM",
  "slopeFitCellFactor",
  "slopeFitMinCells",
  "pathLengthM",
  "pathStepM",
  "pathSmoothM",
  "pathSmoothMaxCellM",
  "pathNearM",
  "pathNearCellFactor",
  "pathStartM",
  "trustCellM",
  "coarseCellM",
  "aspectFromSlopeDeg",
  "horizonReachM",
  "horizonNearM",
  "groundHorizonHeightM",
  "refraction",
  "earthRadiusM",
  "sxWindowStepDeg",
  "pitEpsilonM",
  "holeCellsMax",
  "holeShareMax",
  "gridSideMaxCells",
  "usableLightCloudDeg",
  "usableLightCloudShare",
  "darkMoonShare",
  "eyeHeightSeatedM",
  "eyeHeightStandingM",
  "muzzleHeightSeatedM",
  "muzzleHeightStandingM",
  "deerHeightM",
  "aimPointHeightM",
  "laneStepM",
  "laneCheckToM",
  "backstopEarthM",
  "backstopFarM",
  "gridErrorCoarseM",
  "gridErrorFineM",
  "noShootMinHalfDeg",
  "noShootClearM",
  "taperMinMmPerM",
  "taperMaxMmPerM",
  "toblerSpeedKmh",
  "toblerSlopeFactor",
  "toblerBestSlope",
  "offTrackFactor",
  "walkStepM",
  "darkFactor",
  "loadFactor",
  "scrubFactor",
  "walkSlowFactor",
  "quietLastM",
  "quietSpeedMPerMin",
  "settleMin",
  "setUpMin",
  "setUpNewcomerMin",
  "coolDownMin",
  "packUpMin",
  "wakeMin",
  "seatBeforeMorningMin",
  "seatBeforeOtherMin",
  "carryLoadKg",
  "visitGapMin",
  "activityMinVisits",
  "turnPrintMin",
] as const;

export type NumberConstant = (typeof NUMBER_IDS)[number];
export type CoverConstant = (typeof COVER_IDS)[number];

/** The signs of one member of the ensemble, in the order of the factors; 1 is the greater value. */
export interface EnsembleSigns {
  cloud: 1 | -1;
  longwave: 1 | -1;
  slope: 1 | -1;
  aspect: 1 | -1;
  lag: 1 | -1;
  threshold: 1 | -1;
  horizon: 1 | -1;
  transmittance: 1 | -1;
}

export type ModelConstants = Readonly<Record<NumberConstant, number>> &
  Readonly<Record<CoverConstant, Readonly<Record<Cover, number>>>> & {
    readonly ensembleSigns: readonly EnsembleSigns[];
  };

/**
 * The constants of the model as one checked object: numbers by name, rows of four by name and cover, the signs of
 * the ensemble. Rows that this list does not know are left alone.
 *
 * @param rows the rows of data/model.json
 * @throws {RangeError} a row that is missing, is there twice, has the wrong form, or lies outside its own range
 */
export function modelConstants(rows: readonly ModelRow[]): ModelConstants {
  const byId = new Map<string, ModelRow>();
  for (const row of rows) {
    if (byId.has(row.id)) throw new RangeError(`model constant ${row.id} must be given once, found twice`);
    byId.set(row.id, row);
  }
  const numbers = Object.fromEntries(NUMBER_IDS.map((id) => [id, oneNumber(rowOf(byId, id))]));
  const covers = Object.fromEntries(COVER_IDS.map((id) => [id, oneForEachCover(rowOf(byId, id))]));
  const ensembleSigns = memberSigns(rowOf(byId, "ensembleSigns"));
  return { ...numbers, ...covers, ensembleSigns } as unknown as ModelConstants;
}

function rowOf(byId: ReadonlyMap<string, ModelRow>, id: string): ModelRow {
  const row = byId.get(id);
  if (!row) throw new RangeError(`model constant ${id} must be given, found none`);
  return row;
}

function inRange(row: ModelRow, value: unknown): number {
  const low = row.low ?? Number.NEGATIVE_INFINITY;
  const high = row.high ?? Number.POSITIVE_INFINITY;
  if (typeof value !== "number" || !Number.isFinite(value) || value < low || value > high) {
    throw new RangeError(
      `model constant ${row.id} must be a number from ${low} to ${high}, found ${String(value)}`,
    );
  }
  return value;
}

function oneNumber(row: ModelRow): number {
  return inRange(row, row.value);
}

function oneForEachCover(row: ModelRow): Record<Cover, number> {
  const values = row.value;
  if (!Array.isArray(values) || values.length !== COVERS.length) {
    throw new RangeError(`model constant ${row.id} must be four numbers, found ${JSON.stringify(values)}`);
  }
  return Object.fromEntries(COVERS.map((cover, i) => [cover, inRange(row, values[i])])) as Record<
    Cover,
    number
  >;
}

function memberSigns(row: ModelRow): EnsembleSigns[] {
  const texts = row.value;
  if (!Array.isArray(texts) || texts.length === 0) {
    throw new RangeError(`model constant ${row.id} must be a list of signs, found ${JSON.stringify(texts)}`);
  }
  return texts.map((text) => {
    if (typeof text !== "string" || !/^[+-]{8}$/.test(text)) {
      throw new RangeError(
        `model constant ${row.id} must hold eight signs a member, found ${JSON.stringify(text)}`,
      );
    }
    const sign = (i: number): 1 | -1 => (text[i] === "+" ? 1 : -1);
    return {
      cloud: sign(0),
      longwave: sign(1),
      slope: sign(2),
      aspect: sign(3),
      lag: sign(4),
      threshold: sign(5),
      horizon: sign(6),
      transmittance: sign(7),
    };
  });
}
