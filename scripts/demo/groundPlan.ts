import type { ControlPoint, LocalPoint } from "./localPoints.ts";

/** What the ground of a demonstration area is carved from. All lengths in metres, in the frame of the area. */
export interface GroundPlan {
  ridges: ControlPoint[][];
  streams: ControlPoint[][];
  benches: { line: LocalPoint[]; halfWidthM: number }[];
  flats: { at: LocalPoint; radiusM: number }[];
  /** exponent of the slope between stream and ridge: under 1 the slope is steeper at its foot */
  hillShape: number;
  noiseSeed: number;
}

/** The posts on which an area's ground is carved: a square lattice, row 0 in the north. */
export interface PostLattice {
  /** frame coordinates of the post in row 0, column 0 */
  westX: number;
  northY: number;
  spacingM: number;
  rows: number;
  columns: number;
}

/** The 4 km box with a 1 km apron, a post every 10 m. */
export const DEMO_LATTICE: PostLattice = {
  westX: -1000,
  northY: 5000,
  spacingM: 10,
  rows: 601,
  columns: 601,
};
