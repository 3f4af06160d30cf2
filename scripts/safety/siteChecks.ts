import type { AreaFile } from "../content/schema/areaSchema.ts";
import type { Stand } from "../content/schema/sharedDataSchema.ts";
import type { SiteFile } from "../content/schema/siteSchema.ts";
import type { Check } from "./check.ts";
import { contactGaps } from "./contactGaps.ts";
import { haulLine } from "./haulLine.ts";
import { heightCheck } from "./heightCheck.ts";
import { orderChecks } from "./orderChecks.ts";
import { positionFormats } from "./positionFormats.ts";
import type { SafetyLimits } from "./safetyLimits.ts";
import { standDates } from "./standDates.ts";
import { treeTicks } from "./treeTicks.ts";
import { trunkFit } from "./trunkFit.ts";
import { standAge } from "./wornDates.ts";

export interface SiteCheckFacts {
  siteId: string;
  site: Pick<SiteFile, "position" | "grid" | "tree" | "stand" | "platformHeightM" | "heightReason">;
  /** Every stand of data/stands.json. */
  stands: readonly Stand[];
  area: Pick<AreaFile, "standRules" | "emergency">;
  /** Length of the haul line; null = not known, which is all that content files can say. */
  haulLineM: number | null;
  /** The day for which dates are judged. */
  onDate: string;
}

/**
 * The checks of a site card that need no map and no trip, in the order of a page. Fit and height (C5, C8) are worked out for
 * the stand left there, else for every known stand, with the stand as subject; the rest has the site as subject. A
 * ground seat (platform at 0 m) has no checks of climbing.
 */
export function siteChecks(facts: SiteCheckFacts, limits: SafetyLimits): Check[] {
  const { siteId: subject, site, area, haulLineM, onDate } = facts;
  const { coverage, radio } = area.emergency;
  const checks: Check[] = [
    positionFormats({ subject, position: site.position, grid: site.grid ?? null }, limits),
    contactGaps({ subject, notes: { "phone coverage": coverage ?? null, radio: radio ?? null } }),
  ];
  if (site.platformHeightM > 0 || site.tree !== undefined) {
    checks.push(treeTicks({ subject, condition: site.tree?.condition ?? null, onDate }, limits));
  }
  if (site.platformHeightM > 0) {
    checks.push(
      haulLine({ subject, haulLineM, platformHeightM: site.platformHeightM }, limits),
      ...standChecks(facts, limits),
    );
  }
  if (site.stand !== undefined) {
    const standRules = area.standRules ?? null;
    checks.push(standDates({ subject, stand: site.stand, standRules, onDate }));
  }
  return orderChecks(checks);
}

function standChecks({ site, stands, onDate }: SiteCheckFacts, limits: SafetyLimits): Check[] {
  const left = site.stand;
  const known = left === undefined ? stands : stands.filter(({ id }) => id === left.standId);
  if (known.length === 0) return unknownStand(left?.standId ?? "stand", site, limits);
  return known.flatMap((stand) => {
    const { id: subject, maxPlatformHeightM } = stand;
    const { platformHeightM, heightReason } = site;
    const fit = trunkFit({ subject, stand, tree: site.tree ?? null, platformHeightM }, limits);
    const height = heightCheck(
      { subject, platformHeightM, maxPlatformHeightM, heightReason: heightReason ?? null },
      limits,
    );
    const age = left === undefined ? [] : [standAge({ subject, replaceBy: stand.replaceBy ?? null, onDate })];
    return [fit, height, ...age];
  });
}

/** No stand is known to work the fit out for: said as what is missing, never left out. */
function unknownStand(subject: string, site: SiteCheckFacts["site"], limits: SafetyLimits): Check[] {
  const { platformHeightM, heightReason } = site;
  const stand = { trunkMinMm: null, trunkMaxMm: null };
  return [
    trunkFit({ subject, stand, tree: site.tree ?? null, platformHeightM }, limits),
    heightCheck(
      { subject, platformHeightM, maxPlatformHeightM: null, heightReason: heightReason ?? null },
      limits,
    ),
  ];
}

/**
 * The check that takes a site off the list of the day: a STOP of the site itself, or, when every stand that could be
 * used there has one, the first of those. null = none, which does not mean that the site is safe.
 */
export function siteStop(checks: readonly Check[], siteId: string): Check | null {
  const isOfStand = ({ id }: Check) => STAND_CHECKS.includes(id);
  const own = checks.find(
    (check) => !isOfStand(check) && check.subject === siteId && check.result === "STOP",
  );
  if (own) return own;
  const ofStands = checks.filter(isOfStand);
  const stops = [...new Set(ofStands.map(({ subject }) => subject))].map((stand) =>
    ofStands.find(({ subject, result }) => subject === stand && result === "STOP"),
  );
  return stops.every((stop) => stop !== undefined) ? (stops[0] ?? null) : null;
}

const STAND_CHECKS = ["C5", "C7", "C8"];
