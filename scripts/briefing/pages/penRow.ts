/** A label and what was entered; null is a blank for the pen. */
export interface PenRow {
  label: string;
  value: string | null;
}

/** A row of a pen table. */
export function penRow(label: string, value: string | null | undefined): PenRow {
  return { label, value: value ?? null };
}
