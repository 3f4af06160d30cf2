import { type Check, type CheckResult, combined, figure, sentence } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** One set-back that the law or the land writes, and how near the site is to the nearest thing of its kind. */
export interface SetbackFact {
  /** Kind of map feature, camp or parking. */
  featureKind: string;
  limitM: number;
  waiver: "none" | "verbal" | "written";
  /** Horizontal; null = nothing of the kind is drawn, which does not say that there is none. */
  nearestM: number | null;
}

/**
 * C2: the set-backs that hold for a weapon. Nearer than the limit is a STOP, also where the rule knows of a waiver: none can be entered;
 * within the limit and the error of the positions a CAUTION. A kind of which nothing is drawn is NOT CHECKED. Keeping a set-back
 * stops no bullet.
 *
 * @param facts.setbacks      those for the weapon; null = no weapon is known
 */
export function setbackCheck(
  facts: { subject: string; weapon: string | null; setbacks: readonly SetbackFact[] | null },
  limits: Pick<SafetyLimits, "positionErrorM">,
): Check {
  const { subject, weapon, setbacks } = facts;
  const open = (text: string): Check => ({
    id: "C2",
    result: "NOT CHECKED",
    text,
    subject,
    inputs: { weapon, positionErrorM: limits.positionErrorM },
  });
  if (weapon === null || setbacks === null) return open("No weapon is known: pace the set-backs out.");
  if (setbacks.length === 0)
    return open(`No set-back is entered for ${weapon}: ask the law and the landholder.`);
  const found = setbacks.map((setback) => judged(setback, limits));
  return {
    id: "C2",
    result: combined(found.map(({ result }) => result)),
    text: sentence(found.map(({ words }) => words).join("; ")),
    subject,
    inputs: {
      weapon,
      positionErrorM: limits.positionErrorM,
      ...Object.fromEntries(
        setbacks.flatMap(({ featureKind, limitM, nearestM }) => [
          [`${featureKind} nearestM`, nearestM],
          [`${featureKind} limitM`, limitM],
        ]),
      ),
    },
  };
}

function judged(
  { featureKind, limitM, nearestM, waiver }: SetbackFact,
  { positionErrorM }: Pick<SafetyLimits, "positionErrorM">,
): { result: CheckResult; words: string } {
  const limit = `the set-back is ${figure(limitM)} m`;
  if (nearestM === null) {
    return { result: "NOT CHECKED", words: `no ${featureKind} is drawn: pace it out, ${limit}` };
  }
  const at = `${featureKind} at ${figure(Math.floor(nearestM))} m`;
  if (nearestM < limitM) {
    const leave = waiver === "none" ? "" : ` without ${waiver} leave`;
    return { result: "STOP", words: `${at}: ${limit}${leave}` };
  }
  if (nearestM < limitM + positionErrorM) {
    return {
      result: "CAUTION",
      words: `${at}: ${limit} and positions may be ${figure(positionErrorM)} m off`,
    };
  }
  return { result: "OK", words: `${at}, ${limit}` };
}
