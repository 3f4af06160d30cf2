import type { ModelConstants } from "../air/modelConstants.ts";
import type { SlopeSite } from "../air/slopeSite.ts";
import type { SiteContent } from "../content/areaContent.ts";
import { normalizeDeg } from "../geo/bearings.ts";
import { broadSlope, type GridTrust, gridTrust } from "../terrain/broadSlope.ts";
import { coldAirPath } from "../terrain/coldAirPath.ts";
import { type DrainageSurface, drainageSurface } from "../terrain/drainageSurface.ts";
import { type ElevationGrid, elevationAtPosition, placeOnGrid } from "../terrain/elevationGrid.ts";
import { type GroundTops, groundTops } from "../terrain/groundTops.ts";
import { type HorizonProfile, horizonProfile } from "../terrain/horizonProfile.ts";
import { landform } from "../terrain/landform.ts";
import { maxUpwindSlopes } from "../terrain/maxUpwindSlope.ts";
import { slopeAspectAtCell } from "../terrain/slopeAspect.ts";
import { terrainRules } from "./terrainRules.ts";

export type GroundTrust = "trusted" | "coarse" | "too coarse" | "owner" | "none";

/** The ground at one site as the pages and the air model use it. Bearings true; null with the reason in `why`. */
export interface SiteGround {
  elevationM: number | null;
  slopeDeg: number | null;
  aspectDeg: number | null;
  /** who says so: "terrain" or "owner" */
  slopeSource: "terrain" | "owner" | null;
  trust: GroundTrust;
  landform: SlopeSite["landform"] | null;
  localSlopeDeg: number | null;
  localAspectDeg: number | null;
  /** skyline as the hunter sees it, from the eye in the stand */
  eyeHorizon: HorizonProfile | null;
  /** skyline that shades the slope and drives its air */
  groundHorizon: HorizonProfile | null;
  /** 16 values from N clockwise, null where the ground upwind is unknown */
  sxDeg: (number | null)[] | null;
  floorDriftToDeg: number | null;
  why: Partial<
    Record<
      "elevationM" | "slopeDeg" | "aspectDeg" | "horizon" | "sxDeg" | "floorDriftToDeg" | "landform",
      string
    >
  >;
}

/** The ground of one area: its grid and, made when first asked for, the surface that its cold air drains over and the tops of its tiles. */
export interface AreaGround {
  grid: ElevationGrid;
  drainage: () => DrainageSurface;
  /** lets a skyline pass over low ground */
  tops: () => GroundTops;
}

export function areaGround(grid: ElevationGrid, constants: ModelConstants): AreaGround {
  let surface: DrainageSurface | null = null;
  let tops: GroundTops | null = null;
  return {
    grid,
    drainage: () => {
      surface ??= drainageSurface(grid, terrainRules(constants));
      return surface;
    },
    tops: () => {
      tops ??= groundTops(grid);
      return tops;
    },
  };
}

/**
 * Everything about a site's ground: from the elevation grid, or by the owner's hand where there is no grid or the owner
 * overrides it with a stated reason.
 *
 * @param ground      null without a terrain file
 * @param elevationM  the area's own height, used without terrain
 */
export function siteGround(
  site: SiteContent,
  ground: AreaGround | null,
  elevationM: number | null,
  constants: ModelConstants,
): SiteGround {
  return ground === null ? withoutTerrain(site, elevationM) : onTerrain(site, ground, constants);
}

/** The site as the air model wants it, or null with the reason when the slope is not known. */
export function slopeSite(
  site: SiteContent,
  ground: SiteGround,
): { site: SlopeSite; why: null } | { site: null; why: string } {
  if (ground.slopeDeg === null || ground.landform === null || ground.elevationM === null) {
    const why = ground.why.slopeDeg ?? ground.why.landform ?? ground.why.elevationM;
    return { site: null, why: why ?? "the slope of the site is not known" };
  }
  return {
    site: {
      slopeDeg: ground.slopeDeg,
      aspectDeg: ground.aspectDeg,
      landform: ground.landform,
      cover: site.facts.cover,
      elevationM: ground.elevationM,
      horizonDeg: ground.groundHorizon?.angleDeg ?? null,
      floorDriftToDeg: ground.floorDriftToDeg,
      sxDeg: ground.sxDeg === null ? null : ground.sxDeg.map((deg) => deg ?? 0),
    },
    why: null,
  };
}

export function eyeHeightM(site: SiteContent, constants: ModelConstants): number {
  const overPlatformM = site.facts.seated ? constants.eyeHeightSeatedM : constants.eyeHeightStandingM;
  return site.facts.platformHeightM + overPlatformM;
}

function withoutTerrain(site: SiteContent, elevationM: number | null): SiteGround {
  const given = site.facts.slope;
  const why: SiteGround["why"] = {
    horizon: "no terrain file",
    sxDeg: "no terrain file",
    floorDriftToDeg: "no terrain file",
  };
  if (elevationM === null) why.elevationM = "no terrain file and no height given";
  if (given === undefined) {
    why.slopeDeg = "no terrain file and no slope given";
    why.aspectDeg = "no terrain file and no slope given";
  } else if (given.aspectDeg === null) {
    why.aspectDeg = "flat ground faces nowhere";
  }
  return {
    elevationM,
    slopeDeg: given?.slopeDeg ?? null,
    aspectDeg: given?.aspectDeg ?? null,
    slopeSource: given === undefined ? null : "owner",
    trust: given === undefined ? "none" : "owner",
    landform: given === undefined ? null : given.aspectDeg === null ? "flat" : "slope",
    localSlopeDeg: null,
    localAspectDeg: null,
    eyeHorizon: null,
    groundHorizon: null,
    sxDeg: null,
    floorDriftToDeg: null,
    why,
  };
}

function onTerrain(site: SiteContent, ground: AreaGround, constants: ModelConstants): SiteGround {
  const { grid } = ground;
  const rules = terrainRules(constants);
  const position = site.facts.position;
  const why: SiteGround["why"] = {};
  const elevationM = elevationAtPosition(grid, position);
  if (elevationM === null) why.elevationM = "the site stands on a hole of the elevation file";

  const fitted = broadSlope(grid, position, rules);
  const given = site.facts.slope;
  const slopeDeg = given?.slopeDeg ?? fitted.slope?.slopeDeg ?? null;
  const aspectDeg = given === undefined ? (fitted.slope?.aspectDeg ?? null) : given.aspectDeg;
  if (slopeDeg === null && fitted.why !== null) {
    why.slopeDeg = fitted.why;
    why.aspectDeg = fitted.why;
  } else if (aspectDeg === null) {
    why.aspectDeg = "flat ground faces nowhere";
  }
  const form = slopeDeg === null ? null : landform(grid, position, slopeDeg, rules);
  if (form !== null && form.why !== null) why.landform = form.why;
  if (slopeDeg === null) why.landform = why.slopeDeg ?? "the slope is not known";

  const eye = horizonProfile(grid, position, eyeHeightM(site, constants), rules, ground.tops());
  const low = horizonProfile(grid, position, rules.groundHorizonHeightM, rules, ground.tops());
  if (eye.why !== null) why.horizon = eye.why;

  const place = placeOnGrid(grid, position);
  const local = slopeAspectAtCell(
    grid,
    Math.round(place.row),
    Math.round(place.column),
    rules.aspectFromSlopeDeg,
  );
  const floor =
    form?.landform === "floor" ? coldAirPath(ground.drainage(), position, "falling", rules) : null;
  if (floor !== null && floor.why !== null) why.floorDriftToDeg = floor.why;
  if (floor === null) why.floorDriftToDeg = "the site is not on a valley floor";
  return {
    elevationM,
    slopeDeg,
    aspectDeg,
    slopeSource: slopeDeg === null ? null : given === undefined ? "terrain" : "owner",
    trust: given !== undefined ? "owner" : trustOf(fitted.slope?.trust ?? null, gridTrust(grid, rules)),
    landform: form?.landform ?? null,
    localSlopeDeg: local?.slopeDeg ?? null,
    localAspectDeg:
      local === null || local.aspectDeg === null
        ? null
        : normalizeDeg(local.aspectDeg + place.convergenceDeg),
    eyeHorizon: eye.horizon,
    groundHorizon: low.horizon,
    sxDeg: elevationM === null ? null : maxUpwindSlopes(grid, position, rules),
    floorDriftToDeg: floor?.path?.firstBearingDeg ?? null,
    why,
  };
}

/** A slope that could not be fitted on a good grid (voids, the edge) is no slope; only coarse cells are "too coarse". */
function trustOf(fitted: "trusted" | "coarse" | null, grid: GridTrust): GroundTrust {
  return fitted ?? (grid === "too coarse" ? "too coarse" : "none");
}
