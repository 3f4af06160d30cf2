import type { ControlPoint, LocalPoint } from "./localPoints.ts";
import { valueNoise } from "./valueNoise.ts";

/** Points along many lines, in columns for speed. */
export interface SampledLines {
  count: number;
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

/**
 * Points every `stepM` along each leg of each line, its ends included; heights run evenly between control points. Between
 * its ends a leg wanders sideways by up to `wanderShare` of its length, so that no crest is ruled with a ruler.
 */
export function lineSamples(lines: ControlPoint[][], stepM: number, wanderShare: number): SampledLines {
  const samples = lines.flatMap((line, index) => alongLine(line, stepM, wanderShare, index));
  return {
    count: samples.length,
    x: Float64Array.from(samples, ({ x }) => x),
    y: Float64Array.from(samples, ({ y }) => y),
    z: Float64Array.from(samples, ({ z }) => z),
  };
}

function alongLine(line: ControlPoint[], stepM: number, wanderShare: number, seed: number): ControlPoint[] {
  const samples: ControlPoint[] = line.slice(0, 1);
  for (let leg = 1; leg < line.length; leg++) {
    const from = line[leg - 1]!;
    const to = line[leg]!;
    const steps = Math.max(1, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / stepM));
    for (let step = 1; step <= steps; step++) {
      const share = step / steps;
      const sideways = wanderShare * Math.sin(Math.PI * share) * valueNoise(4 * share, leg, seed);
      samples.push({
        x: from.x + (to.x - from.x) * share + (to.y - from.y) * sideways,
        y: from.y + (to.y - from.y) * share - (to.x - from.x) * sideways,
        z: from.z + (to.z - from.z) * share,
      });
    }
  }
  return samples;
}

/** The point of a line nearest to a place, and how far it is. */
export function nearestOnLine(
  line: LocalPoint[],
  place: LocalPoint,
): { point: LocalPoint; distanceM: number } {
  let best = { point: line[0]!, distanceM: Number.POSITIVE_INFINITY };
  for (let leg = 1; leg < line.length; leg++) {
    const from = line[leg - 1]!;
    const east = line[leg]!.x - from.x;
    const north = line[leg]!.y - from.y;
    const along = ((place.x - from.x) * east + (place.y - from.y) * north) / (east * east + north * north);
    const share = Math.min(1, Math.max(0, along));
    const point = { x: from.x + east * share, y: from.y + north * share };
    const distanceM = Math.hypot(place.x - point.x, place.y - point.y);
    if (distanceM < best.distanceM) best = { point, distanceM };
  }
  return best;
}
