import type { FactsDraft } from "../areaDraft.ts";
import type { Problem } from "../problem.ts";
import type { Caution, EmergencyTexts, Firearm, ModelRow, Stand } from "../schema/sharedDataSchema.ts";
import { idsTwice } from "./repeatedIds.ts";

export interface SharedDrafts {
  stands: FactsDraft<Stand[]>;
  firearms: FactsDraft<Firearm[]>;
  cautions: FactsDraft<Caution[]>;
  emergency: FactsDraft<EmergencyTexts>;
  model: FactsDraft<ModelRow[]>;
}

/** What is wrong between the entries of the shared files: ids twice, label ranges, constants out of their range, numbers to call. */
export function judgeShared({ stands, firearms, cautions, emergency, model }: SharedDrafts): Problem[] {
  const problems: Problem[] = [];
  for (const draft of [stands, firearms, cautions, model]) {
    const ids = (draft.loose ?? []).map((entry) => entry?.id);
    problems.push(
      ...idsTwice(draft.file, "", ids).map((problem) => ({ ...problem, field: problem.field.slice(1) })),
    );
  }
  const firstAid = (emergency.loose?.firstAid ?? []).map((entry) => entry?.id);
  problems.push(...idsTwice(emergency.file, "firstAid", firstAid));
  return [...problems, ...trunkRanges(stands), ...constantRanges(model), ...numbersToCall(emergency)];
}

function trunkRanges({ file, loose }: FactsDraft<Stand[]>): Problem[] {
  return (loose ?? []).flatMap((stand, i) => {
    const { trunkMinMm, trunkMaxMm } = stand ?? {};
    if (typeof trunkMinMm !== "number" || typeof trunkMaxMm !== "number" || trunkMinMm <= trunkMaxMm)
      return [];
    const found = `${trunkMinMm} to ${trunkMaxMm} mm`;
    const expected = "the thinnest trunk before the thickest";
    const fix = "read the label again";
    return { code: "order-of-two" as const, file, field: `${i}.trunkMaxMm`, found, expected, fix };
  });
}

function constantRanges({ file, loose }: FactsDraft<ModelRow[]>): Problem[] {
  return (loose ?? []).flatMap((row, i) => {
    const { id, value, low, high } = row ?? {};
    if (typeof value !== "number") return [];
    if ((typeof low !== "number" || value >= low) && (typeof high !== "number" || value <= high)) return [];
    const expected = `${low ?? "any"} to ${high ?? "any"}, the range of ${id}`;
    const fix = "change the value, or the range with its reason";
    return { code: "value-range" as const, file, field: `${i}.value`, found: String(value), expected, fix };
  });
}

/** A wrong number to call is worse than a blank, so the shared texts may hold none. */
function numbersToCall({ file, loose }: FactsDraft<EmergencyTexts>): Problem[] {
  const texts = [
    ...(loose?.call ?? []).map((text, i) => ({ field: `call.${i}`, text })),
    ...(loose?.firstAid ?? []).flatMap((entry, i) =>
      (entry?.lines ?? []).map((text, j) => ({ field: `firstAid.${i}.lines.${j}`, text })),
    ),
  ];
  return texts.flatMap(({ field, text }) => {
    const number = /\d[\d\s-]{1,}\d/.exec(text ?? "")?.[0];
    if (number === undefined || number.replace(/\D/g, "").length < 3) return [];
    const expected = "no number to call; each area gives its own";
    const fix = "take the number out; it belongs into emergency.number of area.json";
    return { code: "emergency-number" as const, file, field, found: number, expected, fix };
  });
}
