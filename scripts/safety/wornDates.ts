import { type Check, type CheckResult, combined, listed } from "./check.ts";

export interface WornItem {
  /** "YYYY-MM-DD" or "YYYY-MM"; null = not known. */
  madeOn: string | null;
  replaceBy: string | null;
  /** Whether it has held a fall. */
  fallen: boolean | null;
}

/**
 * C7: the dates of a harness or strap on a day. Past its replace-by date or after any fall a STOP, anything unknown NOT
 * CHECKED. A replace-by date that gives only the month is a CAUTION in that month, a STOP after it.
 */
export function wornDates(facts: { subject: string; item: WornItem; onDate: string }): Check {
  const { subject, item, onDate } = facts;
  const { madeOn, replaceBy, fallen } = item;
  const missing = [
    madeOn === null ? "made on" : "",
    replaceBy === null ? "replace by" : "",
    fallen === null ? "any fall" : "",
  ];
  const isFromTheFuture = madeOn !== null && madeOn > onDate.slice(0, madeOn.length);
  const result = combined([
    fallen === true ? "STOP" : fallen === null ? "NOT CHECKED" : "OK",
    replaceBy === null ? "NOT CHECKED" : dateResult(replaceBy, onDate),
    madeOn === null || isFromTheFuture ? "NOT CHECKED" : "OK",
  ]);
  const inputs = { madeOn, replaceBy, fallen, onDate };
  return { id: "C7", result, text: textOf(), subject, inputs };

  function textOf(): string {
    if (fallen === true) return "Has held a fall: replace it.";
    if (replaceBy !== null && result === "STOP")
      return `Replace-by date ${replaceBy} has passed on ${onDate}.`;
    const unknown = missing.filter(Boolean);
    if (unknown.length > 0) return `Not entered: ${listed(unknown)}.`;
    if (isFromTheFuture) return `Made on ${madeOn}, after ${onDate}: check the label.`;
    return result === "CAUTION"
      ? `Runs out this month: replace by ${replaceBy}.`
      : `Replace by ${replaceBy}; no fall held.`;
  }
}

/** C7 for a stand: its label's replace-by date alone. */
export function standAge(facts: { subject: string; replaceBy: string | null; onDate: string }): Check {
  const { subject, replaceBy, onDate } = facts;
  const result = replaceBy === null ? "NOT CHECKED" : dateResult(replaceBy, onDate);
  const text = {
    OK: `Stand: replace by ${replaceBy}.`,
    CAUTION: `Stand runs out this month: replace by ${replaceBy}.`,
    STOP: `Stand: replace-by date ${replaceBy} has passed on ${onDate}.`,
    "NOT CHECKED": "Stand: replace-by date not entered.",
  }[result];
  return { id: "C7", result, text, subject, inputs: { replaceBy, onDate } };
}

function dateResult(replaceBy: string, onDate: string): CheckResult {
  if (onDate.slice(0, replaceBy.length) > replaceBy) return "STOP";
  return replaceBy.length < onDate.length && onDate.startsWith(replaceBy) ? "CAUTION" : "OK";
}
