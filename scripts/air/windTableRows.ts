import type { CompassPoint } from "../geo/compassPoints.ts";
import { driftReason } from "./driftReason.ts";
import { addDrift, driftMean, emptySums } from "./ensembleDrift.ts";
import { turnNote, verdictNote } from "./localNote.ts";
import { type MemberAir, stepAt } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { type Approach, type ReachPieces, reachPieces } from "./reachShare.ts";
import { airOfSession, generalWindDrift, type SessionAirQuestion, unknownAirReason } from "./sessionAir.ts";
import { type SessionWindow, sessionSteps } from "./sessionSteps.ts";
import { NO_APPROACH } from "./siteVerdict.ts";
import type { Phase, Verdict, WindClass } from "./slopeSite.ts";
import { type TableWind, tableWinds } from "./tableWinds.ts";
import { memberDrifts, type WeighedDrift, weighedDrift } from "./weighedDrift.ts";
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
  const { site, constants } = question;
  const sessions = question.sessions.map((session) => ({
    session,
    pieces: reachPieces(session.approaches, constants),
    placesOf: placesByPhase(session, constants),
  }));
  return tableWinds(constants).flatMap((wind) => {
    const siteWind = windAtSite(wind.wind, site, constants) as SiteWind;
    return sessions.flatMap(({ session, pieces, placesOf }) => {
      const air = airOfSession(question, session, wind);
      const places = air && placesOf(air.members);
      const driftOf = air && memberDrifts(air, siteWind, pieces, constants);
      return PHASES.map((phase) => {
        const drifts =
          air && driftOf ? (places?.get(phase) ?? []).map(({ member, step }) => driftOf(member, step)) : null;
        const cell = cellOf(question, session, pieces, siteWind, wind, phase, drifts);
        return withNote(question, wind, session, phase, cell);
      });
    });
  });
}

interface Place {
  member: number;
  step: number;
}

/** The places of a session in a computed air by phase; worked out once for an air, which most winds share. */
function placesByPhase(
  session: SessionWindow,
  constants: ModelConstants,
): (members: MemberAir) => Map<Phase, Place[]> {
  let known: { members: MemberAir; places: Map<Phase, Place[]> } | null = null;
  return (members) => {
    if (known?.members !== members) known = { members, places: phasesOf(members, session, constants) };
    return known.places;
  };
}

/** The steps of the session at which a member has a phase, for each phase that the plain run has in it. */
function phasesOf(
  members: MemberAir,
  session: SessionWindow,
  constants: ModelConstants,
): Map<Phase, Place[]> {
  const steps = sessionSteps(session.from, session.to, members.startMs, constants.stepMin).map((s) =>
    stepAt(members, new Date(s.fromMs)),
  );
  return new Map(
    PHASES.map((phase, code): [Phase, Place[]] => {
      const places: Place[] = [];
      if (!steps.some((step) => members.phase[step] === code)) return [phase, places];
      for (const step of steps) {
        for (let member = 0; member < members.count; member++) {
          if (members.phase[member * members.steps + step] === code) places.push({ member, step });
        }
      }
      return [phase, places];
    }),
  );
}

function cellOf(
  question: TableQuestion,
  session: TableSession,
  pieces: ReachPieces,
  siteWind: SiteWind,
  wind: TableWind,
  phase: Phase,
  drifts: readonly WeighedDrift[] | null,
): Cell {
  const { constants } = question;
  if (!(session.to > session.from)) return notAssessed("There is no such session on this day.");
  if (session.approaches.length === 0) return notAssessed(NO_APPROACH);
  const sums = emptySums();
  if (drifts) {
    if (drifts.length === 0) return notAssessed(`No ${phase} air in this session on this day.`);
    for (const drift of drifts) addDrift(sums, drift);
  } else {
    if (wind.class !== "fresh") return notAssessed(unknownAirReason(question));
    const general = generalWindDrift(siteWind, constants);
    addDrift(sums, weighedDrift(general, pieces, siteWind.openMps, constants));
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
        isSlopeAirKnown: drifts !== null,
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
