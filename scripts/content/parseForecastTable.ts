import type { Lined } from "./areaDraft.ts";
import { booleanCell, filledCells, numberCell } from "./cellValues.ts";
import { csvTable } from "./csvTable.ts";
import type { Problem } from "./problem.ts";
import { type ForecastRow, forecastRow } from "./schema/tripSchema.ts";
import { checkedBySchema } from "./schemaProblems.ts";

const NUMBERS = ["windSpeed", "gust", "cloudShare", "temp"] as const;
const COLUMNS = {
  needed: ["localDate", "windFrom", ...NUMBERS],
  allowed: [
    "localDate",
    "hour",
    "session",
    "windFrom",
    ...NUMBERS,
    "rain",
    "thunder",
    "freezingRain",
    "issuedAt",
  ],
};

/**
 * Rows of `<trip>.forecast.csv`, in the units of the trip's forecast. An empty cell is not known (null); columns rain,
 * thunder, freezingRain and issuedAt may be left out. Rows with a fault are left out and told with line and column.
 */
export function parseForecastTable(
  text: string,
  file: string,
): { rows: Lined<ForecastRow>[]; problems: Problem[] } {
  const { rows, problems } = csvTable(text, file, COLUMNS);
  const read: Lined<ForecastRow>[] = [];
  if (problems.some((problem) => problem.code === "csv-columns")) return { rows: read, problems };
  for (const { line, cells } of rows) {
    const value = {
      ...filledCells(cells, ["localDate", "hour", "session", "issuedAt"]),
      windFrom: numberCell(cells.windFrom),
      ...Object.fromEntries(NUMBERS.map((name) => [name, numberCell(cells[name])])),
      ...("rain" in cells ? { rain: numberCell(cells.rain) } : {}),
      ...("thunder" in cells ? { thunder: booleanCell(cells.thunder) } : {}),
      ...("freezingRain" in cells ? { freezingRain: booleanCell(cells.freezingRain) } : {}),
    };
    const place = (path: readonly PropertyKey[]): string => [`line ${line}`, ...path.map(String)].join(", ");
    const checked = checkedBySchema(forecastRow, value, file, place);
    problems.push(...checked.problems);
    if (checked.facts) read.push({ line, row: checked.facts });
  }
  return { rows: read, problems };
}
