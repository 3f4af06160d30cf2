import type { SharedData } from "../../content/areaContent.ts";

/** Sentences that stand on pages whatever the area, by their key in data/wording.json. */
export type StandingLine =
  | "tiedOn"
  | "lawFirst"
  | "demonstration"
  | "legalHoursFlat"
  | "usableLight"
  | "doesNotCertify"
  | "seasonNotConfirmed"
  | "noForecast"
  | "oldForecast"
  | "meetPartner"
  | "planChanges";

/**
 * A standing sentence in the words of data/wording.json.
 *
 * @throws {RangeError} when the file has none of that key: a safety line is never left out in silence
 */
export function standingLine(shared: SharedData, key: StandingLine): string {
  const line = shared.wording[key];
  if (line === undefined) throw new RangeError(`the wording has no sentence named ${key}`);
  return line;
}

export const EYES_DECIDE = "Your own eyes decide.";
