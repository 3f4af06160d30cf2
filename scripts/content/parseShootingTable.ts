import { dayOfYear, isLocalDate } from "../time/civilTime.ts";
import type { ShootingTableRow } from "./areaContent.ts";
import { csvTable } from "./csvTable.ts";
import type { Problem } from "./problem.ts";

const COLUMNS = { needed: ["start", "end"], allowed: ["localDate", "from", "to", "start", "end"] };
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;
const LEAP_YEAR = 2028; // spans of MM-DD are compared in a year that has a 29 February

/**
 * Rows of an official table of legal hours: `localDate`, or `from` and `to` (MM-DD, may run over the new year), with
 * `start` and `end` as clock times. Two rows for one day are a problem.
 */
export function parseShootingTable(
  text: string,
  file: string,
): { rows: ShootingTableRow[]; problems: Problem[] } {
  const { rows, problems } = csvTable(text, file, COLUMNS);
  const read: ShootingTableRow[] = [];
  const linesOf = new Map<string, number>();
  for (const { line, cells } of rows) {
    const add = (column: string, expected: string, fix: string): void => {
      const found = column in cells ? JSON.stringify(cells[column]) : "no such column";
      problems.push({ code: "csv-value", file, field: `line ${line}, ${column}`, found, expected, fix });
    };
    const { localDate = "", from = "", to = "", start = "", end = "" } = cells;
    const hasDate = localDate !== "";
    const before = problems.length;
    if (hasDate && (from !== "" || to !== ""))
      add("localDate", "a date, or from and to, not both", "clear one of them");
    else if (hasDate && !isLocalDate(localDate))
      add("localDate", 'a date that exists, "YYYY-MM-DD"', "write the date");
    for (const [column, value] of hasDate ? [] : [["from", from] as const, ["to", to] as const]) {
      if (!isMonthDay(value)) add(column, 'a day of the year, "MM-DD"', "write the day, or fill localDate");
    }
    for (const [column, value] of [["start", start] as const, ["end", end] as const]) {
      if (!CLOCK.test(value))
        add(column, 'a clock time on 24 hours, "HH:MM"', "write the time with two digits each");
    }
    if (CLOCK.test(start) && CLOCK.test(end) && start >= end)
      add("end", `a time after ${start}`, "exchange start and end");
    if (problems.length > before) continue;
    for (const day of hasDate ? [localDate] : daysOf(from, to)) {
      const earlier = linesOf.get(day);
      linesOf.set(day, line);
      if (earlier !== undefined && earlier !== line) {
        add(
          hasDate ? "localDate" : "from",
          `days that line ${earlier} does not have`,
          `end line ${earlier} before ${day}`,
        );
        break;
      }
    }
    read.push(hasDate ? { localDate, start, end } : { from, to, start, end });
  }
  return { rows: read, problems };
}

function isMonthDay(text: string): boolean {
  return /^\d\d-\d\d$/.test(text) && isLocalDate(`${LEAP_YEAR}-${text}`);
}

function daysOf(from: string, to: string): string[] {
  const first = dayOfYear(`${LEAP_YEAR}-${from}`);
  const last = dayOfYear(`${LEAP_YEAR}-${to}`);
  const length = ((last - first + 366) % 366) + 1;
  return Array.from({ length }, (_, n) => `day ${((first - 1 + n) % 366) + 1} of the year`);
}
