import type { ShootingRule } from "../content/schema/shootingRuleSchema.ts";
import { isOlderThanMonths } from "./isOlderThanMonths.ts";
import { type HuntFacts, isInSeason, ruleMatch } from "./ruleMatch.ts";

/** A rule that decides the hours of a day, and why it can not be taken as confirmed. */
export interface RuleInUse {
  rule: ShootingRule;
  status: "confirmed" | "unconfirmed" | "lapsed";
  notes: string[];
}

const OLD_AFTER_MONTHS = 12; // facts with a source, on the day shown

/**
 * The rules of one layer that decide a day: those in force, else the latest lapsed one. `missed` says in words which
 * rules speak about this hunt but not about this date.
 */
export function layerRules(
  rules: readonly ShootingRule[],
  facts: HuntFacts,
): { inUse: RuleInUse[]; missed: string[] } {
  const missed: string[] = [];
  const inForce: RuleInUse[] = [];
  const lapsed: RuleInUse[] = [];
  for (const rule of rules) {
    const found = ruleMatch(rule, facts);
    if (found.match === "no") continue;
    if (!isInSeason(rule, facts.localDate)) {
      const seasons = (rule.applies.seasons ?? []).map(({ from, to }) => `${from} to ${to}`).join(", ");
      missed.push(`Rule ${rule.id} holds only from ${seasons}.`);
    } else if (facts.localDate < rule.valid.from) {
      missed.push(`Rule ${rule.id} is valid only from ${rule.valid.from}.`);
    } else if (facts.localDate > rule.valid.to || rule.source.status === "lapsed") {
      lapsed.push({
        rule,
        status: "lapsed",
        notes: [lapsedNote(rule, facts.localDate), ...ruleNotes(rule, facts)],
      });
    } else {
      const isKnown = found.unknown.length === 0 && rule.source.status === "confirmed";
      const status = isKnown ? "confirmed" : "unconfirmed";
      inForce.push({
        rule,
        status,
        notes: ruleNotes(rule, facts, found.unknown),
      });
    }
  }
  if (inForce.length > 0) return { inUse: inForce, missed };
  const latest = lapsed
    .map(({ rule }) => rule.valid.to)
    .sort()
    .at(-1);
  return { inUse: lapsed.filter(({ rule }) => rule.valid.to === latest), missed };
}

function lapsedNote(rule: ShootingRule, localDate: string): string {
  return localDate > rule.valid.to
    ? `Rule ${rule.id} was valid until ${rule.valid.to}: check this year's rule.`
    : `Rule ${rule.id} is marked as lapsed: check this year's rule.`;
}

function ruleNotes(rule: ShootingRule, facts: HuntFacts, unknown: readonly string[] = []): string[] {
  const notes: string[] = [];
  if (rule.source.status === "unconfirmed") notes.push(`Rule ${rule.id} is not confirmed.`);
  if (unknown.length > 0) {
    notes.push(`Rule ${rule.id} depends on ${unknown.join(" and ")}, which is not entered here.`);
  }
  if (isOlderThanMonths(rule.source.checkedOn, facts.localDate, OLD_AFTER_MONTHS)) {
    notes.push(`Old: rule ${rule.id} was last checked on ${rule.source.checkedOn}, over 12 months before.`);
  }
  const { reference } = rule;
  if (reference.kind === "table")
    notes.push(`Times of rule ${rule.id} are from the official table ${reference.file}.`);
  if (reference.kind === "place") notes.push(`Rule ${rule.id} counts from the sun at ${reference.name}.`);
  if (reference.kind === "basePlus") {
    notes.push(
      `Rule ${rule.id} counts from the sun at ${reference.place.name}, ${signed(reference.minutes)} min.`,
    );
  }
  if (rule.exceptionsText !== undefined) notes.push(`Exceptions of rule ${rule.id}: ${rule.exceptionsText}`);
  return notes;
}

function signed(minutes: number): string {
  return minutes < 0 ? String(minutes) : `+${minutes}`;
}
