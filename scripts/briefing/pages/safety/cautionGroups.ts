import type { Caution } from "../../../content/schema/sharedDataSchema.ts";

export interface CautionRow {
  id: string;
  title: string;
  text: string;
  defersTo: string;
}

export interface CautionGroup {
  title: string;
  rows: CautionRow[];
}

const SEVERITIES: readonly { severity: Caution["severity"]; title: string }[] = [
  { severity: "S1", title: "One mistake can kill" },
  { severity: "S2", title: "Can injure badly, or lose a person" },
  { severity: "S3", title: "Harm, a breach of law, or lost meat" },
  { severity: "S4", title: "Comfort and manners" },
];

/** The catalogue by severity, the worst first, then by id; groups without a caution are left out. */
export function cautionGroups(cautions: readonly Caution[]): CautionGroup[] {
  return SEVERITIES.map(({ severity, title }) => ({
    title,
    rows: cautions
      .filter((caution) => caution.severity === severity)
      .sort((a, b) => idOrder(a.id, b.id))
      .map(({ id, title: name, text, defersTo }) => ({ id, title: name, text, defersTo })),
  })).filter((group) => group.rows.length > 0);
}

/**
 * The text of one caution of the catalogue.
 *
 * @throws {RangeError} when there is none of that id: a safety line is never left out in silence
 */
export function cautionText(cautions: readonly Caution[], id: string): string {
  const caution = cautions.find((entry) => entry.id === id);
  if (caution === undefined) throw new RangeError(`the catalogue has no caution ${id}`);
  return caution.text;
}

/** E2 comes before E10. */
function idOrder(a: string, b: string): number {
  const letters = (id: string): string => id.replace(/\d+$/, "");
  const number = (id: string): number => Number(id.replace(/^\D+/, ""));
  if (letters(a) !== letters(b)) return letters(a) < letters(b) ? -1 : 1;
  return number(a) - number(b);
}
