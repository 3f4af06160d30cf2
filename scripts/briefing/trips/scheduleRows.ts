import { type PackTrip, SCHEDULE_STEPS } from "../../content/schema/packSchema.ts";
import { packInstant } from "../packInstant.ts";
import type { HunterSit } from "./hunterSits.ts";
import { sitOverdue } from "./sitChecks.ts";
import type { TripDayLight, TripFrame } from "./tripFrame.ts";

type ScheduleRow = PackTrip["days"][number]["sessions"][number]["schedule"][number];
type What = ScheduleRow["what"];

/** Estimates: pages print them with "about". The rest are times to keep or times of the law. */
const ABOUT: readonly What[] = ["at tree", "aloft", "settled", "sit until", "out"];

interface Moment {
  what: What;
  at: Date;
  hunter: string;
  where: string;
  isAbout: boolean;
}

/**
 * The time ladder of a session: the moments of every kept sit by `what`, then time; equal ones of several hunters are one row.
 * First light and legal light, whose place is the area, stand in it while somebody is out; legal light only when confirmed.
 * Waking, leaving, out, asking and calling are left out where the minutes of the walk are not known.
 */
export function scheduleRows(sits: readonly HunterSit[], day: TripDayLight, frame: TripFrame): ScheduleRow[] {
  const kept = sits.filter(({ times }) => times !== null);
  const isAlone = kept.length === 1;
  const { timezone } = frame.context;
  const rows: (ScheduleRow & { atMs: number })[] = [];
  for (const moment of kept.flatMap((sit) => momentsOf(sit, isAlone, day, frame))) {
    const at = packInstant(moment.at, timezone);
    const same = rows.find(
      (row) =>
        row.what === moment.what &&
        row.at === at &&
        row.where === moment.where &&
        row.about === moment.isAbout,
    );
    if (same !== undefined) {
      same.who.push(moment.hunter);
      continue;
    }
    const { what, where, isAbout } = moment;
    rows.push({ what, at, about: isAbout, who: [moment.hunter], where, atMs: moment.at.getTime() });
  }
  return rows
    .sort((a, b) => SCHEDULE_STEPS.indexOf(a.what) - SCHEDULE_STEPS.indexOf(b.what) || a.atMs - b.atMs)
    .map(({ atMs: _, ...row }) => row);
}

function momentsOf(sit: HunterSit, isAlone: boolean, day: TripDayLight, frame: TripFrame): Moment[] {
  const { times, walk, entry, hunter } = sit;
  if (times === null) return [];
  const { shooting, sun } = day;
  const site = entry.site.content.id;
  const start = walk?.from ?? frame.trip.facts.base ?? site;
  const base = frame.trip.facts.base ?? start;
  const area = frame.context.area.content.id;
  const outside = (at: Date): boolean =>
    at < (times.leaveAt ?? times.atTreeAt) || at > (times.outAt ?? times.startDownAt);
  const ofLight = (at: Date | null): Date | null => (at === null || outside(at) ? null : at);
  const isLegal = shooting.status === "confirmed";
  const alarm = sitOverdue(sit, isAlone, frame);
  const moments: [What, Date | null, string][] = [
    ["wake", times.wakeAt, base],
    ["leave", times.leaveAt, start],
    ["at tree", times.atTreeAt, site],
    ["aloft", times.aloftAt, site],
    ["settled", times.settledAt, site],
    ["first light", ofLight(sun.firstLight), area],
    ["shooting start", ofLight(isLegal ? shooting.start : null), area],
    ["sit until", entry.judged?.sitUntil ?? null, site],
    ["shooting end", ofLight(isLegal ? shooting.end : null), area],
    ["start down", times.startDownAt, site],
    ["out", times.outAt, start],
    ["ask", alarm?.askAt ?? null, base],
    ["call", alarm?.callAt ?? null, base],
  ];
  const isAbout = (what: What): boolean =>
    ABOUT.includes(what) || (what === "first light" && sun.about.includes("firstLight"));
  return moments.flatMap(([what, at, where]) =>
    at === null ? [] : [{ what, at, hunter: hunter.id, where, isAbout: isAbout(what) }],
  );
}
