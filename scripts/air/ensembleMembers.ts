import type { ModelConstants } from "./modelConstants.ts";
import type { SlopeSite } from "./slopeSite.ts";

const RADIAN = Math.PI / 180;

/** One run of the model: the site and the thresholds as this run takes them. The first member is the plain run. */
export interface EnsembleMember {
  slopeDeg: number;
  /** Unit normal of the ground: east, north, up. */
  normalEast: number;
  normalNorth: number;
  normalUp: number;
  /** Share of the sky that the ground sees, 0.5 to 1. */
  skyShare: number;
  /** 0 the sky as given, 1 more cloud, 2 less cloud. */
  cloudCase: 0 | 1 | 2;
  /** 0 the usual air, 1 very clear, 2 hazy. */
  airCase: 0 | 1 | 2;
  longwaveFactor: number;
  riseNetWm2: number;
  fallNetWm2: number;
  riseLagMin: number;
  fallLagMin: number;
  /** How long falling outlives its drive; 0 but on valley floors. */
  fallHoldMin: number;
  horizonShiftDeg: number;
}

/**
 * The plain run and the members of the ensemble for one site, plain run first. Crest, flat and floor are taken as
 * level ground; a floor is taken without its skyline.
 *
 * @throws {RangeError} a slope out of 0 to 90, or sloping ground without an aspect
 */
export function ensembleMembers(site: SlopeSite, constants: ModelConstants): readonly EnsembleMember[] {
  const kept = keptMembers.get(site);
  if (kept?.constants === constants) return kept.members;
  const members = newMembers(site, constants);
  keptMembers.set(site, { constants, members });
  return members;
}

/** A site is asked for every day of a year; neither sites nor constants ever change. */
const keptMembers = new WeakMap<
  SlopeSite,
  { constants: ModelConstants; members: readonly EnsembleMember[] }
>();

function newMembers(site: SlopeSite, constants: ModelConstants): EnsembleMember[] {
  const isSlope = site.landform === "slope";
  const slopeDeg = isSlope ? site.slopeDeg : 0;
  const aspectDeg = isSlope ? site.aspectDeg : 0;
  if (slopeDeg === null || !(slopeDeg >= 0 && slopeDeg <= 90)) {
    throw new RangeError(`slopeDeg must be 0 to 90, found ${slopeDeg}`);
  }
  if (aspectDeg === null || !Number.isFinite(aspectDeg)) {
    throw new RangeError(`aspectDeg must be 0 to 360 on sloping ground, found ${aspectDeg}`);
  }
  const c = constants;
  const isFloor = site.landform === "floor";
  const lagMin = isFloor
    ? { rise: c.floorRiseLagMin, fall: c.floorFallLagMin }
    : { rise: c.riseLagMin[site.cover], fall: c.fallLagMin[site.cover] };
  const lagLong = isFloor ? c.ensembleFloorLagLong : c.ensembleLagLong;
  const lagShort = isFloor ? c.ensembleFloorLagShort : c.ensembleLagShort;
  const common = { fallHoldMin: isFloor ? c.floorHoldMin : 0 };
  const plain: EnsembleMember = {
    ...common,
    ...ground(slopeDeg, aspectDeg),
    cloudCase: 0,
    airCase: 0,
    longwaveFactor: 1,
    riseNetWm2: c.riseNetWm2,
    fallNetWm2: c.fallNetWm2,
    riseLagMin: lagMin.rise,
    fallLagMin: lagMin.fall,
    horizonShiftDeg: 0,
  };
  const others = c.ensembleSigns.map((signs): EnsembleMember => {
    const lagFactor = signs.lag > 0 ? lagLong : lagShort;
    return {
      ...common,
      ...ground(
        Math.min(90, slopeDeg * (1 + signs.slope * c.ensembleSlope)),
        aspectDeg + signs.aspect * c.ensembleAspectDeg,
      ),
      cloudCase: signs.cloud > 0 ? 1 : 2,
      airCase: signs.transmittance > 0 ? 1 : 2,
      longwaveFactor: 1 + signs.longwave * c.ensembleLongwave,
      riseNetWm2: signs.threshold > 0 ? c.riseNetLateWm2 : c.riseNetEarlyWm2,
      fallNetWm2: signs.threshold > 0 ? c.fallNetLateWm2 : c.fallNetEarlyWm2,
      riseLagMin: lagMin.rise * lagFactor,
      fallLagMin: lagMin.fall * lagFactor,
      horizonShiftDeg: isFloor ? 0 : signs.horizon * c.ensembleHorizonDeg,
    };
  });
  return [plain, ...others];
}

function ground(
  slopeDeg: number,
  aspectDeg: number,
): Pick<EnsembleMember, "slopeDeg" | "normalEast" | "normalNorth" | "normalUp" | "skyShare"> {
  const sinSlope = Math.sin(slopeDeg * RADIAN);
  const cosSlope = Math.cos(slopeDeg * RADIAN);
  return {
    slopeDeg,
    normalEast: sinSlope * Math.sin(aspectDeg * RADIAN),
    normalNorth: sinSlope * Math.cos(aspectDeg * RADIAN),
    normalUp: cosSlope,
    skyShare: (1 + cosSlope) / 2,
  };
}
