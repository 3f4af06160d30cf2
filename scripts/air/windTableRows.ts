import type { CompassPoint } from "../geo/compassPoints.ts";
import { driftReason } from "./driftReason.ts";
import { addDrift, driftMean, emptySums, memberDrift, type SiteAir } from "./ensembleDrift.ts";
import { turnNote, verdictNote } from "./localNote.ts";
import { stepAt } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { type Approach, type ReachPieces, reachPieces } from "./reachShare.ts";
import { airOfSession, generalWindDrift, type SessionAirQuestion, unknownAirReason } from "./sessionAir.ts";
import { type SessionWindow, sessionSteps } from "./sessionSteps.ts";
import { NO_APPROACH } from "./siteVerdict.ts";
import type { Phase, Verdict, WindClass } from "./slopeSite.ts";
import { type TableWind, tableWinds } from "./tableWinds.ts";
import { type SiteWind, windAtSite } from "./windAtSite.ts";

const PHASES: readonly Phase[] = ["falling", "turning", "rising"];

/** A session of the day of a table with the approaches that count in it. */
export interface TableSession extends SessionWindow {
  approaches: readonly Approach[];
}

export interface TableQuestion extends SessionAirQuestion {
  sessions: readonly TableSession[];
}

export interface WindTableRow {
  windFrom: CompassPoint | "calm";
  class: WindClass;
  session: string;
  phase: Phase;
  driftToDeg: number | null;
  driftSpeedMps: number | null;
  reachShare: number | null;
  verdict: Verdict;
  reason: string;
  modelVerdict: Verdict;
  localNote: boolean;
  why: Partial<Record<"driftToDeg" | "driftSpeedMps" | "reachShare", string>>;
}

type Cell = Pick<WindTableRow, "driftToDeg" | "driftSpeedMps" | "reachShare" | "verdict" | "reason" | "why">;

/**
 * The wind table of a site: 33 winds by session by phase. A cell is the mean over the ensemble and over the time that
 * the phase holds in the session; a phase that the plain run does not have there is not assessed.
 */
export function windTableRows(question: TableQuestion): WindTableRow[] {
  const pieces = question.sessions.map((s) => reachPieces(s.approaches, question.constants));
  return tableWinds(question.constants).flatMap((wind) => {
    const siteWind = windAtSite(wind.wind, question.site, question.constants);
    return question.sessions.flatMap((session, i) => {
      const air = airOfSession(question, session, wind);
      const phases = air ? phasesOf(air, session, question.constants) : null;
      return PHASES.map((phase) => {
        const steps = phases?.get(phase) ?? null;
        const cell = cellOf(
          question,
          session,
          pieces[i] as ReachPieces,
          siteWind as SiteWind,
          wind,
          air,
          phase,
          steps,
        );
        return withNote(question, wind, session, phase, cell);
      });
    });
  });
}

/** Steps of the session by phase of the plain run; per phase the members' places in the air of those steps. */
function phasesOf(air: SiteAir, session: SessionWindow, constants: ModelConstants): Map<Phase, number[]> {
  const { members } = air;
  const steps = sessionSteps(session.from, session.to, members.startMs, constants.stepMin).map((s) =>
    stepAt(members, new Date(s.fromMs)),
  );
  return new Map(
    PHASES.map((phase, code) => {
      const isPlain = steps.some((step) => members.phase[step] === code);
      const places = isPlain
        ? steps.flatMap((step) => {
            const own: number[] = [];
            for (let m = 0; m < members.count; m++) {
              if (members.phase[m * members.steps + step] === code) own.push(m * members.steps + step);
            }
            return own;
          })
        : [];
      return [phase, places] as const;
    }),
  );
}

function cellOf(
  question: TableQuestion,
  session: TableSession,
  pieces: ReachPieces,
  siteWind: SiteWind,
  wind: TableWind,
  air: SiteAir | null,
  phase: Phase,
  places: readonly number[] | null,
): Cell {
  const { constants } = question;
  if (!(session.to > session.from)) return notAssessed("There is no such session on this day.");
  if (session.approaches.length === 0) return notAssessed(NO_APPROACH);
  const sums = emptySums();
  if (air && places) {
    if (places.length === 0) return notAssessed(`No ${phase} air in this session on this day.`);
    for (const place of places) {
      const member = Math.floor(place / air.members.steps);
      const drift = memberDrift(air, member, place % air.members.steps, siteWind, constants);
      addDrift(sums, drift, pieces, siteWind.openMps, constants);
    }
  } else {
    if (wind.class !== "fresh") return notAssessed(unknownAirReason(question));
    addDrift(sums, generalWindDrift(siteWind, constants), pieces, siteWind.openMps, constants);
  }
  const mean = driftMean(sums, constants);
  const { drift, share, verdict } = mean;
  return {
    driftToDeg: drift.driftToDeg,
    driftSpeedMps: drift.driftSpeedMps,
    reachShare: share,
    verdict,
    reason: driftReason(
      {
        verdict,
        drift,
        share,
        phase,
        approaches: session.approaches,
        openMps: siteWind.openMps,
        isLee: siteWind.isLee,
        isSlopeAirKnown: air !== null,
      },
      constants,
    ),
    why: drift.driftToDeg === null ? { driftToDeg: "the drift is too weak to have a direction" } : {},
  };
}

function notAssessed(reason: string): Cell {
  const why = reason.replace(/\.$/, "");
  return {
    driftToDeg: null,
    driftSpeedMps: null,
    reachShare: null,
    verdict: "not assessed",
    reason,
    why: { driftToDeg: why, driftSpeedMps: why, reachShare: why },
  };
}

function withNote(
  question: TableQuestion,
  wind: TableWind,
  session: TableSession,
  phase: Phase,
  cell: Cell,
): WindTableRow {
  const named = { session: session.session, phase, windFrom: wind.windFrom, class: wind.class };
  const note = verdictNote(question.localNotes, named);
  const isTurned = turnNote(question.localNotes, named) !== null;
  const { driftToDeg, driftSpeedMps, reachShare, why } = cell;
  return {
    windFrom: wind.windFrom,
    class: wind.class,
    session: session.session,
    phase,
    driftToDeg,
    driftSpeedMps,
    reachShare,
    verdict: note?.verdict ?? cell.verdict,
    reason: note ? `Local note: ${note.note}` : cell.reason,
    modelVerdict: cell.verdict,
    localNote: note !== null || isTurned,
    why,
  };
}
