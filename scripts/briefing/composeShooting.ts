import type { SiteContent } from "../content/areaContent.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import type { HeightAt } from "../shooting/groundProfile.ts";
import { type LineOfFire, laneLengthM, linesOfFire } from "../shooting/linesOfFire.ts";
import {
  closedBy,
  type NoShootBearings,
  type NoShootSpan,
  noShootBearings,
} from "../shooting/noShootBearings.ts";
import { seatPlane, type ToPlane } from "../shooting/seatPlane.ts";
import { type ShootingRules, shootingRules } from "../shooting/shootingRules.ts";
import { longerCellM } from "../terrain/broadSlope.ts";
import { type ElevationGrid, elevationAt, placeOnGrid } from "../terrain/elevationGrid.ts";
import type { PackContext } from "./packContext.ts";
import { packAngle, packBearing, packMetres } from "./packNumbers.ts";
import { alwaysProtected, occupiedThings } from "./protectedThings.ts";
import type { Firearm } from "./siteWeapon.ts";

/** Lines of fire and closed bearings of a site for one weapon, as computed. */
export interface SiteShooting {
  /** Places around the site, each worked out once. */
  toPlane: ToPlane;
  weapon: Firearm | null;
  rules: ShootingRules;
  gridErrorM: number | null;
  /** Null with the reason. */
  lines: LineOfFire[] | null;
  linesWhy: string;
  closed: NoShootBearings | null;
  closedWhy: string;
}

const NO_NORTH = "the declination is not known";
const NO_WEAPON = "no weapon is known";
const GROUND_STEP_M = { least: 1, most: 5 };
const STEPS_PER_CELL = 4;

/** Lines of fire over the ground, and with them the closed bearings; without terrain every far road or boundary closes. */
export function siteShooting(site: SiteContent, context: PackContext, weapon: Firearm | null): SiteShooting {
  const { area, shapes, shared } = context;
  const rules = shootingRules(shared.model);
  const toPlane = seatPlane(site.facts.position);
  const grid = area.ground?.grid ?? null;
  const gridErrorM = grid === null ? null : gridError(grid, rules);
  const { lines, why: linesWhy } = linesOf(site, grid, gridErrorM, weapon, rules);
  const closedWhy = area.content.map === null ? "no map features were given" : NO_WEAPON;
  const closed =
    area.content.map === null || weapon === null
      ? null
      : noShootBearings(alwaysProtected(area.content, shapes, toPlane, rules), lines, weapon.dangerM, rules);
  return { toPlane, weapon, rules, gridErrorM, lines, linesWhy, closed, closedWhy };
}

function linesOf(
  site: SiteContent,
  grid: ElevationGrid | null,
  gridErrorM: number | null,
  weapon: Firearm | null,
  rules: ShootingRules,
): { lines: LineOfFire[] | null; why: string } {
  if (grid === null || gridErrorM === null) return { lines: null, why: "no terrain file" };
  if (weapon === null) return { lines: null, why: NO_WEAPON };
  const { platformHeightM, seated, lanes } = site.facts;
  const seat = {
    heightAt: heightsAround(grid, site),
    stepM: Math.min(GROUND_STEP_M.most, Math.max(GROUND_STEP_M.least, grid.cellSizeM / STEPS_PER_CELL)),
    muzzleHeightM: platformHeightM + (seated ? rules.muzzleHeightSeatedM : rules.muzzleHeightStandingM),
    gridErrorM,
    laneLimitM: weapon.laneLimitM,
  };
  const lines = lanes.flatMap((lane) =>
    linesOfFire({ ...lane, isSeenOnGround: lane.seenOnGround !== null }, seat, rules),
  );
  const isUnknown = lines.some(({ ranges }) => ranges.every(({ downDeg }) => downDeg === null));
  return isUnknown ? { lines: null, why: "the ground of a lane is not known" } : { lines, why: "" };
}

/** Heights by true metres east and north of a site. */
function heightsAround(grid: ElevationGrid, site: SiteContent): HeightAt {
  const { eastingM, northingM, convergenceDeg } = placeOnGrid(grid, site.facts.position);
  const turnRad = (convergenceDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return (eastM, northM) =>
    elevationAt(grid, eastingM + eastM * cos - northM * sin, northingM + eastM * sin + northM * cos);
}

function gridError(grid: ElevationGrid, rules: ShootingRules): number {
  return longerCellM(grid) >= rules.gridErrorCoarseFromM ? rules.gridErrorCoarseM : rules.gridErrorFineM;
}

/** Lines of fire as pack.json holds them. `angleDeg` is how steeply the line falls at the range that decided. */
export function packLinesOfFire({ lines }: SiteShooting): PackSite["linesOfFire"] {
  return (
    lines?.map(({ lane, bearingDeg, worst, ranges, isSeenOnGround }) => ({
      lane,
      bearingDeg: packBearing(bearingDeg),
      ground: worst.ground,
      beyondM: worst.beyondM === null ? null : packMetres(worst.beyondM),
      angleDeg: packAngle(worst.downDeg ?? ranges.findLast(({ downDeg }) => downDeg !== null)?.downDeg ?? 0),
      seenOnGround: isSeenOnGround,
      why: worst.beyondM === null ? { beyondM: worst.why ?? "not known" } : {},
    })) ?? null
  );
}

/** Closed bearings as pack.json holds them, true and magnetic; the latter null where the declination is not known. */
export function packNoShoot(
  closed: NoShootBearings | null,
  declinationDeg: number | null,
): PackSite["noShoot"] {
  return closed?.spans.map((span) => packSpan(span, declinationDeg)) ?? null;
}

function packSpan(
  { fromDeg, toDeg, distanceM, thingId, reason }: NoShootSpan,
  declinationDeg: number | null,
): NonNullable<PackSite["noShoot"]>[number] {
  const why: Record<string, string> = {};
  if (declinationDeg === null) Object.assign(why, { fromMagDeg: NO_NORTH, toMagDeg: NO_NORTH });
  if (distanceM === null) Object.assign(why, { distanceM: reason, featureId: reason });
  const magnetic = (deg: number) => (declinationDeg === null ? null : packBearing(deg - declinationDeg));
  return {
    fromDeg: packBearing(fromDeg),
    toDeg: packBearing(toDeg),
    fromMagDeg: magnetic(fromDeg),
    toMagDeg: magnetic(toDeg),
    distanceM: distanceM === null ? null : packMetres(distanceM),
    featureId: thingId,
    reason,
    why,
  };
}

/** What pages show of lanes and closed bearings beyond pack.json. */
export function shootingDetails(
  site: SiteContent,
  shooting: SiteShooting,
  declinationDeg: number | null,
  context: PackContext,
): SiteDetails["shooting"] {
  const { weapon, rules, lines, closed, gridErrorM } = shooting;
  const inUse =
    weapon === null
      ? null
      : occupiedThings(context.area.content, context.shapes, site, shooting.toPlane).flatMap((thing) =>
          closedBy(thing, weapon.dangerM, rules).map((span) => ({
            kind: thing.kind,
            id: thing.id,
            fromDeg: packBearing(span.fromDeg),
            toDeg: packBearing(span.toDeg),
            distanceM: packMetres(span.distanceM),
          })),
        );
  return {
    weapon:
      weapon === null
        ? null
        : {
            id: weapon.id,
            weaponClass: weapon.weaponClass,
            dangerM: weapon.dangerM,
            laneLimitM: weapon.laneLimitM,
          },
    gridErrorM,
    lanes:
      lines === null || weapon === null
        ? null
        : site.facts.lanes.map((lane) => ({
            lane: lane.id,
            lengthM: packMetres(laneLengthM(lane, weapon.laneLimitM, rules)),
            isCut: laneLengthM(lane, weapon.laneLimitM, rules) < lane.maxRangeM,
            ranges: rangeRows(lines.filter((line) => line.lane === lane.id)),
          })),
    closed: closed?.merged ?? null,
    leftToBackstop: closed?.leftToBackstop.map((span) => packSpan(span, declinationDeg)) ?? null,
    whileInUse: inUse,
  };
}

type LaneDetails = NonNullable<NonNullable<SiteDetails["shooting"]>["lanes"]>[number];

function rangeRows(lines: readonly LineOfFire[]): LaneDetails["ranges"] {
  return (lines[0]?.ranges ?? []).map(({ rangeM }, at) => {
    const behind = lines.flatMap(({ ranges }) => ranges[at] ?? []);
    const count = (ground: string) => behind.filter((one) => one.ground === ground).length;
    const beyond = behind.map(({ beyondM }) => beyondM);
    return {
      rangeM: packMetres(rangeM),
      earth: count("earth"),
      far: count("far"),
      none: count("none"),
      beyondM: beyond.some((m) => m === null) ? null : packMetres(Math.max(...beyond.map((m) => m ?? 0))),
      hidden: behind.filter(({ isHidden }) => isHidden).length,
    };
  });
}
