import { normalizeDeg } from "../geo/bearings.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { slopeAirFade } from "./slopeAirSpeed.ts";
import type { Cover, SlopeSite, WindClass } from "./slopeSite.ts";

const RADIAN = Math.PI / 180;

/** Open wind at 10 m. A null direction is variable, a null speed is not known. */
export interface OpenWind {
  windFromDeg: number | null;
  windSpeedMps: number | null;
  gustMps?: number | null;
  /** The forecast is over 24 h old, or two sources differ by 45 deg. */
  isDirectionDoubtful?: boolean;
}

/** The general wind as it arrives at nose height at a site. */
export interface SiteWind {
  openMps: number;
  /** Null in a calm without direction. */
  windFromDeg: number | null;
  /** Near-ground wind; gusts by the same factors, null when not known. */
  speedMps: number;
  gustMps: number | null;
  /** Part of the near-ground wind towards east and towards north. */
  eastMps: number;
  northMps: number;
  /** Terrain's share of the open wind, 0.4 to 1.3. */
  shelter: number;
  /** Share of the slope air that this wind leaves, 0 to 1. */
  slopeAirFade: number;
  isLee: boolean;
  /** Variance that does not depend on the slope air, (m/s)2. */
  varianceMps2: number;
  cover: Cover;
}

/** Terrain's share of the open wind, 0.4 in deep shelter to 1.3 on a crest. @param sxDeg greatest upwind slope */
export function terrainShelter(sxDeg: number, constants: ModelConstants): number {
  const { shelterMin, shelterMax, shelterPerDeg } = constants;
  return Math.min(shelterMax, Math.max(shelterMin, 1 - shelterPerDeg * sxDeg));
}

/** Greatest upwind slope for a wind, between the 16 known ones by straight lines; 0 when none are known. */
export function upwindSlopeDeg(sxDeg: ArrayLike<number> | null, windFromDeg: number): number {
  if (!sxDeg) return 0;
  if (sxDeg.length !== 16) throw new RangeError(`sxDeg must have 16 winds, found ${sxDeg.length}`);
  const place = normalizeDeg(windFromDeg) / 22.5;
  const whole = Math.floor(place);
  const here = sxDeg[whole % 16] as number;
  const next = sxDeg[(whole + 1) % 16] as number;
  const slopeDeg = here + (place - whole) * (next - here);
  if (!Number.isFinite(slopeDeg)) throw new RangeError(`sxDeg must be finite angles, found ${slopeDeg}`);
  return slopeDeg;
}

/**
 * The open wind brought down to nose height under the site's cover and behind its ground.
 *
 * @returns null when the speed is not known, or when the direction is not known and the wind is not calm
 * @source Andrews 2012 (cover); Winstral et al. 2002 (greatest upwind slope)
 */
export function windAtSite(
  wind: OpenWind,
  site: Pick<SlopeSite, "cover" | "sxDeg">,
  constants: ModelConstants,
): SiteWind | null {
  const c = constants;
  const openMps = wind.windSpeedMps;
  if (openMps === null) return null;
  if (!(openMps >= 0 && openMps < 120))
    throw new RangeError(`windSpeedMps must be 0 to 120, found ${openMps}`);
  const isCalm = openMps < c.calmBelowMps;
  if (wind.windFromDeg === null && !isCalm) return null;
  const fromDeg = wind.windFromDeg === null ? null : normalizeDeg(wind.windFromDeg);
  const sxDeg = fromDeg === null ? 0 : upwindSlopeDeg(site.sxDeg, fromDeg);
  const shelter = terrainShelter(sxDeg, c);
  const coverShare = c.windCover[site.cover] * shelter;
  const speedMps = fromDeg === null ? 0 : coverShare * openMps;
  const isLee = sxDeg >= c.leeSxDeg && openMps >= c.leeWindMps;
  const spreadDeg = wind.isDirectionDoubtful ? c.doubtfulDirectionSpreadDeg : c.directionSpreadDeg;
  const varianceMps2 =
    c.meanderMps[site.cover] ** 2 +
    (c.forecastErrorMps * coverShare) ** 2 +
    (c.turbulenceShare[site.cover] * speedMps) ** 2 +
    (Math.tan(spreadDeg * RADIAN) * speedMps) ** 2 +
    (isLee ? (c.leeSpreadShare * c.windCover[site.cover] * openMps) ** 2 : 0);
  const towardsRad = ((fromDeg ?? 0) + 180) * RADIAN;
  return {
    openMps,
    windFromDeg: fromDeg,
    speedMps,
    gustMps: wind.gustMps === undefined || wind.gustMps === null ? null : coverShare * wind.gustMps,
    eastMps: speedMps * Math.sin(towardsRad),
    northMps: speedMps * Math.cos(towardsRad),
    shelter,
    slopeAirFade: slopeAirFade(openMps * shelter, c),
    isLee,
    varianceMps2,
    cover: site.cover,
  };
}

/** The class whose rows are read for an open wind. */
export function windClass(openMps: number, constants: ModelConstants): WindClass {
  if (openMps < constants.calmBelowMps) return "calm";
  return openMps < constants.freshFromMps ? "light" : "fresh";
}

/**
 * Vector mean of winds: mean speed and the direction it comes from; the direction is null where they cancel.
 *
 * @throws {RangeError} no wind
 */
export function meanWind(winds: readonly { windFromDeg: number; windSpeedMps: number }[]): {
  windFromDeg: number | null;
  windSpeedMps: number;
} {
  if (winds.length === 0) throw new RangeError("winds must hold at least one wind, found none");
  let east = 0;
  let north = 0;
  for (const wind of winds) {
    east -= (wind.windSpeedMps * Math.sin(wind.windFromDeg * RADIAN)) / winds.length;
    north -= (wind.windSpeedMps * Math.cos(wind.windFromDeg * RADIAN)) / winds.length;
  }
  const windSpeedMps = Math.hypot(east, north);
  if (windSpeedMps < 1e-9) return { windFromDeg: null, windSpeedMps: 0 };
  return { windFromDeg: normalizeDeg(Math.atan2(-east, -north) / RADIAN), windSpeedMps };
}
