import { normalizeDeg } from "../geo/bearings.ts";
import { type Drift, driftAt, isAnyDirection } from "./driftAt.ts";
import type { MemberAir } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { AirDirections } from "./phaseSpans.ts";
import { type ReachPieces, reachShare } from "./reachShare.ts";
import { shareVerdict } from "./siteVerdict.ts";
import type { Landform, Phase, Verdict } from "./slopeSite.ts";
import type { SiteWind } from "./windAtSite.ts";

const RADIAN = Math.PI / 180;
const PHASES: readonly Phase[] = ["falling", "turning", "rising"];

/** The slope air of a site in all its members. */
export interface SiteAir {
  landform: Landform;
  directions: AirDirections;
  members: MemberAir;
}

/** Sums over members and steps; `driftMean` makes the mean of them. */
export interface DriftSums {
  count: number;
  share: number;
  anyDirection: number;
  east: number;
  north: number;
  sigma: number;
  wind: number;
  slopeAir: number;
}

export function emptySums(): DriftSums {
  return { count: 0, share: 0, anyDirection: 0, east: 0, north: 0, sigma: 0, wind: 0, slopeAir: 0 };
}

/** The drift of one member at one step of the computed air. */
export function memberDrift(
  air: SiteAir,
  member: number,
  step: number,
  wind: SiteWind,
  constants: ModelConstants,
): Drift {
  const place = member * air.members.steps + step;
  const phase = PHASES[air.members.phase[place] as number] as Phase;
  const toDeg = phase === "rising" ? air.directions.riseToDeg : air.directions.fallToDeg;
  const speedMps = air.members.speedMps[place] as number;
  return driftAt(wind, { phase, speedMps, toDeg, landform: air.landform }, constants);
}

/** Adds one drift to the sums. @returns the verdict of this drift alone */
export function addDrift(
  sums: DriftSums,
  drift: Drift,
  pieces: ReachPieces,
  openMps: number,
  constants: ModelConstants,
): Verdict {
  const share = reachShare(drift, pieces);
  const anyDirection = isAnyDirection(drift, openMps, constants);
  const toRad = drift.meanToDeg * RADIAN;
  sums.count += 1;
  sums.share += share;
  sums.anyDirection += anyDirection ? 1 : 0;
  sums.east += drift.driftSpeedMps * Math.sin(toRad);
  sums.north += drift.driftSpeedMps * Math.cos(toRad);
  sums.sigma += drift.sigmaMps;
  sums.wind += drift.windMps;
  sums.slopeAir += drift.slopeAirMps;
  return shareVerdict(share, anyDirection, constants);
}

/** The mean drift, the mean chance, and the verdict of both: any direction when over half of the drifts say so. */
export function driftMean(
  sums: DriftSums,
  constants: ModelConstants,
): { drift: Drift; share: number; verdict: Verdict } {
  if (sums.count === 0) throw new RangeError("sums must hold at least one drift, found none");
  const n = sums.count;
  const driftSpeedMps = Math.hypot(sums.east, sums.north) / n;
  const sigmaMps = sums.sigma / n;
  const meanToDeg = normalizeDeg(Math.atan2(sums.east, sums.north) / RADIAN);
  const share = Math.min(1, sums.share / n);
  return {
    drift: {
      driftToDeg: driftSpeedMps < constants.anyDirectionMps ? null : meanToDeg,
      driftSpeedMps,
      sigmaMps,
      kappa: Math.min(constants.kappaMax, driftSpeedMps / sigmaMps),
      meanToDeg,
      windMps: sums.wind / n,
      slopeAirMps: sums.slopeAir / n,
    },
    share,
    verdict: shareVerdict(share, sums.anyDirection > n / 2, constants),
  };
}

/** The phase that most members have at a step; `turning` when none leads. */
export function commonPhase(members: MemberAir, step: number): Phase {
  const votes = [0, 0, 0];
  for (let m = 0; m < members.count; m++) {
    const code = members.phase[m * members.steps + step] as number;
    votes[code] = (votes[code] as number) + 1;
  }
  const [falling, turning, rising] = votes as [number, number, number];
  if (falling > turning && falling > rising) return "falling";
  return rising > turning && rising > falling ? "rising" : "turning";
}
