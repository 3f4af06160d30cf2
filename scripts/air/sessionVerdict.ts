import { type JudgedStep, judgedSteps, type SessionQuestion } from "./judgedSteps.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { sessionReason } from "./sessionReason.ts";
import type { SessionStep } from "./sessionSteps.ts";
import { NO_APPROACH } from "./siteVerdict.ts";
import { type Stretch, sitStretch, verdictShare } from "./sitStretch.ts";
import type { Verdict } from "./slopeSite.ts";

export type { JudgedStep, SessionQuestion, WindRow } from "./judgedSteps.ts";

export interface SessionVerdict {
  verdict: Verdict;
  /** Share of the usable time with `suits`, 0 to 1; null when not assessed. */
  cleanShare: number | null;
  /** The same within the sit. */
  sitCleanShare: number | null;
  /** The sit on the step grid, rounded inward; null when avoid or not assessed. */
  sitFrom: Date | null;
  sitUntil: Date | null;
  /** Third least to third greatest of the members' own sits, the printed time always inside; null as the sit. */
  sitFromRange: readonly [Date, Date] | null;
  sitUntilRange: readonly [Date, Date] | null;
  /** Longest stretch without a lasting avoid, also when it is too short to sit; null without any. */
  longest: { from: Date; until: Date; minutes: number } | null;
  reason: string;
  localNote: boolean;
  steps: readonly JudgedStep[];
}

/**
 * The verdict of one site for one session: stepped through the ensemble, the wind and the local notes. First that
 * holds: not assessed (over half the usable time is), avoid (sit too short), suits (enough of the sit does), marginal.
 */
export function sessionVerdict(question: SessionQuestion): SessionVerdict {
  const { window, constants, approaches } = question;
  if (!(window.to > window.from)) return nothing("There is no such session on this day.");
  if (approaches.length === 0 && question.localNotes.length === 0) return nothing(NO_APPROACH);
  const judged = judgedSteps(question);
  const { steps, timeline, memberVerdicts } = judged;
  const verdicts = steps.map((s) => s.verdict);
  const whole = { first: 0, end: steps.length };
  const localNote = judged.isTurned || steps.some((s) => s.localNote);
  if (verdictShare(timeline, verdicts, "not assessed", whole) > 0.5) {
    return { ...nothing(judged.unknownReason), steps, localNote };
  }
  const cleanShare = verdictShare(timeline, verdicts, "suits", whole);
  const sit = sitStretch(timeline, verdicts, constants);
  const longest = sit ? { ...inward(timeline, sit, judged.anchorMs, constants), minutes: sit.minutes } : null;
  if (!sit || !longest || sit.minutes < constants.sitMinMin) {
    const reason = sessionReason({
      question,
      steps,
      timeline,
      verdict: "avoid",
      sit: null,
      sitCleanShare: 0,
    });
    return { ...nothing(reason), verdict: "avoid", cleanShare, longest, steps, localNote };
  }
  const sitCleanShare = verdictShare(timeline, verdicts, "suits", sit);
  const verdict = sitCleanShare >= constants.sitCleanShareMin ? "suits" : "marginal";
  const own = memberVerdicts
    .map((v) => sitStretch(timeline, v, constants))
    .filter((s): s is Stretch => s !== null)
    .map((s) => inward(timeline, s, judged.anchorMs, constants));
  return {
    verdict,
    cleanShare,
    sitCleanShare,
    sitFrom: longest.from,
    sitUntil: longest.until,
    sitFromRange: trimmedRange(
      longest.from,
      own.map((s) => s.from),
      constants,
    ),
    sitUntilRange: trimmedRange(
      longest.until,
      own.map((s) => s.until),
      constants,
    ),
    longest,
    reason: sessionReason({ question, steps, timeline, verdict, sit, sitCleanShare }),
    localNote,
    steps,
  };
}

/** A stretch on the step grid: its beginning rounded up, its end rounded down. */
function inward(
  timeline: readonly SessionStep[],
  stretch: Stretch,
  anchorMs: number,
  constants: ModelConstants,
): { from: Date; until: Date } {
  const stepMs = constants.stepMin * 60_000;
  const fromMs = (timeline[stretch.first] as SessionStep).fromMs;
  const untilMs = (timeline[stretch.end - 1] as SessionStep).toMs;
  return {
    from: new Date(anchorMs + Math.ceil((fromMs - anchorMs) / stepMs) * stepMs),
    until: new Date(anchorMs + Math.floor((untilMs - anchorMs) / stepMs) * stepMs),
  };
}

function trimmedRange(
  printed: Date,
  times: readonly Date[],
  constants: ModelConstants,
): readonly [Date, Date] {
  const sorted = times.map((t) => t.getTime()).sort((a, b) => a - b);
  const trim = sorted.length > 2 * constants.rangeTrim ? constants.rangeTrim : 0;
  const least = sorted[trim] ?? printed.getTime();
  const greatest = sorted[sorted.length - 1 - trim] ?? printed.getTime();
  return [new Date(Math.min(least, printed.getTime())), new Date(Math.max(greatest, printed.getTime()))];
}

function nothing(reason: string): SessionVerdict {
  return {
    verdict: "not assessed",
    cleanShare: null,
    sitCleanShare: null,
    sitFrom: null,
    sitUntil: null,
    sitFromRange: null,
    sitUntilRange: null,
    longest: null,
    reason,
    localNote: false,
    steps: [],
  };
}
