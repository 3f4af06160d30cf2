import type { ModelRow } from "../content/schema/sharedDataSchema.ts";

const RULE_IDS = [
  "muzzleHeightSeatedM",
  "muzzleHeightStandingM",
  "aimPointHeightM",
  "laneStepM",
  "laneCheckToM",
  "backstopEarthM",
  "backstopFarM",
  "backstopLookM",
  "gridErrorCoarseM",
  "gridErrorFineM",
  "gridErrorCoarseFromM",
  "noShootMinHalfDeg",
  "noShootClearM",
  "noShootRoadFarM",
  "noShootBoundaryFarM",
] as const;

/** The constants of lines of fire and no-shoot bearings; values, units and reasons stand in data/model.json. */
export type ShootingRules = Readonly<Record<(typeof RULE_IDS)[number], number>>;

/**
 * The rules from the rows of data/model.json.
 *
 * @throws {RangeError} naming the row that is missing or is no number
 */
export function shootingRules(rows: readonly ModelRow[]): ShootingRules {
  const rules = RULE_IDS.map((id) => {
    const value = rows.find((row) => row.id === id)?.value;
    if (typeof value !== "number" || !Number.isFinite(value)) {
      throw new RangeError(`model constant ${id} must be a number, found ${JSON.stringify(value)}`);
    }
    return [id, value] as const;
  });
  return Object.fromEntries(rules) as ShootingRules;
}
