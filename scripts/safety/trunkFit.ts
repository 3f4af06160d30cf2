import type { Stand } from "../content/schema/sharedDataSchema.ts";
import type { SiteFile } from "../content/schema/siteSchema.ts";
import { atBestCaution, type Check, figure, isGuessed, listed } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

type Tree = NonNullable<SiteFile["tree"]>;
export type TrunkMeasures = Pick<
  Tree,
  "girthMm" | "diameterMm" | "measuredAtHeightM" | "girthAtPlatformMm" | "guessed"
>;
type TaperLimits = Pick<SafetyLimits, "taperMinMmPerM" | "taperMaxMmPerM">;

export interface TrunkDiameters {
  diameterAtMeasureMm: number;
  /** [least, most]; equal when the girth at the platform was measured. */
  diameterAtPlatformMm: [number, number];
  /** null when the girth at the platform was measured. */
  taperMmPerM: [number, number] | null;
}

/**
 * Diameter of a trunk where it was measured and at the platform: from the second girth, else thinned by the usual taper
 * of forest trees. A round trunk is assumed.
 *
 * @returns null when neither girth nor diameter is known
 */
export function trunkDiameters(
  tree: TrunkMeasures,
  platformHeightM: number,
  limits: TaperLimits,
): TrunkDiameters | null {
  const diameterMm = tree.girthMm === undefined ? tree.diameterMm : tree.girthMm / Math.PI;
  if (diameterMm === undefined) return null;
  if (tree.girthAtPlatformMm !== undefined) {
    const atPlatformMm = tree.girthAtPlatformMm / Math.PI;
    return {
      diameterAtMeasureMm: diameterMm,
      diameterAtPlatformMm: [atPlatformMm, atPlatformMm],
      taperMmPerM: null,
    };
  }
  const upM = platformHeightM - tree.measuredAtHeightM;
  const ends = [limits.taperMinMmPerM, limits.taperMaxMmPerM].map((taper) =>
    Math.max(0, diameterMm - taper * upM),
  );
  return {
    diameterAtMeasureMm: diameterMm,
    diameterAtPlatformMm: [Math.min(...ends), Math.max(...ends)],
    taperMmPerM: [limits.taperMinMmPerM, limits.taperMaxMmPerM],
  };
}

/**
 * C5: whether a trunk fits a stand at both ends of the climb. The trunk must lie inside the label's range where it was
 * measured and, with the least and the most taper, at the platform; short of that it is a STOP. A guessed measure is a
 * CAUTION at best. Does not cover bark, bends, burls or the shape of the trunk below the measured height.
 */
export function trunkFit(
  facts: {
    subject: string;
    stand: Pick<Stand, "trunkMinMm" | "trunkMaxMm" | "dropMmPerMmTaper">;
    tree: TrunkMeasures | null;
    platformHeightM: number | null;
  },
  limits: TaperLimits,
): Check {
  const { subject, stand, tree, platformHeightM } = facts;
  const { trunkMinMm, trunkMaxMm } = stand;
  const inputs = {
    girthMm: tree?.girthMm ?? null,
    diameterMm: tree?.diameterMm ?? null,
    measuredAtHeightM: tree?.measuredAtHeightM ?? null,
    girthAtPlatformMm: tree?.girthAtPlatformMm ?? null,
    platformHeightM,
    trunkMinMm,
    trunkMaxMm,
  };
  const found = tree && platformHeightM !== null ? trunkDiameters(tree, platformHeightM, limits) : null;
  if (!tree || platformHeightM === null || !found) {
    const hasMeasure = tree?.girthMm !== undefined || tree?.diameterMm !== undefined;
    const missing = [
      tree ? "" : "tree",
      tree && !hasMeasure ? "girth" : "",
      platformHeightM === null ? "platform height" : "",
    ];
    return notChecked(`Trunk not checked: ${listed(missing.filter(Boolean))} not entered.`);
  }
  const [thinMm, thickMm] = found.diameterAtPlatformMm;
  const thinnestMm = Math.min(thinMm, found.diameterAtMeasureMm);
  const thickestMm = Math.max(thickMm, found.diameterAtMeasureMm);
  const trunk = trunkWords(found, tree, platformHeightM);
  const isTooThin = trunkMinMm !== null && thinnestMm < trunkMinMm;
  const isTooThick = trunkMaxMm !== null && thickestMm > trunkMaxMm;
  const shown = {
    ...inputs,
    diameterAtPlatformMinMm: round1(thinMm),
    diameterAtPlatformMaxMm: round1(thickMm),
    ...drop(),
  };
  if (isTooThin || isTooThick) {
    const limit = isTooThin ? `at least ${figure(trunkMinMm)}` : `at most ${figure(trunkMaxMm ?? 0)}`;
    return {
      id: "C5",
      result: "STOP",
      text: `${trunk}; stand takes ${limit} mm: does not fit.`,
      subject,
      inputs: shown,
    };
  }
  if (trunkMinMm === null || trunkMaxMm === null) {
    return { ...notChecked(`${trunk}; trunk range of the label not entered.`), inputs: shown };
  }
  const isGuess = isGuessed(tree.guessed, [
    "girthMm",
    "diameterMm",
    "girthAtPlatformMm",
    "measuredAtHeightM",
  ]);
  const range = `stand takes ${figure(trunkMinMm)} to ${figure(trunkMaxMm)} mm`;
  return {
    id: "C5",
    result: isGuess ? atBestCaution("OK") : "OK",
    text: `${trunk}; ${range}${isGuess ? "; guessed, measure it" : ""}.`,
    subject,
    inputs: shown,
  };

  function notChecked(text: string): Check {
    return { id: "C5", result: "NOT CHECKED", text, subject, inputs };
  }

  function drop(): Record<string, number> {
    if (stand.dropMmPerMmTaper === undefined || found === null) return {};
    return {
      platformDropMaxMm: round1(
        stand.dropMmPerMmTaper * (found.diameterAtMeasureMm - found.diameterAtPlatformMm[0]),
      ),
    };
  }
}

function trunkWords(found: TrunkDiameters, tree: TrunkMeasures, platformHeightM: number): string {
  const [thinMm, thickMm] = found.diameterAtPlatformMm;
  const above = found.taperMmPerM === null ? figure(thinMm) : `about ${figure(thinMm)} to ${figure(thickMm)}`;
  const base = `Trunk ${figure(found.diameterAtMeasureMm)} mm at ${figure(tree.measuredAtHeightM, 1)} m`;
  return `${base}, ${above} mm at ${figure(platformHeightM, 1)} m`;
}

function round1(value: number): number {
  return Math.round(value * 10) / 10;
}
