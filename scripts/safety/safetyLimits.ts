import type { ModelRow } from "../content/schema/sharedDataSchema.ts";

const LIMIT_IDS = [
  "taperMinMmPerM",
  "taperMaxMmPerM",
  "loadCautionShare",
  "platformUsualMaxM",
  "haulLineSpareM",
  "treeWindCautionKmh",
  "treeWindStopKmh",
  "treeGustStopKmh",
  "darkAloneCautionMin",
  "walkOutDarkCautionMin",
  "askAfterMin",
  "callAfterMin",
  "askAfterAloneMin",
  "callAfterAloneMin",
  "awakeCautionH",
  "awakeStopH",
  "leanCautionDeg",
  "leanStopDeg",
  "ticksOldMonths",
  "gridOffMaxM",
  "factOldMonths",
  "forecastOldH",
  "windChillCautionC",
  "windChillStopC",
  "positionErrorM",
  "boundaryNearM",
  "seatsApartM",
  "landingMinM",
  "landingPreferredM",
  "landingCautionDeg",
  "landingStopDeg",
] as const;

/** The limits of the checks; their values, units and reasons stand in data/model.json. All are choices, never rules. */
export type SafetyLimits = Readonly<Record<(typeof LIMIT_IDS)[number], number>>;

/**
 * The limits of the checks from the rows of data/model.json.
 *
 * @throws {RangeError} naming the row that is missing or is no number
 */
export function safetyLimits(rows: readonly ModelRow[]): SafetyLimits {
  const limits = LIMIT_IDS.map((id) => {
    const value = rows.find((row) => row.id === id)?.value;
    if (typeof value !== "number" || !Number.isFinite(value)) {
      throw new RangeError(`model constant ${id} must be a number, found ${JSON.stringify(value)}`);
    }
    return [id, value] as const;
  });
  return Object.fromEntries(limits) as SafetyLimits;
}
