import { isLocalDate } from "../time/civilTime.ts";
import type { CameraRow } from "./areaContent.ts";
import { csvTable } from "./csvTable.ts";
import type { Problem } from "./problem.ts";

const COLUMNS = {
  needed: ["at", "species", "count"],
  allowed: ["at", "species", "class", "count", "direction"],
};
const AT = /^(\d{4}-\d\d-\d\d)[T ]([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/;

/**
 * Rows of `<camera>.csv` in the order of the file. `at` is given as "YYYY-MM-DDTHH:MM:SS", the camera's own clock, not
 * corrected; class and direction are null where their cell is empty. Rows with a fault are left out and told.
 */
export function parseCameraTable(text: string, file: string): { rows: CameraRow[]; problems: Problem[] } {
  const { rows, problems } = csvTable(text, file, COLUMNS);
  const read: CameraRow[] = [];
  if (problems.some((problem) => problem.code === "csv-columns")) return { rows: read, problems };
  for (const { line, cells } of rows) {
    const faulty = (column: string, expected: string, fix: string): void => {
      const found = JSON.stringify(cells[column] ?? "");
      problems.push({ code: "csv-value", file, field: `line ${line}, ${column}`, found, expected, fix });
    };
    const [whole, date = "", hour, minute, second = "00"] = AT.exec(cells.at!) ?? [];
    const isMoment = whole !== undefined && isLocalDate(date);
    const isCount = /^[1-9]\d{0,2}$/.test(cells.count!);
    if (!isMoment) {
      const expected = 'date and time on the clock of the camera, "YYYY-MM-DD HH:MM", without an offset';
      faulty("at", expected, "write such a date and time; the clock error goes into clockOffsetMin");
    }
    if (!isCount)
      faulty("count", "a whole number, 1 to 999", "write how many animals are seen, or delete the row");
    if (cells.species === "")
      faulty("species", "the species, or unknown", 'write "unknown" if it can not be told');
    if (isMoment && isCount && cells.species !== "") {
      read.push({
        at: `${date}T${hour}:${minute}:${second}`,
        species: cells.species!,
        class: cells.class || null,
        count: Number(cells.count),
        direction: cells.direction || null,
      });
    }
  }
  return { rows: read, problems };
}
