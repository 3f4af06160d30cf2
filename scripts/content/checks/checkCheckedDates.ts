import { civilAt, isTimezone } from "../../time/civilTime.ts";
import type { AreaDraft } from "../areaDraft.ts";
import type { Problem } from "../problem.ts";

const DATES_OF_LOOKING: ReadonlySet<string> = new Set(["checkedOn", "seenOn", "placedOn"]);

/**
 * Dates on which somebody looked that lie after the as-of date: most often a slip in the year, and such a fact would
 * never grow old.
 *
 * @param asOf ISO 8601 with offset; the one of the area when absent; without any nothing is judged
 */
export function checkCheckedDates(draft: AreaDraft, asOf: string | undefined): Problem[] {
  const { loose } = draft.area;
  const pinned = asOf ?? loose?.asOf;
  const timezone = loose?.timezone;
  if (pinned === undefined || timezone === undefined || !isTimezone(timezone)) return [];
  const today = civilAt(new Date(pinned), timezone).localDate;
  return [draft.area, ...draft.sites].flatMap(({ file, loose: facts }) =>
    datesOfLooking(facts, []).flatMap(({ field, date }) => {
      if (date <= today) return [];
      const found = `${date}, after the as-of date ${today}`;
      const fix = "check the year";
      const expected = "a day on which somebody could have looked";
      return {
        severity: "warning" as const,
        code: "later-than-as-of" as const,
        file,
        field,
        found,
        expected,
        fix,
      };
    }),
  );
}

function datesOfLooking(value: unknown, path: readonly string[]): { field: string; date: string }[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => {
    const below = [...path, key];
    if (DATES_OF_LOOKING.has(key) && typeof part === "string") return { field: below.join("."), date: part };
    return datesOfLooking(part, below);
  });
}
