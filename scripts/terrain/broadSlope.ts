import { normalizeDeg } from "../geo/bearings.ts";
import type { Position } from "../geo/position.ts";
import { type ElevationGrid, type GridPlace, placeOnGrid } from "./elevationGrid.ts";
import { type SlopeAspect, slopeAspectOfGradient } from "./slopeAspect.ts";

export interface BroadSlopeRules {
  /** Least radius of the fitted plane. */
  fitRadiusMinM: number;
  /** The radius is at least this many times the longer cell side of the file. */
  fitRadiusCells: number;
  fitCellsMin: number;
  /** Files with cells up to this long are trusted. */
  trustCellM: number;
  /** Files with longer cells than this give no slope. */
  coarseCellM: number;
  /** Under this slope the aspect is null. */
  aspectFromSlopeDeg: number;
}

export type GridTrust = "trusted" | "coarse" | "too coarse";

/** The hillside around a site, as the air meets it; aspect from true north. */
export interface BroadSlope extends SlopeAspect {
  radiusM: number;
  /** Cells of the grid that the plane was fitted to. */
  cells: number;
  trust: "trusted" | "coarse";
}

export type BroadSlopeResult = { slope: BroadSlope; why: null } | { slope: null; why: string };

/** How far the slope of a file can be trusted, by the longer ground side of its cells. */
export function gridTrust(
  grid: ElevationGrid,
  rules: { trustCellM: number; coarseCellM: number },
): GridTrust {
  const cellM = longerCellM(grid);
  if (cellM <= rules.trustCellM) return "trusted";
  return cellM <= rules.coarseCellM ? "coarse" : "too coarse";
}

/** Longer ground side of a cell of the file. */
export function longerCellM(grid: ElevationGrid): number {
  return Math.max(grid.sourceCellM.eastM, grid.sourceCellM.northM);
}

/**
 * Slope and aspect of the plane that fits the ground around a position best (least squares over all cell centres within the
 * radius). Does not see benches and gullies narrower than the radius.
 *
 * @returns the plane, or null with the reason: cells too coarse, a void or the edge of the grid within the radius, or too
 *   few cells
 */
export function broadSlope(
  grid: ElevationGrid,
  position: Position,
  rules: BroadSlopeRules,
): BroadSlopeResult {
  const trust = gridTrust(grid, rules);
  if (trust === "too coarse") {
    return {
      slope: null,
      why: `the elevation grid is too coarse (${Math.round(longerCellM(grid))} m cells)`,
    };
  }
  const radiusM = Math.max(rules.fitRadiusMinM, rules.fitRadiusCells * longerCellM(grid));
  const place = placeOnGrid(grid, position);
  const disc = cellsWithin(grid, place, radiusM);
  if (disc === null) {
    return { slope: null, why: `ground within ${Math.round(radiusM)} m is missing from the elevation grid` };
  }
  const cells = disc.length / 3;
  const gradient = fitPlane(disc);
  if (cells < rules.fitCellsMin || gradient === null) {
    return { slope: null, why: `only ${cells} cells of the elevation grid within ${Math.round(radiusM)} m` };
  }
  const { slopeDeg, aspectDeg } = slopeAspectOfGradient(
    gradient.east,
    gradient.north,
    rules.aspectFromSlopeDeg,
  );
  const trueAspectDeg = aspectDeg === null ? null : normalizeDeg(aspectDeg + place.convergenceDeg);
  return { slope: { slopeDeg, aspectDeg: trueAspectDeg, radiusM, cells, trust }, why: null };
}

/**
 * Cell centres within a distance of a place.
 *
 * @returns flat triples (metres east of the place, metres north of it, height), or null when a void or the edge lies within
 */
export function cellsWithin(grid: ElevationGrid, place: GridPlace, radiusM: number): number[] | null {
  const reach = radiusM / grid.cellSizeM;
  const north = Math.ceil(place.row - reach);
  const south = Math.floor(place.row + reach);
  const west = Math.ceil(place.column - reach);
  const east = Math.floor(place.column + reach);
  if (north < 0 || west < 0 || south > grid.rows - 1 || east > grid.columns - 1) return null;
  const found: number[] = [];
  for (let row = north; row <= south; row++) {
    for (let column = west; column <= east; column++) {
      const eastM = (column - place.column) * grid.cellSizeM;
      const northM = (place.row - row) * grid.cellSizeM;
      if (eastM * eastM + northM * northM > radiusM * radiusM) continue;
      const heightM = grid.heightsM[row * grid.columns + column]!;
      if (Number.isNaN(heightM)) return null;
      found.push(eastM, northM, heightM);
    }
  }
  return found;
}

/**
 * Rise per metre east and north of the least-squares plane.
 *
 * @param points   flat triples: metres east, metres north, height
 * @returns null when the points do not span a plane
 */
export function fitPlane(points: readonly number[]): { east: number; north: number } | null {
  const count = points.length / 3;
  const mean = [0, 1, 2].map(
    (part) => points.reduce((sum, v, at) => (at % 3 === part ? sum + v : sum), 0) / count,
  );
  const [meanX, meanY, meanZ] = mean as [number, number, number];
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  for (let at = 0; at < points.length; at += 3) {
    const x = points[at]! - meanX;
    const y = points[at + 1]! - meanY;
    const z = points[at + 2]! - meanZ;
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 1e-9 * xx * yy)) return null;
  return { east: (xz * yy - yz * xy) / determinant, north: (yz * xx - xz * xy) / determinant };
}
