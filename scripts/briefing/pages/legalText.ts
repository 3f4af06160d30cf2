import type { PackShootingLight } from "../../content/schema/packSchema.ts";
import { SHOOTING_LAYERS } from "../../content/schema/shootingRuleSchema.ts";
import { clockText, instantOf } from "../words/clockText.ts";
import { dateText } from "../words/dateText.ts";
import { isOldFact } from "../words/factAge.ts";
import { listWords } from "../words/listWords.ts";
import { asOfDate } from "./permissionRows.ts";
import type { AreaPack } from "./sheetParts.ts";

export const NOT_CONFIRMED = "LEGAL HOURS NOT CONFIRMED";

/** Legal hours of a day as printed: a window, and what stands beside it. */
export interface LegalText {
  /** "06:38 to 18:58", or words when there is no window */
  window: string;
  /** crossed out: the rule is past its date */
  struck: boolean;
  /** what follows the window: not confirmed, check this year's rule, or null */
  mark: string | null;
  confirmed: boolean;
}

/** Legal hours in full. Only a confirmed rule gives a plain window. */
export function legalText(light: PackShootingLight, timezone: string): LegalText {
  const window =
    light.start === null || light.end === null
      ? null
      : `${clockText(instantOf(light.start), timezone)} to ${clockText(instantOf(light.end), timezone)}`;
  if (window === null) {
    if (light.status === "confirmed") {
      const reason = light.why.start ?? light.why.end ?? "the rule gives no hours this day";
      return { window: `No legal hours: ${reason}`, struck: false, mark: null, confirmed: true };
    }
    return { window: NOT_CONFIRMED, struck: false, mark: null, confirmed: false };
  }
  if (light.status === "confirmed") return { window, struck: false, mark: null, confirmed: true };
  if (light.status === "lapsed") {
    return { window, struck: true, mark: `${NOT_CONFIRMED}: check this year's rule`, confirmed: false };
  }
  return { window, struck: false, mark: NOT_CONFIRMED, confirmed: false };
}

/** Legal hours for a narrow column: "06:38 to 18:58", "none" or "not confirmed". */
export function legalCell(
  light: PackShootingLight,
  timezone: string,
): { window: string; struck: boolean; mark: string | null } {
  const { window, struck, mark, confirmed } = legalText(light, timezone);
  const hasWindow = light.start !== null && light.end !== null;
  if (!hasWindow) return { window: confirmed ? "none" : "not confirmed", struck: false, mark: null };
  return { window, struck, mark: mark === null ? null : "not confirmed" };
}

/** Which rule and layer set the window, its source and when it was checked; old ones say so. */
export function legalSource(light: PackShootingLight, area: AreaPack): string {
  const layers = area.content.facts.shootingLight;
  const rules = SHOOTING_LAYERS.flatMap((layer) => layers[layer] ?? []).filter((rule) =>
    light.ruleIds.includes(rule.id),
  );
  if (rules.length === 0) return "No rule for this day was entered.";
  const { locale } = area.pack.area;
  const sources = rules.map((rule) => {
    const { citation, checkedOn } = rule.source;
    const old = isOldFact(checkedOn, asOfDate(area)) ? ", OLD: check it again" : "";
    return `${citation}, checked ${dateText(checkedOn, locale)}${old}`;
  });
  const ends =
    light.startLayer === null || light.endLayer === null
      ? ""
      : light.startLayer === light.endLayer
        ? `Set by ${layerWord(light.startLayer)}. `
        : `Start set by ${layerWord(light.startLayer)}, end by ${layerWord(light.endLayer)}. `;
  return `${ends}${listWords(sources, "and")}.`;
}

/** Layer of a rule in words; one that has no word is shown as it is. */
export function layerWord(layer: string): string {
  const words: Readonly<Record<string, string>> = {
    law: "the law",
    landRule: "the landholder's rule",
    clubRule: "the club's rule",
    ownRule: "your own rule",
  };
  return words[layer] ?? layer;
}
