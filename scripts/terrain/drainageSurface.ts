import { longerCellM } from "./broadSlope.ts";
import type { ElevationGrid } from "./elevationGrid.ts";
import { fillPits } from "./fillPits.ts";
import { smoothHeights } from "./smoothHeights.ts";

export interface DrainageRules {
  /** Standard deviation of the smoothing of fine grids; none where the cells of the file are longer than the next. */
  pathSmoothM: number;
  pathSmoothCellMaxM: number;
  /** Least fall from cell to cell on filled ground. */
  pitEpsilonM: number;
}

/** The ground as air meets it, made once for an area and used for the paths of all its sites. */
export interface DrainageSurface {
  grid: ElevationGrid;
  /** Smoothed heights turned upside down, so that the way up is a way down. */
  invertedM: Float64Array;
  /** Smoothed heights without pits, for the way down. */
  drainedM: Float64Array;
  raisedCells: number;
}

/** Smooths a fine grid and fills its pits, so that every cell drains to the edge of the grid or of a void. */
export function drainageSurface(grid: ElevationGrid, rules: DrainageRules): DrainageSurface {
  const { rows, columns, cellSizeM } = grid;
  const sigmaM = longerCellM(grid) > rules.pathSmoothCellMaxM ? 0 : rules.pathSmoothM;
  const smoothedM = smoothHeights(grid, sigmaM / cellSizeM);
  const { heightsM, raisedCells } = fillPits({ rows, columns, heightsM: smoothedM }, rules.pitEpsilonM);
  return { grid, invertedM: smoothedM.map((heightM) => -heightM), drainedM: heightsM, raisedCells };
}
