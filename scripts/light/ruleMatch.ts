import type { ShootingRule } from "../content/schema/shootingRuleSchema.ts";
import { weekday } from "../time/civilTime.ts";

/** What a rule of shooting light is asked about. null or an empty list = not known. */
export interface HuntFacts {
  localDate: string;
  species: string | null;
  method: string | null;
  land: string | null;
  class: string | null;
  /** Several where the place lies near the line between management units. */
  zones: readonly string[];
}

/**
 * Whether a rule speaks about this hunt, its season and dates of validity apart.
 *
 * @returns "no"; or "yes" with `unknown` naming what the rule asks for and nobody entered: such a rule may narrow the
 *   hours, it can not confirm them
 */
export function ruleMatch(
  rule: ShootingRule,
  facts: HuntFacts,
): { match: "no" } | { match: "yes"; unknown: string[] } {
  const { species, method, land, class: classes, zones } = rule.applies;
  const answers: [string, Answer][] = [
    ["species", oneOf(species, facts.species)],
    ["weapon", oneOf(method, facts.method)],
    ["land", oneOf(land, facts.land)],
    ["class", oneOf(classes ?? ["any"], facts.class)],
    ["zone", zoneAnswer(zones ?? ["any"], facts.zones)],
  ];
  if (answers.some(([, answer]) => answer === "no")) return { match: "no" };
  return {
    match: "yes",
    unknown: answers.filter(([, answer]) => answer === "unknown").map(([name]) => name),
  };
}

/** Whether the date lies in a season of the rule, MM-DD ends included, over the new year where it ends before it starts. */
export function isInSeason(rule: ShootingRule, localDate: string): boolean {
  const { seasons } = rule.applies;
  if (seasons === undefined || seasons.length === 0) return true;
  return seasons.some(({ from, to }) => isInMonthDays(localDate, from, to));
}

/** Whether the date lies between two month-days, both included. A span that ends before it starts runs over the new year. */
export function isInMonthDays(localDate: string, from: string, to: string): boolean {
  const monthDay = localDate.slice(5);
  return from <= to ? monthDay >= from && monthDay <= to : monthDay >= from || monthDay <= to;
}

/** Why the rule closes the whole day, in words; null when it does not. */
export function closedDayReason(rule: ShootingRule, localDate: string): string | null {
  const day = weekday(localDate);
  if (rule.applies.closedWeekdays?.includes(day)) return `rule ${rule.id} closes ${WEEKDAY_WORDS[day]}`;
  if (rule.applies.closedDates?.includes(localDate)) return `rule ${rule.id} closes ${localDate}`;
  return null;
}

const WEEKDAY_WORDS = {
  mon: "Mondays",
  tue: "Tuesdays",
  wed: "Wednesdays",
  thu: "Thursdays",
  fri: "Fridays",
  sat: "Saturdays",
  sun: "Sundays",
} as const;

type Answer = "yes" | "no" | "unknown";

function oneOf(listed: readonly string[], value: string | null): Answer {
  if (listed.some((word) => fold(word) === "any")) return "yes";
  if (value === null) return "unknown";
  return listed.some((word) => fold(word) === fold(value)) ? "yes" : "no";
}

function zoneAnswer(listed: readonly string[], zones: readonly string[]): Answer {
  if (zones.length === 0) return oneOf(listed, null);
  const answers = zones.map((zone) => oneOf(listed, zone));
  if (answers.every((answer) => answer === "yes")) return "yes";
  return answers.includes("yes") ? "unknown" : "no";
}

function fold(word: string): string {
  return word.trim().toLowerCase();
}
