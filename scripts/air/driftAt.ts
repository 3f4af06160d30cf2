import { normalizeDeg } from "../geo/bearings.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { Landform, Phase } from "./slopeSite.ts";
import type { SiteWind } from "./windAtSite.ts";

const RADIAN = Math.PI / 180;

/** Slope air of a moment: its still-air speed and where it goes (null: nowhere). */
export interface SlopeAir {
  phase: Phase;
  speedMps: number;
  toDeg: number | null;
  landform: Landform;
}

/** Where air, and scent with it, leaves the hunter: a mean drift and its spread. */
export interface Drift {
  /** Null when the mean is too weak to have a direction. */
  driftToDeg: number | null;
  driftSpeedMps: number;
  /** Spread of each component. */
  sigmaMps: number;
  /** Steadiness: mean drift over its spread. */
  kappa: number;
  /** Direction of the mean, however weak. */
  meanToDeg: number;
  /** Parts of the mean drift. */
  windMps: number;
  slopeAirMps: number;
}

/**
 * Mean and spread of the drift: the wind at the site and the slope air that this wind leaves. A statement about
 * averages over minutes; one gust may carry scent elsewhere.
 *
 * @source direction of a two-dimensional normal vector: Mardia and Jupp 2000, projected normal distribution
 */
export function driftAt(wind: SiteWind, air: SlopeAir, constants: ModelConstants): Drift {
  const isMoving = air.phase !== "turning" && air.toDeg !== null;
  const slopeAirMps = isMoving ? air.speedMps * wind.slopeAirFade : 0;
  const toRad = (air.toDeg ?? 0) * RADIAN;
  const east = wind.eastMps + slopeAirMps * Math.sin(toRad);
  const north = wind.northMps + slopeAirMps * Math.cos(toRad);
  const isLevel = air.landform === "crest" || air.landform === "flat";
  const wander =
    air.phase === "turning" || isLevel
      ? constants.turnSpreadMps * constants.slopeAirCover[wind.cover] * wind.slopeAirFade
      : 0;
  const variance = wind.varianceMps2 + (constants.slopeAirErrorShare * slopeAirMps) ** 2 + wander ** 2;
  const sigmaMps = Math.max(constants.spreadMinMps, Math.sqrt(variance));
  const driftSpeedMps = Math.sqrt(east * east + north * north);
  const meanToDeg = normalizeDeg(Math.atan2(east, north) / RADIAN);
  return {
    driftToDeg: driftSpeedMps < constants.anyDirectionMps ? null : meanToDeg,
    driftSpeedMps,
    sigmaMps,
    kappa: Math.min(constants.kappaMax, driftSpeedMps / sigmaMps),
    meanToDeg,
    windMps: wind.speedMps,
    slopeAirMps,
  };
}

/** Whether the drift may go any way: too weak, too unsteady, or the open wind calm. It is then never better than marginal. */
export function isAnyDirection(drift: Drift, openMps: number, constants: ModelConstants): boolean {
  return (
    drift.kappa < constants.steadyMin ||
    drift.driftSpeedMps < constants.anyDirectionMps ||
    openMps < constants.calmBelowMps
  );
}
