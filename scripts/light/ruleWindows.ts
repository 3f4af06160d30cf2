import type { ShootingTableRow } from "../content/areaContent.ts";
import type { RuleMoment } from "../content/schema/primitives.ts";
import type { ShootingRule } from "../content/schema/shootingRuleSchema.ts";
import type { Position } from "../geo/position.ts";
import { endOfDay, startOfDay } from "../time/civilTime.ts";
import { resolveMoment } from "./moments.ts";
import { officialTableRows } from "./officialTable.ts";
import { closedDayReason } from "./ruleMatch.ts";
import { ANCHOR_WORDS, type SunAnchors, type SunAnchorsOf } from "./sunAnchors.ts";
import {
  intersectWindows,
  isStretch,
  mergeWindows,
  type TimeWindow,
  wholeMinutesInside,
  windowsOutside,
} from "./timeWindows.ts";

export interface RuleDay {
  localDate: string;
  timezone: string;
  sitePosition: Position;
  tables: Readonly<Record<string, readonly ShootingTableRow[]>>;
  sunOf: SunAnchorsOf;
}

/** The hours one rule opens on a day: `windows` is empty with a reason, and `known` false when they can not be worked out. */
export interface RuleHours {
  windows: TimeWindow[];
  known: boolean;
  reason: string | null;
}

interface Span {
  start: RuleMoment;
  end: RuleMoment;
}

/**
 * The open hours of one rule on one civil day, on whole minutes inside the rule (start up, end down). Wording that
 * states the closed night is turned round: the day lies between the two nights. An open night is given as its two parts
 * inside the civil day. Whether the rule applies on the day at all is not asked here.
 */
export function ruleWindows(rule: ShootingRule, day: RuleDay): RuleHours {
  const closed = closedDayReason(rule, day.localDate);
  if (closed !== null) return { windows: [], known: true, reason: closed };
  const spans = rule.reference.kind === "table" ? tableSpans(rule, rule.reference.file, day) : [rule.windows];
  if (typeof spans === "string") return { windows: [], known: false, reason: spans };
  let windows: TimeWindow[] | null = null;
  for (const choice of spans) {
    const found =
      rule.reading === "forbidden" ? outsideSpans(choice, rule, day) : insideSpans(choice, rule, day);
    if (found.windows.length === 0) return found;
    windows = windows === null ? found.windows : intersectWindows(windows, found.windows);
  }
  const whole = wholeMinutesInside(windows ?? []);
  if (whole.length > 0) return { windows: whole, known: true, reason: null };
  return { windows: [], known: true, reason: `rule ${rule.id} leaves no whole minute` };
}

function insideSpans(spans: readonly Span[], rule: ShootingRule, day: RuleDay): RuleHours {
  const whole = civilDay(day);
  const windows: TimeWindow[] = [];
  const reasons: string[] = [];
  for (const span of spans) {
    const ends = spanEnds(span, rule, day);
    if (typeof ends === "string") reasons.push(ends);
    else if (runsOverMidnight(span, false)) {
      windows.push(
        ...[
          { start: whole.start, end: ends.end },
          { start: ends.start, end: whole.end },
        ].filter(isStretch),
      );
    } else if (isStretch(ends)) windows.push(ends);
    else reasons.push(reversed(rule));
  }
  return {
    windows: mergeWindows(windows),
    known: true,
    reason: windows.length > 0 ? null : reasonOf(reasons, rule),
  };
}

/** The day between the closed nights. Without a rise or set there is no night to count from, so nothing is taken as open. */
function outsideSpans(spans: readonly Span[], rule: ShootingRule, day: RuleDay): RuleHours {
  let open: TimeWindow[] | null = null;
  for (const span of spans) {
    const ends = spanEnds(span, rule, day);
    if (typeof ends === "string") return { windows: [], known: true, reason: ends };
    const overnight = runsOverMidnight(span, true);
    if (!overnight && !isStretch(ends)) return { windows: [], known: true, reason: reversed(rule) };
    const left = overnight
      ? [{ start: ends.end, end: ends.start }].filter(isStretch)
      : windowsOutside([ends], civilDay(day));
    open = open === null ? left : intersectWindows(open, left);
  }
  if (open !== null && open.length > 0) return { windows: open, known: true, reason: null };
  return { windows: [], known: true, reason: reasonOf([], rule) };
}

function reversed(rule: ShootingRule): string {
  return `rule ${rule.id} starts no earlier than it ends that day`;
}

function reasonOf(reasons: readonly string[], rule: ShootingRule): string {
  return reasons[0] ?? `rule ${rule.id} leaves no open time that day`;
}

function spanEnds(span: Span, rule: ShootingRule, day: RuleDay): TimeWindow | string {
  const { localDate, timezone } = day;
  const { reference } = rule;
  const sun = referenceSun(rule, day);
  const plusMin = reference.kind === "basePlus" ? reference.minutes : 0;
  // A closed stretch is widened where an open one is narrowed: on a clock-change night its ends swap sides.
  const isClosed = rule.reading === "forbidden";
  const start = resolveMoment(span.start, {
    localDate,
    timezone,
    sun,
    plusMin,
    side: sideOf("start", span.start, isClosed),
  });
  const end = resolveMoment(span.end, {
    localDate,
    timezone,
    sun,
    plusMin,
    side: sideOf("end", span.end, isClosed),
  });
  if (start.at === null) return start.why;
  if (end.at === null) return end.why;
  return { start: start.at, end: end.at };
}

function referenceSun({ reference }: ShootingRule, day: RuleDay): SunAnchors {
  const place =
    reference.kind === "place"
      ? reference
      : reference.kind === "basePlus"
        ? reference.place
        : day.sitePosition;
  return day.sunOf(day.localDate, { lat: place.lat, lon: place.lon });
}

/** A sentence for each time of the sun in a rule whose sun only just passes its angle that day: minutes off, not seconds. */
export function aboutNotes(rule: ShootingRule, day: RuleDay): string[] {
  if (rule.reference.kind === "table") return [];
  const used = new Set(rule.windows.flatMap(({ start, end }) => [start.anchor, end.anchor]));
  return referenceSun(rule, day)
    .about.filter((anchor) => used.has(anchor))
    .map(
      (anchor) => `About: the sun only just passes its angle at ${ANCHOR_WORDS[anchor]} of rule ${rule.id}.`,
    );
}

function sideOf(side: "start" | "end", moment: RuleMoment, isClosed: boolean): "start" | "end" {
  if (!isClosed || moment.anchor === "none") return side;
  return side === "start" ? "end" : "start";
}

/**
 * Whether a span of a rule runs from an evening over midnight to a morning. It is read from the words of the rule, never
 * from the times of one day: on a day of two hours of light "sunset - 90 to sunrise + 90" is still a night.
 */
function runsOverMidnight({ start, end }: Span, isClosed: boolean): boolean {
  if (start.anchor === "none" || end.anchor === "none") return false;
  // Two equal clock times leave nothing open, whichever way the rule is worded.
  if (start.anchor === "clock" && end.anchor === "clock")
    return start.at > end.at || (isClosed && start.at === end.at);
  return halfOfDay(start) > halfOfDay(end);
}

function halfOfDay(moment: Exclude<RuleMoment, { anchor: "none" }>): number {
  if (moment.anchor === "clock") return moment.at < "12:00" ? 0 : 2;
  if (moment.anchor === "solarNoon") return 1;
  return ["sunset", "civilDusk", "nauticalDusk"].includes(moment.anchor) ? 2 : 0;
}

/** The spans of an official table for the day: one list for each row that holds it. Times are in the clock the rule's own windows name. */
function tableSpans(rule: ShootingRule, file: string, day: RuleDay): Span[][] | string {
  const rows = day.tables[file];
  if (rows === undefined) return `table ${file} of rule ${rule.id} is not there`;
  const found = officialTableRows(rows, day.localDate);
  if (found.length === 0) return `table ${file} of rule ${rule.id} has no row for ${day.localDate}`;
  const written = rule.windows[0]?.start;
  const clock = (written?.anchor === "clock" ? written.clock : undefined) ?? "as-in-force";
  return found.map((row) => [
    { start: { anchor: "clock", at: row.start, clock }, end: { anchor: "clock", at: row.end, clock } },
  ]);
}

function civilDay({ localDate, timezone }: RuleDay): TimeWindow {
  return { start: startOfDay(localDate, timezone), end: endOfDay(localDate, timezone) };
}
