import { gaussianBlur } from "./gaussianBlur.ts";
import type { GroundPlan, PostLattice } from "./groundPlan.ts";
import { lineSamples, nearestOnLine, type SampledLines } from "./lineSamples.ts";
import type { LocalPoint } from "./localPoints.ts";
import { valueNoise } from "./valueNoise.ts";

const SAMPLE_STEP_M = 20;
const SOFTENING_M = 25;
const WANDER_SHARE = 0.08;
const BENCH_WEIGHT = 0.85;
const FLAT_WEIGHT = 0.8;

/**
 * Heights of an invented country, metres to 0.1 m, row-major, row 0 in the north: slopes between given ridges and streams,
 * with benches and flats pressed into them and a little roughness. The same plan gives the same heights.
 */
export function carveGround(plan: GroundPlan, lattice: PostLattice): Float64Array {
  const { spacingM } = lattice;
  const slopes = gaussianBlur(
    finer(slopesBetween(plan, every2nd(lattice)), every2nd(lattice), lattice),
    lattice,
    25 / spacingM,
  );
  const shaped = gaussianBlur(withBenchesAndFlats(slopes, plan, lattice), lattice, 10 / spacingM);
  forEachPost(lattice, (at, x, y) => {
    shaped[at] = Math.round((shaped[at]! + roughnessM(x, y, plan.noiseSeed)) * 10) / 10;
  });
  return shaped;
}

/** Knolls and hollows from house to hillside size: heights in metres at four wavelengths in metres. */
const ROUGHNESS = [
  { heightM: 2, lengthM: 240 },
  { heightM: 1.2, lengthM: 140 },
  { heightM: 0.8, lengthM: 90 },
  { heightM: 0.4, lengthM: 35 },
];

function roughnessM(x: number, y: number, seed: number): number {
  return ROUGHNESS.reduce(
    (sum, { heightM, lengthM }) => sum + heightM * valueNoise(x / lengthM, y / lengthM, seed),
    0,
  );
}

/** Bilinear height at a place of the frame; places outside take the edge. */
export function groundAt(heightsM: Float64Array, lattice: PostLattice, { x, y }: LocalPoint): number {
  const column = Math.min(Math.max((x - lattice.westX) / lattice.spacingM, 0), lattice.columns - 1.001);
  const row = Math.min(Math.max((lattice.northY - y) / lattice.spacingM, 0), lattice.rows - 1.001);
  const at = Math.floor(row) * lattice.columns + Math.floor(column);
  const east = column - Math.floor(column);
  const south = row - Math.floor(row);
  const north = heightsM[at]! * (1 - east) + heightsM[at + 1]! * east;
  const below = heightsM[at + lattice.columns]! * (1 - east) + heightsM[at + lattice.columns + 1]! * east;
  return north * (1 - south) + below * south;
}

/** The same ground with every second post: the slopes are smoothed over more than that, and it takes a quarter of the time. */
function every2nd(lattice: PostLattice): PostLattice {
  const half = (count: number): number => Math.ceil(count / 2);
  return {
    ...lattice,
    spacingM: 2 * lattice.spacingM,
    rows: half(lattice.rows),
    columns: half(lattice.columns),
  };
}

function finer(heightsM: Float64Array, coarse: PostLattice, lattice: PostLattice): Float64Array {
  const finerM = new Float64Array(lattice.rows * lattice.columns);
  forEachPost(lattice, (at, x, y) => {
    finerM[at] = groundAt(heightsM, coarse, { x, y });
  });
  return finerM;
}

function slopesBetween(plan: GroundPlan, lattice: PostLattice): Float64Array {
  const ridges = lineSamples(plan.ridges, SAMPLE_STEP_M, WANDER_SHARE);
  const streams = lineSamples(plan.streams, SAMPLE_STEP_M, 0);
  const heightsM = new Float64Array(lattice.rows * lattice.columns);
  const ridge = { heightM: 0, distanceM: 0 };
  const stream = { heightM: 0, distanceM: 0 };
  forEachPost(lattice, (at, x, y) => {
    weigh(ridges, x, y, ridge);
    weigh(streams, x, y, stream);
    const between = stream.distanceM + ridge.distanceM;
    const t = between === 0 ? 0.5 : stream.distanceM / between;
    heightsM[at] = stream.heightM + (ridge.heightM - stream.heightM) * t ** plan.hillShape;
  });
  return heightsM;
}

/** Mean height of the samples, the near ones weighing most, and the distance to the nearest. */
function weigh(
  samples: SampledLines,
  x: number,
  y: number,
  into: { heightM: number; distanceM: number },
): void {
  let weights = 0;
  let heights = 0;
  let nearest = Number.POSITIVE_INFINITY;
  for (let at = 0; at < samples.count; at++) {
    const dx = samples.x[at]! - x;
    const dy = samples.y[at]! - y;
    const squared = dx * dx + dy * dy;
    if (squared < nearest) nearest = squared;
    const soft = squared + SOFTENING_M * SOFTENING_M;
    const weight = 1 / (soft * soft);
    weights += weight;
    heights += weight * samples.z[at]!;
  }
  into.heightM = heights / weights;
  into.distanceM = Math.sqrt(nearest);
}

function withBenchesAndFlats(slopes: Float64Array, plan: GroundPlan, lattice: PostLattice): Float64Array {
  const shaped = slopes.slice();
  for (const { line, halfWidthM } of plan.benches) {
    forEachPost(lattice, (at, x, y) => {
      const { point, distanceM } = nearestOnLine(line, { x, y });
      if (distanceM > 3 * halfWidthM) return;
      const weight = BENCH_WEIGHT * Math.exp(-((distanceM / halfWidthM) ** 4));
      shaped[at] = shaped[at]! + weight * (groundAt(slopes, lattice, point) - shaped[at]!);
    });
  }
  for (const { at: centre, radiusM } of plan.flats) {
    const levelM = groundAt(slopes, lattice, centre);
    forEachPost(lattice, (at, x, y) => {
      const distanceM = Math.hypot(x - centre.x, y - centre.y);
      if (distanceM > 3 * radiusM) return;
      shaped[at] =
        shaped[at]! + FLAT_WEIGHT * Math.exp(-((distanceM / radiusM) ** 4)) * (levelM - shaped[at]!);
    });
  }
  return shaped;
}

function forEachPost(lattice: PostLattice, visit: (at: number, x: number, y: number) => void): void {
  for (let row = 0; row < lattice.rows; row++) {
    const y = lattice.northY - row * lattice.spacingM;
    for (let column = 0; column < lattice.columns; column++) {
      visit(row * lattice.columns + column, lattice.westX + column * lattice.spacingM, y);
    }
  }
}
