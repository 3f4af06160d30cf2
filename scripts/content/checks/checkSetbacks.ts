import type { AreaDraft } from "../areaDraft.ts";
import { nearestWord } from "../nearestWord.ts";
import type { Problem } from "../problem.ts";
import { MAP_KINDS } from "../schema/mapFeaturesSchema.ts";

const SETBACK_KINDS: readonly string[] = [...MAP_KINDS, "camp", "parking"];

/** Set-backs from a kind of feature that no map can hold: such a rule would never be applied. */
export function checkSetbacks(draft: AreaDraft): Problem[] {
  const { file, loose } = draft.area;
  return (loose?.setbacks ?? []).flatMap((setback, i) => {
    const kind = setback?.featureKind;
    if (kind === undefined || SETBACK_KINDS.includes(kind)) return [];
    const near = nearestWord(kind, SETBACK_KINDS);
    return {
      code: "setback-kind" as const,
      file,
      field: `setbacks.${i}.featureKind`,
      found: JSON.stringify(kind),
      expected: `a kind of map feature, or camp or parking: ${SETBACK_KINDS.join(", ")}`,
      fix: near
        ? `write "featureKind": ${JSON.stringify(near)}`
        : 'write the kind it is drawn as, such as "building"',
    };
  });
}
