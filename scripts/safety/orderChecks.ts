import type { Check, CheckResult } from "./check.ts";

export type Severity = "S1" | "S2" | "S3" | "S4";

const RESULT_ORDER: readonly CheckResult[] = ["STOP", "CAUTION", "NOT CHECKED", "OK"];

/** How bad a mistake is that a check guards against: S1 can kill, S4 is comfort. Follows the caution each check stands for. */
export const CHECK_SEVERITY: Readonly<Record<string, Severity>> = {
  C1: "S3",
  C2: "S1",
  C3: "S1",
  C4: "S1",
  C5: "S1",
  C6: "S1",
  C7: "S1",
  C8: "S1",
  C9: "S1",
  C10: "S1",
  C11: "S1",
  C12: "S2",
  C13: "S2",
  C14: "S2",
  C15: "S1",
  C16: "S1",
  C17: "S2",
  C18: "S1",
  C19: "S1",
  C20: "S3",
  C21: "S2",
  C22: "S3",
  C23: "S1",
  C24: "S1",
  C25: "S1",
  C26: "S3",
  C27: "S3",
  C28: "S1",
  C29: "S2",
  C30: "S3",
};

/** The same checks in the order of a page: STOP, CAUTION, NOT CHECKED, OK; then S1 to S4; then id; then subject. */
export function orderChecks<T extends Pick<Check, "id" | "result" | "subject">>(checks: readonly T[]): T[] {
  return [...checks].sort(
    (a, b) =>
      RESULT_ORDER.indexOf(a.result) - RESULT_ORDER.indexOf(b.result) ||
      severity(a).localeCompare(severity(b)) ||
      number(a) - number(b) ||
      (a.subject < b.subject ? -1 : a.subject > b.subject ? 1 : 0),
  );
}

function severity({ id }: { id: string }): Severity {
  return CHECK_SEVERITY[id] ?? "S1";
}

function number({ id }: { id: string }): number {
  return Number(id.slice(1));
}
