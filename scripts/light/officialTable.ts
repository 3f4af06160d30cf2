import type { ShootingTableRow } from "../content/areaContent.ts";
import { isInMonthDays } from "./ruleMatch.ts";

/**
 * The rows of an official table of hours that hold a date: the row of that very date when there is one, else every span
 * of the year that holds it (several mean that the table contradicts itself; callers keep what all of them allow).
 */
export function officialTableRows(rows: readonly ShootingTableRow[], localDate: string): ShootingTableRow[] {
  const dated = rows.filter((row) => "localDate" in row && row.localDate === localDate);
  if (dated.length > 0) return dated;
  return rows.filter((row) => "from" in row && isInMonthDays(localDate, row.from, row.to));
}
