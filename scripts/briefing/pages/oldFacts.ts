import { SHOOTING_LAYERS } from "../../content/schema/shootingRuleSchema.ts";
import { dateText } from "../words/dateText.ts";
import { isOldFact } from "../words/factAge.ts";
import { asOfDate } from "./permissionRows.ts";
import type { AreaPack } from "./sheetParts.ts";

/** Facts with a source that nobody has checked for over 12 months on the as-of date, and lapsed rules, in words. */
export function oldFacts(area: AreaPack): string[] {
  const { facts } = area.content;
  const { locale } = area.pack.area;
  const dated: { name: string; checkedOn: string }[] = [
    ...facts.season.map((s) => ({ name: `Season, ${s.species}`, checkedOn: s.checkedOn })),
    ...facts.setbacks.map((s) => ({ name: `Set-back, ${s.featureKind}`, checkedOn: s.checkedOn })),
    ...facts.permission.map((p) => ({ name: `Permission, ${p.kind}`, checkedOn: p.checkedOn })),
    ...[
      { name: "Following up", rule: facts.followUpRule },
      { name: "Bright colour", rule: facts.colourRule },
      { name: "Stands", rule: facts.standRules },
    ].flatMap(({ name, rule }) => (rule === undefined ? [] : [{ name, checkedOn: rule.checkedOn }])),
  ];
  const rules = SHOOTING_LAYERS.flatMap((layer) => facts.shootingLight[layer] ?? []);
  const asOf = asOfDate(area);
  return [
    ...[
      ...dated,
      ...rules.map((rule) => ({
        name: `Legal hours, ${rule.jurisdiction}`,
        checkedOn: rule.source.checkedOn,
      })),
    ]
      .filter((item) => isOldFact(item.checkedOn, asOf))
      .map((item) => `${item.name}: last checked ${dateText(item.checkedOn, locale)}.`),
    ...rules
      .filter((rule) => rule.source.status === "lapsed" || rule.valid.to < asOf)
      .map((rule) => `Legal hours, ${rule.jurisdiction}: rule ended ${dateText(rule.valid.to, locale)}.`),
  ];
}
