import { type GroundProfile, profileHeightM } from "./groundProfile.ts";
import type { ShootingRules } from "./shootingRules.ts";

export type BackstopGround = "earth" | "far" | "none";

/** What stands behind an animal at one range on one bearing. */
export interface Backstop {
  rangeM: number;
  ground: BackstopGround;
  /** From the animal on to where the line meets the ground; null when it meets none as far as was looked, or is not known. */
  beyondM: number | null;
  /** How steeply the line falls, negative when it rises; null when the ground under muzzle or animal is not known. */
  downDeg: number | null;
  /** Between line and ground where they meet, 0 (grazing) up; null without a meeting. */
  meetsAtDeg: number | null;
  /** The ground itself stands in the way before the animal. It counts all the same: the grid may be wrong. */
  isHidden: boolean;
  /** Why it is not earth; null for earth. */
  why:
    | "ground falls away"
    | "too far behind"
    | "within the grid error only"
    | "no ground behind"
    | "not known"
    | null;
}

export interface ShotFacts {
  /** Muzzle over the ground of the seat. */
  muzzleHeightM: number;
  rangeM: number;
  /** How far the heights of the grid may be off. */
  gridErrorM: number;
}

interface Meeting {
  beyondM: number;
  risePerM: number;
}

type Found = { kind: "met"; meeting: Meeting } | { kind: "none" } | { kind: "unknown" };

// Slopes as small as this are arithmetic, not ground.
const LEVEL_PER_M = 1e-9;

/**
 * What a straight line from the muzzle through the aim point meets beyond it. `earth`: ground within the earth distance that
 * rises away or is level, also when the ground beyond is lower, or the animal and all beyond it higher, by the error of the grid;
 * `far`: ground within the far distance; else `none`, and where the ground is not known. Knows nothing of trees, ricochet or the
 * drop of a bullet.
 *
 * @param profile   ground along the bearing of the shot, out to the range and as far beyond as is looked
 * @throws {RangeError} when the range is not over 0
 */
export function backstop(profile: GroundProfile, facts: ShotFacts, rules: ShootingRules): Backstop {
  const { muzzleHeightM, rangeM, gridErrorM } = facts;
  if (!(rangeM > 0)) throw new RangeError(`rangeM must be over 0, found ${rangeM}`);
  const muzzleM = profileHeightM(profile, 0) + muzzleHeightM;
  const aimM = profileHeightM(profile, rangeM) + rules.aimPointHeightM;
  const fallPerM = (muzzleM - aimM) / rangeM;
  const unknown = { rangeM, beyondM: null, meetsAtDeg: null, why: "not known" } as const;
  if (Number.isNaN(fallPerM)) return { ...unknown, ground: "none", downDeg: null, isHidden: false };
  const downDeg = degrees(fallPerM);
  const isHidden = isGroundBefore(profile, muzzleM, fallPerM, rangeM);
  const found = meetingBeyond(profile, muzzleM, fallPerM, rangeM, 0);
  if (found.kind === "unknown") return { ...unknown, ground: "none", downDeg, isHidden };
  if (found.kind === "none") {
    return { ...unknown, ground: "none", downDeg, isHidden, why: "no ground behind" };
  }
  const { beyondM, risePerM } = found.meeting;
  const meetsAtDeg = Math.max(0, downDeg + degrees(risePerM));
  const met = { rangeM, beyondM, downDeg, meetsAtDeg, isHidden };
  if (beyondM > rules.backstopFarM) return { ...met, ground: "none", why: "no ground behind" };
  if (beyondM > rules.backstopEarthM) return { ...met, ground: "far", why: "too far behind" };
  if (risePerM < -LEVEL_PER_M) return { ...met, ground: "far", why: "ground falls away" };
  const ifLower = meetingBeyond(profile, muzzleM, fallPerM, rangeM, -gridErrorM);
  const ifHigher = meetingBeyond(profile, muzzleM, fallPerM - gridErrorM / rangeM, rangeM, gridErrorM);
  const holds = [ifLower, ifHigher].every((other) => isEarth(other, rules));
  return holds
    ? { ...met, ground: "earth", why: null }
    : { ...met, ground: "far", why: "within the grid error only" };
}

function isEarth(found: Found, { backstopEarthM }: ShootingRules): boolean {
  if (found.kind !== "met") return false;
  return found.meeting.beyondM <= backstopEarthM && found.meeting.risePerM >= -LEVEL_PER_M;
}

/** First place beyond the animal where the line is on or under the ground, which is taken higher by an offset. */
function meetingBeyond(
  { stepM, heightsM }: GroundProfile,
  muzzleM: number,
  fallPerM: number,
  rangeM: number,
  groundOffsetM: number,
): Found {
  const overM = (distanceM: number, groundM: number): number =>
    muzzleM - fallPerM * distanceM - (groundM + groundOffsetM);
  let fromM = rangeM;
  let groundM = profileHeightM({ stepM, heightsM }, rangeM);
  let clearM = overM(fromM, groundM);
  for (let at = Math.floor(rangeM / stepM) + 1; at < heightsM.length; at++) {
    const toM = at * stepM;
    const nextM = heightsM[at]!;
    if (Number.isNaN(nextM)) return { kind: "unknown" };
    const nextClearM = overM(toM, nextM);
    if (nextClearM <= 0) {
      const share = clearM <= 0 ? 0 : clearM / (clearM - nextClearM);
      const beyondM = fromM + (toM - fromM) * share - rangeM;
      return { kind: "met", meeting: { beyondM, risePerM: (nextM - groundM) / (toM - fromM) } };
    }
    fromM = toM;
    groundM = nextM;
    clearM = nextClearM;
  }
  return { kind: "none" };
}

function isGroundBefore(
  { stepM, heightsM }: GroundProfile,
  muzzleM: number,
  fallPerM: number,
  rangeM: number,
): boolean {
  for (let at = 1; at * stepM < rangeM; at++) {
    if (muzzleM - fallPerM * at * stepM < heightsM[at]!) return true;
  }
  return false;
}

function degrees(perM: number): number {
  return (Math.atan(perM) * 180) / Math.PI;
}
