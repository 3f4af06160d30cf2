import { type Check, listed } from "./check.ts";

/**
 * C18: whether each way to reach the hunter is noted. A blank one is NOT CHECKED; a note is not judged, only that it is
 * there.
 *
 * @param facts.notes   note by the way it describes, such as "phone coverage", "radio", "check-in"; null = blank
 */
export function contactGaps(facts: {
  subject: string;
  notes: Readonly<Record<string, string | null>>;
}): Check {
  const { subject, notes } = facts;
  const names = Object.keys(notes);
  const blank = names.filter((name) => (notes[name] ?? "").trim() === "");
  const inputs = { ...notes };
  if (names.length === 0)
    return { id: "C18", result: "NOT CHECKED", text: "No way to be reached is entered.", subject, inputs };
  return blank.length > 0
    ? { id: "C18", result: "NOT CHECKED", text: `Not entered: ${listed(blank)}.`, subject, inputs }
    : { id: "C18", result: "OK", text: `Entered: ${listed(names)}; test them on the spot.`, subject, inputs };
}
