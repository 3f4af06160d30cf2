import { compassPoint } from "../geo/compassPoints.ts";
import { approachWords, capital, mostReached } from "./driftReason.ts";
import type { JudgedStep, SessionQuestion } from "./judgedSteps.ts";
import type { SessionStep } from "./sessionSteps.ts";
import type { Stretch } from "./sitStretch.ts";
import type { Verdict } from "./slopeSite.ts";

const WORDS_MAX = 22;

export interface SessionFacts {
  question: SessionQuestion;
  steps: readonly JudgedStep[];
  timeline: readonly SessionStep[];
  verdict: Verdict;
  /** Null when the verdict is avoid. */
  sit: Stretch | null;
  sitCleanShare: number;
}

/** One sentence of at most 22 words: until when or from when the site can be sat, and what changes then. */
export function sessionReason(facts: SessionFacts): string {
  const named = reasonWith(facts, true);
  return named.split(/\s+/).length <= WORDS_MAX ? named : reasonWith(facts, false);
}

function reasonWith(facts: SessionFacts, isNamed: boolean): string {
  const { steps, sit, question } = facts;
  if (!sit) return avoidReason(facts, isNamed);
  const stepMs = question.constants.turnPrintMin * 60_000;
  const printed = (ms: number, round: (x: number) => number): string =>
    `about ${question.clockText(new Date(round(ms / stepMs) * stepMs))}`;
  const from = printed((facts.timeline[sit.first] as SessionStep).fromMs, Math.ceil);
  const until = printed((facts.timeline[sit.end - 1] as SessionStep).toMs, Math.floor);
  const before = sit.first > 0 ? change(facts, steps[sit.first - 1], isNamed) : null;
  const after = sit.end < steps.length ? change(facts, steps[sit.end], isNamed) : null;
  const doubt = facts.verdict === "marginal" ? "; unsure even then" : "";
  if (before && after) return `From ${from} until ${until}, then ${after}${doubt}.`;
  if (after) return `Until ${until}, then ${after}${facts.verdict === "marginal" ? "; unsure before" : ""}.`;
  if (before) return `From ${from}; before that ${before}${doubt}.`;
  return facts.verdict === "suits" ? offReason(facts, isNamed) : marginalReason(facts, isNamed);
}

/** What a step of avoid does: "the air climbs to the bench trail". */
function change(facts: SessionFacts, step: JudgedStep | undefined, isNamed: boolean): string {
  if (step?.localNote) return "a local note says avoid";
  if (!step?.drift) return "the air is not known";
  const approach = wordsFor(facts, step, isNamed);
  const isWindy = step.drift.windMps >= 2 * step.drift.slopeAirMps && step.drift.windMps > 0;
  if (isWindy && step.windFromDeg !== null)
    return `wind from ${compassPoint(step.windFromDeg)} carries to ${approach}`;
  if (step.phase === "rising") return `the air climbs to ${approach}`;
  return step.phase === "falling" ? `the air falls to ${approach}` : `the air swirls over ${approach}`;
}

function wordsFor(facts: SessionFacts, step: JudgedStep, isNamed: boolean): string {
  const { approaches, constants } = facts.question;
  return approachWords(isNamed && step.drift ? mostReached(step.drift, approaches, constants) : null);
}

function avoidReason(facts: SessionFacts, isNamed: boolean): string {
  const { steps, question } = facts;
  const avoided = steps.filter((s) => s.verdict === "avoid");
  const mid = avoided[Math.floor(avoided.length / 2)];
  const mostly = avoided.length > 0.8 * steps.length ? "nearly all session" : "for much of the session";
  if (!mid) return `The session is under ${question.constants.sitMinMin} min, too short to sit.`;
  return `${capital(change(facts, mid, isNamed))} ${mostly}.`;
}

function offReason(facts: SessionFacts, isNamed: boolean): string {
  const { steps, question } = facts;
  if (steps.some((s) => s.localNote)) return "A local note says it suits.";
  const clean = facts.sitCleanShare > 0.98 ? "all session" : "but while the air turns";
  const step = steps.find((s) => s.verdict === "suits" && s.drift);
  if (!step) return `Drift stays off the approach ${clean}.`;
  const off = question.approaches.length > 1 ? "every approach" : wordsFor(facts, step, isNamed);
  const isTurning = steps.every((s) => s.verdict === "suits" || s.phase === "turning");
  const when = facts.sitCleanShare > 0.98 || isTurning ? clean : "for most of the session";
  return `Drift stays off ${off} ${when}.`;
}

function marginalReason(facts: SessionFacts, isNamed: boolean): string {
  const { steps, question } = facts;
  const { constants } = question;
  const marginal = steps.filter((s) => s.verdict === "marginal" && s.drift);
  const step = marginal[Math.floor(marginal.length / 2)];
  if (!step?.drift) {
    return steps.some((s) => s.localNote)
      ? "A local note says marginal."
      : "Part of the session can not be assessed.";
  }
  const approach = wordsFor(facts, step, isNamed);
  const reached = marginal.filter((s) => (s.reachShare ?? 0) >= constants.suitsBelow);
  if (reached.length > marginal.length / 2) {
    return `The edge of the drift reaches ${approach} for much of the session.`;
  }
  const isCalm = step.drift.windMps < 0.05;
  if (isCalm) return "Calm: without wind the drift may go any way.";
  if (step.drift.driftToDeg === null) return "Drift is too weak to have a direction for much of the session.";
  return `Drift wavers for much of the session; it may turn onto ${approach}.`;
}
