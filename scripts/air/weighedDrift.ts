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
const TURNING = 1;

/** The slope air of a site in all its members. */
export interface SiteAir {
  landform: Landform;
  directions: AirDirections;
  members: MemberAir;
}

/** A drift with what it does to the approaches of a session, and its verdict alone. */
export interface WeighedDrift {
  drift: Drift;
  share: number;
  isAnyDirection: boolean;
  eastMps: number;
  northMps: number;
  verdict: Verdict;
}

export function weighedDrift(
  drift: Drift,
  pieces: ReachPieces,
  openMps: number,
  constants: ModelConstants,
): WeighedDrift {
  const share = reachShare(drift, pieces);
  const anyDirection = isAnyDirection(drift, openMps, constants);
  const toRad = drift.meanToDeg * RADIAN;
  return {
    drift,
    share,
    isAnyDirection: anyDirection,
    eastMps: drift.driftSpeedMps * Math.sin(toRad),
    northMps: drift.driftSpeedMps * Math.cos(toRad),
    verdict: shareVerdict(share, anyDirection, constants),
  };
}

/**
 * The drifts of the members of a site's air under one wind, by member and step of the air. A drift that is that of the
 * member's step before (steady falling air), or of all (no slope air left), is the very same object.
 */
export function memberDrifts(
  air: SiteAir,
  wind: SiteWind,
  pieces: ReachPieces,
  constants: ModelConstants,
): (member: number, step: number) => WeighedDrift {
  const { landform, directions, members } = air;
  const toDegs = [directions.fallToDeg, null, directions.riseToDeg] as const;
  const latest: (WeighedDrift | undefined)[] = new Array(members.count);
  const latestMps = new Float64Array(members.count);
  const latestPhase = new Uint8Array(members.count);
  const still: (WeighedDrift | undefined)[] = [undefined, undefined];
  const weigh = (code: number, speedMps: number): WeighedDrift => {
    const phase = PHASES[code] as Phase;
    const toDeg = phase === "rising" ? directions.riseToDeg : directions.fallToDeg;
    return weighedDrift(
      driftAt(wind, { phase, speedMps, toDeg, landform }, constants),
      pieces,
      wind.openMps,
      constants,
    );
  };
  return (member, step) => {
    const place = member * members.steps + step;
    const code = members.phase[place] as number;
    const speedMps = members.speedMps[place] as number;
    if (code === TURNING || toDegs[code] === null || speedMps * wind.slopeAirFade === 0) {
      const kind = code === TURNING ? 1 : 0;
      still[kind] ??= weigh(code, speedMps);
      return still[kind];
    }
    const kept = latest[member];
    if (kept !== undefined && latestPhase[member] === code && latestMps[member] === speedMps) return kept;
    const made = weigh(code, speedMps);
    latest[member] = made;
    latestPhase[member] = code;
    latestMps[member] = speedMps;
    return made;
  };
}
