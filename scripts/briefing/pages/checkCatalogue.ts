import type { PackCheck } from "../../content/schema/packSchema.ts";

type Severity = "S1" | "S2" | "S3" | "S4";

/** What a check is called on a page, and how bad it is to get it wrong. */
const CHECKS: Readonly<Record<string, { title: string; severity: Severity }>> = {
  C1: { title: "Legal hours", severity: "S3" },
  C2: { title: "Set-back", severity: "S1" },
  C3: { title: "Closed bearings", severity: "S1" },
  C4: { title: "Ground behind the animal", severity: "S1" },
  C5: { title: "Trunk and stand", severity: "S1" },
  C6: { title: "Load", severity: "S1" },
  C7: { title: "Harness and straps", severity: "S1" },
  C8: { title: "Platform height", severity: "S1" },
  C9: { title: "Haul line", severity: "S1" },
  C10: { title: "Wind on the tree", severity: "S1" },
  C11: { title: "Thunder", severity: "S1" },
  C12: { title: "Walking in the dark", severity: "S2" },
  C13: { title: "Leaving time", severity: "S3" },
  C14: { title: "Start down", severity: "S1" },
  C15: { title: "Overdue", severity: "S1" },
  C16: { title: "Water crossings", severity: "S1" },
  C17: { title: "Helicopter spot", severity: "S2" },
  C18: { title: "Contact", severity: "S2" },
  C19: { title: "Hours awake", severity: "S1" },
  C20: { title: "Meat", severity: "S3" },
  C21: { title: "Carrying out", severity: "S3" },
  C22: { title: "Stand dates", severity: "S3" },
  C23: { title: "Tree", severity: "S1" },
  C24: { title: "Hunters apart", severity: "S1" },
  C25: { title: "Position", severity: "S2" },
  C26: { title: "Age of facts", severity: "S3" },
  C27: { title: "Privacy", severity: "S3" },
  C28: { title: "Fire ban", severity: "S1" },
  C29: { title: "Cold", severity: "S2" },
  C30: { title: "Boundary", severity: "S3" },
};

const RESULT_ORDER = ["STOP", "CAUTION", "NOT CHECKED", "OK"];

/**
 * What a check is called.
 *
 * @throws {RangeError} when the catalogue has no such check
 */
export function checkTitle(id: string): string {
  const entry = CHECKS[id];
  if (entry === undefined) throw new RangeError(`there is no check ${id}`);
  return entry.title;
}

/** Checks from the worst: by result, then severity, then number, then subject. */
export function worstFirst<T extends Pick<PackCheck, "id" | "result" | "subject">>(
  checks: readonly T[],
): T[] {
  const rank = (check: T): [number, string, number] => [
    RESULT_ORDER.indexOf(check.result),
    CHECKS[check.id]?.severity ?? "S1",
    Number(check.id.slice(1)),
  ];
  return [...checks].sort((a, b) => {
    const [ra, rb] = [rank(a), rank(b)];
    return (
      ra[0] - rb[0] ||
      ra[1].localeCompare(rb[1]) ||
      ra[2] - rb[2] ||
      (a.subject < b.subject ? -1 : a.subject > b.subject ? 1 : 0)
    );
  });
}
