/** The only four results. Missing data is NOT CHECKED and never counts as OK. */
export type CheckResult = "OK" | "CAUTION" | "STOP" | "NOT CHECKED";

export type CheckInputs = Record<string, number | string | boolean | null>;

/** One check with what it was computed from, so that a reader can redo it by hand. It certifies nothing. */
export interface Check {
  /** "C1" to "C30" */
  id: string;
  result: CheckResult;
  /** One plain sentence with the figures. */
  text: string;
  /** What was checked: the id of a site, stand, hunter, session or rule. */
  subject: string;
  inputs: CheckInputs;
}

/**
 * The result of several findings together: a STOP stands whatever else is unknown; short of one, an unknown finding
 * leaves the whole not checked; a caution beats OK. Nothing found is not checked.
 */
export function combined(findings: readonly CheckResult[]): CheckResult {
  for (const result of ["STOP", "NOT CHECKED", "CAUTION", "OK"] as const) {
    if (findings.includes(result)) return result;
  }
  return "NOT CHECKED";
}

/** A result that rests on a guess is a caution at best. */
export function atBestCaution(result: CheckResult): CheckResult {
  return result === "OK" ? "CAUTION" : result;
}

/** Whether any of the named fields was guessed. */
export function isGuessed(guessed: readonly string[] | undefined, fields: readonly string[]): boolean {
  return guessed?.some((field) => fields.includes(field)) ?? false;
}

/** A figure with at most the given places, without trailing zeros: 5.60 is "5.6". */
export function figure(value: number, places = 0): string {
  const rounded = Number(value.toFixed(places));
  return String(rounded === 0 ? 0 : rounded);
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** The sentence with a capital first letter and one full stop. */
export function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1).replace(/\.$/, "")}.`;
}
