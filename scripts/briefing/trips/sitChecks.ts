import type { Check } from "../../safety/check.ts";
import { darkWalk } from "../../safety/darkWalk.ts";
import { overdue, overdueTimes } from "../../safety/overdue.ts";
import { startDown } from "../../safety/startDown.ts";
import type { HunterSit } from "./hunterSits.ts";
import { leaveCheck } from "./leaveCheck.ts";
import type { SessionForecast } from "./sessionForecast.ts";
import type { TripFrame } from "./tripFrame.ts";

/** A kept sit of one session: who is out with whom decides how soon somebody asks. */
export interface SitCompany {
  session: string;
  localDate: string;
  forecast: SessionForecast;
  /** Nobody else of the trip sits in this session. */
  isAlone: boolean;
}

/** The checks of one sit, C5 to C8 and, while it is kept, C12 to C15 and C19; each names hunter, session and site. */
export function sitChecks(sit: HunterSit, company: SitCompany, frame: TripFrame): Check[] {
  const awake = sit.awake === null ? [] : [sit.awake];
  return [...sit.gear, ...[...planChecks(sit, company, frame), ...awake].map(named)];

  function named(check: Check): Check {
    const { id, facts } = sit.entry.site.content;
    const { session } = company;
    return {
      ...check,
      text: `${session.charAt(0).toUpperCase()}${session.slice(1)} at ${facts.name}: ${check.text}`,
      inputs: { ...check.inputs, session, site: id },
    };
  }
}

/** When somebody starts asking and calls for help; null without a time out. */
export function sitOverdue(
  sit: HunterSit,
  isAlone: boolean,
  frame: TripFrame,
): { askAt: Date; callAt: Date } | null {
  return overdueTimes(overduePlan(sit, isAlone, frame), frame.limits);
}

function planChecks(sit: HunterSit, company: SitCompany, frame: TripFrame): Check[] {
  const { times, darkIn, darkOut, hunter, walk, before, entry } = sit;
  if (times === null || entry.ends === null) return [];
  const { limits, context } = frame;
  const { timezone } = context;
  const { isAlone, localDate, forecast } = company;
  const subject = hunter.id;
  const darkOutMin = darkOut?.darkMin ?? null;
  return [
    darkWalk({ subject, darkInMin: darkIn?.darkMin ?? null, darkOutMin, isAlone }, limits),
    leaveCheck({
      subject,
      localDate,
      timezone,
      times,
      backAt: before?.backAt ?? null,
      issuedAt: forecast.lastIssuedAt,
      quietMin: walk?.quietMin ?? 0,
      wayToStart: wayToStart(walk?.from ?? null, frame),
    }),
    startDown(
      {
        subject,
        timezone,
        legalEnd: entry.ends.legalEnd,
        ownLimit: entry.ends.ownLimit,
        marginMin: 0,
        walkOutMin: walk?.outMin?.[1] ?? null,
        darkOutMin,
      },
      limits,
    ),
    overdue({ ...overduePlan(sit, isAlone, frame), subject, timezone }, limits),
  ];
}

function overduePlan({ times }: HunterSit, isAlone: boolean, { trip }: TripFrame) {
  return {
    outAt: times?.outAt ?? null,
    isAlone,
    askAfterMin: trip.facts.askAfterMin ?? null,
    callAfterMin: trip.facts.callAfterMin ?? null,
  };
}

function wayToStart(from: string | null, { trip, context }: TripFrame): string | null {
  const { base } = trip.facts;
  if (from === null || from === base) return null;
  const { camps, parkings } = context.area.content.facts;
  const nameOf = (id: string): string => [...camps, ...parkings].find((place) => place.id === id)?.name ?? id;
  const start = `the times start at ${nameOf(from)}`;
  return base === undefined
    ? `${start}: no base of the trip is entered`
    : `${start}: the way there from ${nameOf(base)} is not known`;
}
