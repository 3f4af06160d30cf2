import type { ModelConstants } from "./modelConstants.ts";
import type { Cover, Landform } from "./slopeSite.ts";

const RADIAN = Math.PI / 180;

/** How steepness speeds the slope air: 1 at 20 deg and on valley floors, 0 on crest and flat ground. */
export function steepnessFactor(landform: Landform, slopeDeg: number, constants: ModelConstants): number {
  if (landform === "floor") return 1;
  if (landform !== "slope") return 0;
  const ratio = Math.sin(slopeDeg * RADIAN) / Math.sin(constants.speedSlopeDeg * RADIAN);
  return Math.min(constants.slopeFactorMax, Math.cbrt(ratio));
}

/** Ground and sky that set the speed of the slope air. */
export interface SlopeAirDrive {
  landform: Landform;
  /** How the steepness speeds it: `steepnessFactor`. */
  steepness: number;
  cover: Cover;
  /** Clear-sky net radiation, W/m2. */
  clearNetWm2: number;
  /** Share of clear global radiation left under the cloud. */
  globalShare: number;
  /** Share of the clear-sky heat loss left under the cloud. */
  coolingShare: number;
}

/**
 * Speed of rising air at nose height in still air, m/s, 0 to 2.7; 0 without net heat. Wind fades it (`slopeAirFade`).
 * A smooth figure: gullies gather more, spurs less.
 */
export function risingSpeedMps(drive: SlopeAirDrive, constants: ModelConstants): number {
  const c = constants;
  const full = drive.landform === "floor" ? c.floorRiseMps : c.riseSpeedMps;
  const heat = Math.min(c.speedDriveMax, Math.max(0, drive.clearNetWm2 / c.riseSpeedNetWm2));
  return full * Math.cbrt(heat) * drive.steepness * c.slopeAirCover[drive.cover] * drive.globalShare;
}

/**
 * Speed of falling air at nose height in still air, m/s, once it is steady; `fallGrowthShare` tells how it gets there.
 */
export function steadyFallingSpeedMps(drive: SlopeAirDrive, constants: ModelConstants): number {
  const c = constants;
  const full = drive.landform === "floor" ? c.floorFallMps : c.fallSpeedMps;
  const lack = (c.fallNetWm2 - drive.clearNetWm2) / (c.fallNetWm2 + c.fallSpeedNetWm2);
  const cooling = Math.min(c.speedDriveMax, Math.max(0, lack));
  return full * Math.cbrt(cooling) * drive.steepness * c.slopeAirCover[drive.cover] * drive.coolingShare;
}

/** Share of its steady speed that falling air has some minutes after it began, 0.4 to 1. @source Nadeau et al. 2013 */
export function fallGrowthShare(sinceMin: number, constants: ModelConstants): number {
  const grown =
    constants.fallStartShare + (1 - constants.fallStartShare) * (sinceMin / constants.fallGrowMin);
  return Math.min(1, Math.max(constants.fallStartShare, grown));
}

/** Share of the slope air that a general wind leaves, 1 to 0. @param shelteredMps open wind times terrain shelter */
export function slopeAirFade(shelteredMps: number, constants: ModelConstants): number {
  const { fadeFromMps, fadeToMps } = constants;
  return Math.min(1, Math.max(0, (fadeToMps - shelteredMps) / (fadeToMps - fadeFromMps)));
}
