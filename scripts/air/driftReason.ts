import { compassPoint } from "../geo/compassPoints.ts";
import type { Drift } from "./driftAt.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { type Approach, type ReachPieces, reachPieces, reachShare } from "./reachShare.ts";
import type { Phase, Verdict } from "./slopeSite.ts";

/** What a reason is told from. */
export interface DriftFacts {
  verdict: Verdict;
  drift: Drift;
  /** Chance that scent reaches an approach, from which the verdict was taken. */
  share: number;
  phase: Phase;
  approaches: readonly Approach[];
  openMps: number;
  isLee: boolean;
  isSlopeAirKnown: boolean;
}

/** The approach that takes most of the scent; null when none is within scent range. */
export function mostReached(
  drift: Pick<Drift, "kappa" | "meanToDeg">,
  approaches: readonly Approach[],
  constants: ModelConstants,
): Approach | null {
  let most: Approach | null = null;
  let mostShare = -1;
  for (const approach of approaches) {
    if (approach.distanceM[0] >= constants.scentRangeM) continue;
    const share = reachShare(drift, piecesOf(approach, constants));
    if (share > mostShare) {
      most = approach;
      mostShare = share;
    }
  }
  return most;
}

/** An approach is asked for in every cell of a table, and never changes. */
const keptPieces = new WeakMap<Approach, { constants: ModelConstants; pieces: ReachPieces }>();

function piecesOf(approach: Approach, constants: ModelConstants): ReachPieces {
  const kept = keptPieces.get(approach);
  if (kept?.constants === constants) return kept.pieces;
  const pieces = reachPieces([approach], constants);
  keptPieces.set(approach, { constants, pieces });
  return pieces;
}

/** "the bench trail", or "the approach" when it has no name. */
export function approachWords(approach: Approach | null): string {
  const name = approach?.name?.trim();
  if (!name) return "the approach";
  return /^(the|a|an) /i.test(name) ? `the ${name.replace(/^\S+ /, "")}` : `the ${name}`;
}

/** What moves the air, as a subject with its verb: "the air climbs", "the wind goes". */
export function moverWords(drift: Drift, phase: Phase): string {
  if (drift.windMps >= 2 * drift.slopeAirMps || phase === "turning") return "drift goes";
  return phase === "rising" ? "the air climbs" : "the air falls";
}

/** One sentence of at most 22 words that tells where the drift goes and which approach it meets or misses. */
export function driftReason(facts: DriftFacts, constants: ModelConstants): string {
  const { drift, verdict, openMps, phase } = facts;
  const approach = approachWords(mostReached(drift, facts.approaches, constants));
  const point = compassPoint(drift.meanToDeg);
  const known = facts.isSlopeAirKnown ? "" : " by the general wind alone";
  const mover = moverWords(drift, phase);
  const goes = mover === "drift goes" ? `Drift goes ${point}` : `${capital(mover)} ${point}`;
  if (verdict === "suits") {
    const off = facts.approaches.length > 1 ? "off every approach" : `off ${approach}`;
    return `${goes}${known}, ${off}.`;
  }
  if (verdict === "avoid") {
    if (drift.driftToDeg === null) return `Weak air may drift any way, too often onto ${approach}.`;
    return `${goes}${known}, onto ${approach}.`;
  }
  if (openMps < constants.calmBelowMps && drift.driftToDeg !== null && facts.share < constants.suitsBelow) {
    return `Calm: ${mover === "drift goes" ? "drift goes" : mover} ${point}, but with no wind it may go any way.`;
  }
  if (drift.driftToDeg === null) return "Drift is too weak to have a direction; it may go any way.";
  if (facts.share >= constants.suitsBelow) return `${goes}${known}; its edge reaches ${approach}.`;
  if (facts.isLee) return `In the lee the wind swirls; drift may turn back onto ${approach}.`;
  return `${goes}${known} but wavers; one time in ten it goes the other way.`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
