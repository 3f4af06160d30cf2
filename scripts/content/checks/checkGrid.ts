import { distanceAndBearing } from "../../geo/geodesic.ts";
import { parseGridText } from "../../geo/mgrs.ts";
import type { Position } from "../../geo/position.ts";
import type { Problem } from "../problem.ts";
import { asWritten } from "../schemaProblems.ts";

const GRID_TOLERANCE_M = 10;

/** The grid reference of a site against its position; a coarse one is compared with its whole square. */
export function checkGrid(file: string, grid: string | undefined, position: Position | null): Problem[] {
  if (grid === undefined) return [];
  const at = { file, field: "grid" };
  const expected = 'a grid reference with zone, square and 5 + 5 digits, such as "59G LL 15993 11006"';
  let middle: Position;
  try {
    middle = parseGridText(grid);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const fix = "write the reference as it was read, or delete the line";
    return [{ ...at, code: "grid-text", found: asWritten(grid), expected, fix }];
  }
  const digits = /[\d\s]*$/.exec(grid.trim())![0].replace(/\s/g, "").length / 2;
  const squareM = 10 ** (5 - digits);
  const slackM = squareM > 1 ? squareM * Math.SQRT1_2 : 0;
  const problems: Problem[] = [];
  if (squareM > GRID_TOLERANCE_M) {
    const found = `${asWritten(grid)}, a square of ${squareM} m`;
    const fix = "read all five digits each way, or delete the line";
    problems.push({ ...at, severity: "warning", code: "grid-coarse", found, expected, fix });
  }
  if (position === null) return problems;
  const apartM = distanceAndBearing(position, middle).distanceM;
  if (apartM - slackM > GRID_TOLERANCE_M) {
    problems.push({
      ...at,
      code: "grid-differs",
      found: `${asWritten(grid)}, ${Math.round(apartM)} m from ${position.lat}, ${position.lon}`,
      expected: `grid and position within ${GRID_TOLERANCE_M} m of one another (WGS 84)`,
      fix: `read both again; the grid means { "lat": ${middle.lat.toFixed(6)}, "lon": ${middle.lon.toFixed(6)} }`,
    });
  }
  return problems;
}
