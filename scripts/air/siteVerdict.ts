import { type Drift, isAnyDirection } from "./driftAt.ts";
import { driftReason } from "./driftReason.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { Approach } from "./reachShare.ts";
import type { Phase, Verdict } from "./slopeSite.ts";

/**
 * The verdict of a chance that scent reaches an approach. A drift that may go any direction is never better than
 * marginal.
 */
export function shareVerdict(share: number, anyDirection: boolean, constants: ModelConstants): Verdict {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`share must be 0 to 1, found ${share}`);
  if (share >= constants.avoidFrom) return "avoid";
  return share >= constants.suitsBelow || anyDirection ? "marginal" : "suits";
}

export interface SiteVerdictQuestion {
  drift: Drift;
  share: number;
  openMps: number;
  isLee: boolean;
  phase: Phase;
  approaches: readonly Approach[];
  constants: ModelConstants;
}

/** The verdict of a site at one moment with its reason in words. No approach: not assessed. */
export function siteVerdict(question: SiteVerdictQuestion): { verdict: Verdict; reason: string } {
  const { drift, share, openMps, approaches, constants } = question;
  if (approaches.length === 0) return { verdict: "not assessed", reason: NO_APPROACH };
  const verdict = shareVerdict(share, isAnyDirection(drift, openMps, constants), constants);
  return { verdict, reason: driftReason({ ...question, verdict, isSlopeAirKnown: true }, constants) };
}

export const NO_APPROACH = "No approach is given for this session.";
