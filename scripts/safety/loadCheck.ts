import type { TripFile } from "../content/schema/tripSchema.ts";
import { atBestCaution, type Check, combined, figure, isGuessed, listed, sentence } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

export type LoadKg = TripFile["hunters"][number]["loadKg"];

const ROUNDING_KG = 1e-9; // sums of tenths of a kilogram must not miss a limit by the last bit

/**
 * C6: hunter, worn gear, pack, weapon and water against the label's load. Above the label is a STOP even while a part is
 * unknown; from `loadCautionShare` of it up a CAUTION. What is hauled up later counts as pack.
 */
export function loadCheck(
  facts: {
    subject: string;
    loadKg: LoadKg;
    guessed?: readonly string[] | undefined;
    ratedLoadKg: number | null;
  },
  limits: Pick<SafetyLimits, "loadCautionShare">,
): Check {
  const { subject, loadKg, guessed, ratedLoadKg } = facts;
  const parts = Object.entries(loadKg);
  const missing = parts.filter(([, kg]) => kg === null).map(([name]) => name);
  const sumKg = parts.reduce((sum, [, kg]) => sum + (kg ?? 0), 0);
  const inputs = { ...loadKg, ratedLoadKg, sumKg: Number(sumKg.toFixed(2)) };
  const sum = `Load ${missing.length > 0 ? "at least " : ""}${figure(sumKg, 1)} kg`;
  if (ratedLoadKg === null) {
    return {
      id: "C6",
      result: "NOT CHECKED",
      text: `${sum}; the label's load is not entered.`,
      subject,
      inputs,
    };
  }
  const isOver = sumKg > ratedLoadKg + ROUNDING_KG;
  const isNear = sumKg >= limits.loadCautionShare * ratedLoadKg - ROUNDING_KG;
  const result = isOver
    ? "STOP"
    : combined([missing.length > 0 ? "NOT CHECKED" : "OK", isNear ? "CAUTION" : "OK"]);
  const percent = figure((sumKg / ratedLoadKg) * 100);
  const isGuess = isGuessed(guessed, ["loadKg", ...Object.keys(loadKg)]);
  const tail = isOver
    ? ": too heavy"
    : missing.length > 0
      ? `; ${listed(missing)} not entered`
      : isGuess
        ? "; a part is guessed"
        : "";
  return {
    id: "C6",
    result: isGuess ? atBestCaution(result) : result,
    text: `${sum}; the stand carries ${figure(ratedLoadKg, 1)} kg, ${percent} % used${tail}. ${items(parts)}`,
    subject,
    inputs,
  };
}

/** "Body 84 kg, pack 4.5 kg": the parts that are known, so that a reader can add them up. */
function items(parts: readonly [string, number | null][]): string {
  const known = parts.flatMap(([name, kg]) => (kg === null ? [] : [`${name} ${figure(kg, 1)} kg`]));
  return known.length === 0 ? "No part is known." : sentence(known.join(", "));
}
