import { downslopeDirectionDeg } from "./downslopeDirection.ts";
import { interpolate } from "./elevationGrid.ts";

interface Surface {
  rows: number;
  columns: number;
  heightsM: Float32Array | Float64Array;
}

export interface GridPoint {
  row: number;
  column: number;
}

/** A line of steepest descent over a surface, in cells. */
export interface FallLine {
  /** From the start outward; the start alone when it could not leave. */
  points: GridPoint[];
  lengthCells: number;
  /** `length`: as long as asked; `edge`: known ground ends; `bottom`: nothing around lies lower. */
  endsBecause: "length" | "edge" | "bottom";
}

/**
 * Follows a surface downhill. Each step goes along the D-infinity directions of the four nearest cells, weighted by nearness;
 * where they cancel, or the step would climb, it goes from the nearest cell to its lowest neighbour until that is lower than
 * here. Every step or such
 * stretch ends lower than it began, so the line never turns in a circle; its last point is cut to length.
 */
export function fallLine(
  surface: Surface,
  start: GridPoint,
  rules: { lengthCells: number; stepCells: number },
): FallLine {
  const points: GridPoint[] = [{ row: start.row, column: start.column }];
  let lengthCells = 0;
  let endsBecause: FallLine["endsBecause"] = "length";
  while (lengthCells < rules.lengthCells) {
    const here = points.at(-1)!;
    const next = stepAlong(surface, here, rules.stepCells) ?? stepsToLowerCell(surface, here);
    if (typeof next === "string") {
      endsBecause = next;
      break;
    }
    for (const point of next) {
      const last = points.at(-1)!;
      const leg = Math.hypot(point.row - last.row, point.column - last.column);
      const share = Math.min(1, (rules.lengthCells - lengthCells) / leg);
      points.push({
        row: last.row + (point.row - last.row) * share,
        column: last.column + (point.column - last.column) * share,
      });
      lengthCells += leg * share;
      if (lengthCells >= rules.lengthCells - 1e-9) return { points, lengthCells, endsBecause: "length" };
    }
  }
  return { points, lengthCells, endsBecause };
}

/** One step along the mean direction; null where the directions cancel or the step would not go down. */
function stepAlong(surface: Surface, here: GridPoint, stepCells: number): GridPoint[] | null {
  const row0 = Math.floor(here.row);
  const column0 = Math.floor(here.column);
  let east = 0;
  let south = 0;
  for (const [row, rowWeight] of [
    [row0, row0 + 1 - here.row],
    [row0 + 1, here.row - row0],
  ] as const) {
    for (const [column, columnWeight] of [
      [column0, column0 + 1 - here.column],
      [column0 + 1, here.column - column0],
    ] as const) {
      const weight = rowWeight * columnWeight;
      const bearingDeg = weight > 0 ? downslopeDirectionDeg(surface, row, column) : null;
      if (bearingDeg === null) continue;
      east += weight * Math.sin((bearingDeg * Math.PI) / 180);
      south -= weight * Math.cos((bearingDeg * Math.PI) / 180);
    }
  }
  const length = Math.hypot(east, south);
  // Directions that nearly cancel leave a remainder that points anywhere.
  if (length < 0.05) return null;
  const next = {
    row: here.row + (south / length) * stepCells,
    column: here.column + (east / length) * stepCells,
  };
  const hereM = interpolate(surface, here.row, here.column);
  return interpolate(surface, next.row, next.column) < hereM ? [next] : null;
}

function stepsToLowerCell(surface: Surface, here: GridPoint): GridPoint[] | "edge" | "bottom" {
  const hereM = interpolate(surface, here.row, here.column);
  const way: GridPoint[] = [];
  let row = Math.round(here.row);
  let column = Math.round(here.column);
  for (;;) {
    const lowest = lowestNeighbour(surface, row, column);
    if (typeof lowest === "string") return lowest;
    way.push(lowest);
    row = lowest.row;
    column = lowest.column;
    if (surface.heightsM[row * surface.columns + column]! < hereM) return way;
  }
}

function lowestNeighbour(surface: Surface, row: number, column: number): GridPoint | "edge" | "bottom" {
  const { rows, columns, heightsM } = surface;
  let lowestM = heightsM[row * columns + column]!;
  let lowest: GridPoint | null = null;
  if (row < 1 || column < 1 || row > rows - 2 || column > columns - 2) return "edge";
  for (let r = row - 1; r <= row + 1; r++) {
    for (let c = column - 1; c <= column + 1; c++) {
      const heightM = heightsM[r * columns + c]!;
      if (Number.isNaN(heightM)) return "edge";
      if (heightM < lowestM) {
        lowestM = heightM;
        lowest = { row: r, column: c };
      }
    }
  }
  return lowest ?? "bottom";
}
