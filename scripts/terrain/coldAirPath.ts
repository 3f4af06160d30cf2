import { normalizeDeg } from "../geo/bearings.ts";
import type { Position } from "../geo/position.ts";
import { fromUtm } from "../geo/utm.ts";
import { gridTrust, longerCellM } from "./broadSlope.ts";
import type { DrainageSurface } from "./drainageSurface.ts";
import { type ElevationGrid, interpolate, placeOnGrid } from "./elevationGrid.ts";
import { type FallLine, fallLine } from "./fallLine.ts";

export interface ColdAirPathRules {
  pathLengthM: number;
  pathStepM: number;
  /** The bearing of a path is taken over this much of it. */
  pathBearingM: number;
  /** Ground that falls less than this over the next distance is said: there the way is a guess. */
  pathFlatDeg: number;
  pathFlatM: number;
  trustCellM: number;
  coarseCellM: number;
}

export interface ColdAirPath {
  /** From the site outward. */
  positions: Position[];
  lengthM: number;
  /** True bearing from the site to the end of the first stretch. */
  firstBearingDeg: number;
  /** `length`: as long as asked; `edge`: known ground ends; `top`: rising air has reached a crest or summit. */
  endsBecause: "length" | "edge" | "top";
  /** Distance along the path from which the ground is too flat to be sure of the way; null when it never is. */
  flatFromM: number | null;
}

export type ColdAirPathResult = { path: ColdAirPath; why: null } | { path: null; why: string };

/**
 * The way slope air takes from a site: downhill while it falls, up the fall line while it rises. Follows D-infinity
 * directions of the four nearest cells in fixed steps. Does not cover air that fills a hollow and spills over, wind that
 * pushes it aside, or gullies narrower than two cells.
 *
 * @returns the path, or null with the reason: the site outside the grid or at its edge, cells too coarse, or (rising) no
 *   higher ground beside it
 * @source D. G. Tarboton (1997), as `downslopeDirectionDeg`; Barnes, Lehman and Mulla (2014), as `fillPits`
 */
export function coldAirPath(
  surface: DrainageSurface,
  position: Position,
  phase: "falling" | "rising",
  rules: ColdAirPathRules,
): ColdAirPathResult {
  const { grid } = surface;
  if (gridTrust(grid, rules) === "too coarse") {
    return { path: null, why: `the elevation grid is too coarse (${Math.round(longerCellM(grid))} m cells)` };
  }
  const place = placeOnGrid(grid, position);
  const heightsM = phase === "falling" ? surface.drainedM : surface.invertedM;
  const raster = { rows: grid.rows, columns: grid.columns, heightsM };
  if (Number.isNaN(interpolate(raster, place.row, place.column))) {
    return { path: null, why: "the site lies outside the elevation grid or on a void" };
  }
  const line = fallLine(raster, place, {
    lengthCells: rules.pathLengthM / grid.cellSizeM,
    stepCells: rules.pathStepM / grid.cellSizeM,
  });
  const first = pointAt(line, rules.pathBearingM / grid.cellSizeM);
  if (first === null) {
    const why =
      line.endsBecause === "edge"
        ? "the site lies at the edge of the known ground"
        : "no higher ground beside the site";
    return { path: null, why };
  }
  const gridBearingDeg = (Math.atan2(first.column - place.column, place.row - first.row) * 180) / Math.PI;
  return {
    path: {
      positions: line.points.map((point) => positionOf(grid, point)),
      lengthM: line.lengthCells * grid.cellSizeM,
      firstBearingDeg: normalizeDeg(gridBearingDeg + place.convergenceDeg),
      endsBecause: line.endsBecause === "bottom" ? "top" : line.endsBecause,
      flatFromM: flatFromM(grid, raster, line, rules),
    },
    why: null,
  };
}

function positionOf(grid: ElevationGrid, point: { row: number; column: number }): Position {
  const eastingM = grid.westM + point.column * grid.cellSizeM;
  const northingM = grid.northM - point.row * grid.cellSizeM;
  return fromUtm({ eastingM, northingM }, grid.zone);
}

/** Point at a distance along the line, or its end when it is shorter; null for a line that never left its start. */
function pointAt(line: FallLine, cells: number): { row: number; column: number } | null {
  let walked = 0;
  for (let at = 1; at < line.points.length; at++) {
    const a = line.points[at - 1]!;
    const b = line.points[at]!;
    const leg = Math.hypot(b.row - a.row, b.column - a.column);
    if (walked + leg >= cells) {
      const share = leg === 0 ? 1 : (cells - walked) / leg;
      return { row: a.row + (b.row - a.row) * share, column: a.column + (b.column - a.column) * share };
    }
    walked += leg;
  }
  return line.points.length > 1 ? line.points.at(-1)! : null;
}

function flatFromM(
  grid: ElevationGrid,
  raster: Parameters<typeof interpolate>[0],
  line: FallLine,
  rules: ColdAirPathRules,
): number | null {
  const leastFallM = rules.pathFlatM * Math.tan((rules.pathFlatDeg * Math.PI) / 180);
  for (
    let fromM = 0;
    fromM + rules.pathFlatM <= line.lengthCells * grid.cellSizeM + 1e-6;
    fromM += rules.pathStepM
  ) {
    const a = pointAt(line, fromM / grid.cellSizeM)!;
    const b = pointAt(line, (fromM + rules.pathFlatM) / grid.cellSizeM)!;
    if (interpolate(raster, a.row, a.column) - interpolate(raster, b.row, b.column) < leastFallM)
      return fromM;
  }
  return null;
}
