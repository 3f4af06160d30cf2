import { SCHEDULE_STEPS } from "../../../content/schema/packSchema.ts";
import { aboutClock, clockText, instantOf } from "../../words/clockText.ts";
import type { AreaPack } from "../sheetParts.ts";
import type { Sit } from "./daySits.ts";
import type { PackedTrip } from "./packedTrips.ts";
import type { PackTripSession } from "./sessionStops.ts";
import type { TripSessionDetails } from "./tripDetails.ts";
import { hunterName, hunterNames, packSite, placeName, siteNumber, walkInName } from "./tripNames.ts";

/** A row of the schedule; framed rows are deadlines. */
export interface ScheduleRow {
  time: string;
  who: string;
  where: string;
  task: string;
  framed: boolean;
}

type Row = PackTripSession["schedule"][number];
type What = Row["what"];

const FRAMED: readonly What[] = ["sit until", "out", "ask", "call"];
const SHARED: readonly What[] = ["first light", "shooting start", "shooting end"];

/**
 * The schedule of a session in order of time. Rows of hunters whose choice is stopped are left out; light and legal hours
 * outside the time between leaving and being back too.
 */
export function scheduleRows(
  area: AreaPack,
  packed: PackedTrip,
  session: PackTripSession,
  details: TripSessionDetails | undefined,
  sits: readonly Sit[],
): ScheduleRow[] {
  const stopped = sits.filter((sit) => sit.stop !== null).map((sit) => sit.hunterId);
  const rows = session.schedule.flatMap((row) => {
    const who = row.who.filter((id) => !stopped.includes(id));
    return row.who.length > 0 && who.length === 0 ? [] : [{ ...row, who, ms: instantOf(row.at).getTime() }];
  });
  const own = rows.filter((row) => !SHARED.includes(row.what)).map((row) => row.ms);
  const [from, to] = [Math.min(...own), Math.max(...own)];
  const shown = rows
    .filter((row) => !SHARED.includes(row.what) || (row.ms >= from && row.ms <= to))
    .sort((a, b) => a.ms - b.ms || SCHEDULE_STEPS.indexOf(a.what) - SCHEDULE_STEPS.indexOf(b.what));
  const merged: { key: string; rows: Row[] }[] = [];
  for (const row of shown) {
    const key = `${row.what} ${timeText(row, area.pack.area.timezone)}`;
    const same = merged.find((entry) => entry.key === key);
    if (same === undefined) merged.push({ key, rows: [row] });
    else same.rows.push(row);
  }
  return joined(merged.map(({ rows: same }) => mergedRow(area, packed, details, same, sits)));
}

/** Neighbours of the same minute, people and place as one row, unless one is a deadline. */
function joined(rows: readonly ScheduleRow[]): ScheduleRow[] {
  const result: ScheduleRow[] = [];
  for (const row of rows) {
    const last = result.at(-1);
    const isSame =
      last !== undefined &&
      !last.framed &&
      !row.framed &&
      last.time === row.time &&
      last.who === row.who &&
      last.where === row.where;
    if (isSame) last.task = `${last.task}; ${row.task}`;
    else result.push({ ...row });
  }
  return result;
}

/** Rows of several people at the same printed time as one. */
function mergedRow(
  area: AreaPack,
  packed: PackedTrip,
  details: TripSessionDetails | undefined,
  rows: readonly Row[],
  sits: readonly Sit[],
): ScheduleRow {
  const first = rows[0]!;
  const who = [...new Set(rows.flatMap((row) => row.who))];
  const isHome = first.what === "ask" || first.what === "call";
  return {
    time: timeText(first, area.pack.area.timezone),
    who: isHome ? "home" : hunterNames(packed.written, who),
    where: isHome ? "phone" : whereText(area, rows),
    task: taskText(area, packed, details, { ...first, who }, sits),
    framed: FRAMED.includes(first.what),
  };
}

/** Estimates are rounded so that being early is the mistake; only the time out, and what follows it, goes up. */
function timeText(row: Row, timezone: string): string {
  const at = instantOf(row.at);
  if (!row.about) return clockText(at, timezone);
  const late = row.what === "out" || row.what === "ask" || row.what === "call";
  return aboutClock(at, row.what === "sit until" ? 15 : 5, late ? "up" : "down", timezone);
}

/** Sites by their numbers, camps and parkings by name; what holds everywhere is at "all". */
function whereText(area: AreaPack, rows: readonly Row[]): string {
  if (SHARED.includes(rows[0]!.what)) return "all";
  const places = [...new Set(rows.map((row) => row.where))];
  const sites = places.filter((place) => place !== null && packSite(area, place) !== undefined);
  const others = places.filter((place) => !sites.includes(place)).map((place) => placeName(area, place));
  const numbers = sites.map((place) => siteNumber(area, place ?? "")).join(", ");
  return [numbers === "" ? [] : `${sites.length === 1 ? "site" : "sites"} ${numbers}`, ...others]
    .flat()
    .join(", ");
}

function taskText(
  area: AreaPack,
  { written }: PackedTrip,
  details: TripSessionDetails | undefined,
  row: Row,
  sits: readonly Sit[],
): string {
  switch (row.what) {
    case "wake":
      return "get up";
    case "leave":
      return leaveText(area, details, row, sits);
    case "at tree":
      return "at the tree: lists before the climb";
    case "aloft":
      return "aloft and tied in; haul, then load";
    case "settled":
      return "settled and still";
    case "first light":
      return "first light";
    case "shooting start":
      return "legal hours start";
    case "sit until":
      return "sit until now; then leave quietly";
    case "shooting end":
      return "legal hours end: unload";
    case "start down":
      return "unload, lower the weapon, start down tied on";
    case "out":
      return "back by";
    case "ask":
      return `start asking: ring ${row.who.map((id) => hunterName(written, id)).join(", then ")}`;
    case "call":
      return `call for help for ${hunterNames(written, row.who)}: read the emergency page aloud`;
  }
}

function leaveText(
  area: AreaPack,
  details: TripSessionDetails | undefined,
  row: Row,
  sits: readonly Sit[],
): string {
  const parts = sits
    .filter((sit) => sit.stop === null && row.who.includes(sit.hunterId))
    .map((sit) => {
      const way = walkInOf(area, details, sit);
      return `for ${sit.number}${way === null ? "" : ` by ${way}`}`;
    });
  return parts.length === 0 ? "leave" : `leave ${[...new Set(parts)].join("; ")}`;
}

/** Name of the walk-in that a sit takes; null where none was chosen. */
export function walkInOf(area: AreaPack, details: TripSessionDetails | undefined, sit: Sit): string | null {
  const chosen = details?.sits.find((row) => row.hunter === sit.hunterId && row.site === sit.siteId);
  return walkInName(area, sit.siteId, chosen?.walkIn ?? null);
}
