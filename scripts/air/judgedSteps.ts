import { type CompassPoint, compassPoint } from "../geo/compassPoints.ts";
import type { Drift } from "./driftAt.ts";
import { addDrift, commonPhase, driftMean, emptySums } from "./ensembleDrift.ts";
import { turnNote, verdictNote } from "./localNote.ts";
import { stepAt } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { type Approach, type ReachPieces, reachPieces } from "./reachShare.ts";
import { airOfSession, generalWindDrift, type SessionAirQuestion, unknownAirReason } from "./sessionAir.ts";
import { type SessionStep, type SessionWindow, sessionSteps } from "./sessionSteps.ts";
import { NO_APPROACH } from "./siteVerdict.ts";
import type { Phase, Verdict, WindClass } from "./slopeSite.ts";
import { memberDrifts, type SiteAir, type WeighedDrift, weighedDrift } from "./weighedDrift.ts";
import { type OpenWind, type SiteWind, windAtSite, windClass } from "./windAtSite.ts";

const PHASE_CODE = { falling: 0, turning: 1, rising: 2 } as const;

/** A wind that holds from an instant until the next row; the first also holds before itself. */
export interface WindRow extends OpenWind {
  at: Date;
}

export interface SessionQuestion extends SessionAirQuestion {
  /** The usable window: session and legal window together, the session alone where hours are not confirmed. */
  window: SessionWindow;
  approaches: readonly Approach[];
  wind: OpenWind | readonly WindRow[];
  /** The cell of the wind tables whose local notes count; null: by each wind's own direction and speed. */
  tableCell: { windFrom: CompassPoint | "calm"; class: WindClass } | null;
  /** Prints an instant in the area's zone, "07:40". */
  clockText: (at: Date) => string;
}

/** One step of a session as judged. */
export interface JudgedStep {
  from: Date;
  minutes: number;
  /** The phase that most members have; null when the slope air is not known. */
  phase: Phase | null;
  drift: Drift | null;
  /** Null in a calm without direction, and when the wind is not known. */
  windFromDeg: number | null;
  reachShare: number | null;
  verdict: Verdict;
  localNote: boolean;
}

/** The steps of a session as judged, and each member's own verdicts step by step. */
export function judgedSteps(question: SessionQuestion): {
  steps: JudgedStep[];
  timeline: SessionStep[];
  memberVerdicts: Verdict[][];
  anchorMs: number;
  unknownReason: string;
  /** A local note moved a turn. */
  isTurned: boolean;
} {
  const { window, constants, tableCell } = question;
  const pieces = reachPieces(question.approaches, constants);
  const anchorMs = question.air?.members.startMs ?? 0;
  const timeline = sessionSteps(window.from, window.to, anchorMs, constants.stepMin);
  const winds = windRows(question);
  const memberVerdicts: Verdict[][] = [];
  let unknownReason = "The wind is not known.";
  let isTurned = false;
  let row = -1;
  let wind: SiteWind | null = null;
  let cell = { windFrom: "calm" as CompassPoint | "calm", class: "calm" as WindClass };
  let air: SiteAir | null = null;
  let judge: DriftJudge | null = null;
  const steps = timeline.map((step, i): JudgedStep => {
    const before = row;
    while (row < 0 || (row + 1 < winds.length && (winds[row + 1] as WindRow).at.getTime() <= step.fromMs))
      row++;
    if (row !== before) {
      wind = windAtSite(winds[row] as WindRow, question.site, constants);
      cell = tableCell ?? cellOfWind(winds[row] as WindRow, constants);
      air = airOfSession(question, window, cell);
      isTurned ||=
        air !== null && turnNote(question.localNotes, { session: window.session, ...cell }) !== null;
      judge = wind === null ? null : driftJudge(air, wind, pieces, constants);
    }
    const model = judgeStep(question, step, i, wind, cell.class, air, judge, memberVerdicts);
    if (model.unknown) unknownReason = model.unknown;
    const named = { session: window.session, phase: model.step.phase, ...cell };
    const note = verdictNote(question.localNotes, named);
    if (note?.verdict) {
      for (const [m, own] of memberVerdicts.entries()) {
        const phase = air ? memberPhase(air, m, step) : null;
        own[i] = verdictNote(question.localNotes, { ...named, phase })?.verdict ?? (own[i] as Verdict);
      }
      return { ...model.step, verdict: note.verdict, localNote: true };
    }
    return model.step;
  });
  return { steps, timeline, memberVerdicts, anchorMs, unknownReason, isTurned };
}

function judgeStep(
  question: SessionQuestion,
  step: SessionStep,
  index: number,
  wind: SiteWind | null,
  ofClass: WindClass,
  air: SiteAir | null,
  judge: DriftJudge | null,
  memberVerdicts: Verdict[][],
): { step: JudgedStep; unknown: string | null } {
  const at = new Date(step.fromMs);
  const place = air ? stepAt(air.members, at) : 0;
  const phase = air ? commonPhase(air.members, place) : null;
  const windFromDeg = wind?.windFromDeg ?? null;
  const base = { from: at, minutes: step.minutes, phase, windFromDeg, localNote: false };
  const count = air ? air.members.count : 1;
  const unknown =
    question.approaches.length === 0
      ? NO_APPROACH
      : !wind
        ? "The wind is not known or variable."
        : !air && ofClass !== "fresh"
          ? unknownAirReason(question)
          : null;
  for (let m = memberVerdicts.length; m < count; m++) memberVerdicts.push([]);
  if (unknown || !judge) {
    for (const own of memberVerdicts) own[index] = "not assessed";
    return { step: { ...base, drift: null, reachShare: null, verdict: "not assessed" }, unknown };
  }
  const mean = judge(place, index, memberVerdicts);
  return {
    step: { ...base, drift: mean.drift, reachShare: mean.share, verdict: mean.verdict },
    unknown: null,
  };
}

/**
 * Judges a step of the air under one wind: writes the verdict of each member for the step of the session, and returns the
 * mean of all. It is the mean of the step before where no drift has changed, as through a night or a fresh wind.
 */
type DriftJudge = (step: number, index: number, memberVerdicts: Verdict[][]) => ReturnType<typeof driftMean>;

function driftJudge(
  air: SiteAir | null,
  wind: SiteWind,
  pieces: ReachPieces,
  constants: ModelConstants,
): DriftJudge {
  const general =
    air === null ? weighedDrift(generalWindDrift(wind, constants), pieces, wind.openMps, constants) : null;
  const driftOf = air === null ? null : memberDrifts(air, wind, pieces, constants);
  const known: WeighedDrift[] = [];
  let mean: ReturnType<typeof driftMean> | null = null;
  return (step, index, memberVerdicts) => {
    for (let m = 0; m < memberVerdicts.length; m++) {
      const drift = driftOf === null ? (general as WeighedDrift) : driftOf(m, step);
      (memberVerdicts[m] as Verdict[])[index] = drift.verdict;
      if (known[m] !== drift) {
        known[m] = drift;
        mean = null;
      }
    }
    if (mean === null) {
      const sums = emptySums();
      for (const drift of known) addDrift(sums, drift);
      mean = driftMean(sums, constants);
    }
    return mean;
  };
}

function memberPhase(air: SiteAir, member: number, step: SessionStep): Phase {
  const code = air.members.phase[member * air.members.steps + stepAt(air.members, new Date(step.fromMs))];
  return code === PHASE_CODE.falling ? "falling" : code === PHASE_CODE.rising ? "rising" : "turning";
}

function windRows(question: SessionQuestion): readonly WindRow[] {
  const { wind } = question;
  const rows = isRows(wind) ? wind : [{ ...wind, at: question.window.from }];
  if (rows.length === 0) throw new RangeError("wind must have at least one row, found none");
  rows.forEach((row, i) => {
    const before = rows[i - 1];
    if (before && !(row.at > before.at)) {
      throw new RangeError(`wind rows must be in order of time, found ${row.at.toISOString()}`);
    }
  });
  return rows;
}

function isRows(wind: OpenWind | readonly WindRow[]): wind is readonly WindRow[] {
  return Array.isArray(wind);
}

function cellOfWind(
  wind: OpenWind,
  constants: ModelConstants,
): { windFrom: CompassPoint | "calm"; class: WindClass } {
  const ofClass = windClass(wind.windSpeedMps ?? 0, constants);
  const windFrom = ofClass === "calm" || wind.windFromDeg === null ? "calm" : compassPoint(wind.windFromDeg);
  return { windFrom, class: ofClass };
}
