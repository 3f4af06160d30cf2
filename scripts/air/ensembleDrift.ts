import { normalizeDeg } from "../geo/bearings.ts";
import type { Drift } from "./driftAt.ts";
import type { MemberAir } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { shareVerdict } from "./siteVerdict.ts";
import type { Phase, Verdict } from "./slopeSite.ts";
import type { WeighedDrift } from "./weighedDrift.ts";

const RADIAN = Math.PI / 180;

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

export function addDrift(sums: DriftSums, weighed: WeighedDrift): void {
  const { drift } = weighed;
  sums.count += 1;
  sums.share += weighed.share;
  sums.anyDirection += weighed.isAnyDirection ? 1 : 0;
  sums.east += weighed.eastMps;
  sums.north += weighed.northMps;
  sums.sigma += drift.sigmaMps;
  sums.wind += drift.windMps;
  sums.slopeAir += drift.slopeAirMps;
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
