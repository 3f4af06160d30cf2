import { normalizeDeg, sectorWidthDeg } from "../geo/bearings.ts";
import type { Drift } from "./driftAt.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { chanceOfWidth } from "./projectedNormal.ts";

/** Where deer are expected to come from in a session, as seen from the site. */
export interface Approach {
  id: string;
  /** Sector clockwise from the first to the second bearing, true. */
  bearingsDeg: readonly [number, number];
  /** Nearest and farthest. */
  distanceM: readonly [number, number];
  /** How often deer come this way when they come, 0 to 1. */
  use: number;
  name?: string;
}

/** The circle cut at all edges of the approaches: where each piece begins, how wide it is, and what it weighs. */
export interface ReachPieces {
  fromDeg: Float64Array;
  widthDeg: Float64Array;
  /** Chance that scent which goes into the piece meets a deer's way, 0 to 1; pieces without any are left out. */
  weight: Float64Array;
}

/**
 * The approaches within scent range, each widened by half a plume on both sides, as pieces that do not overlap. Where
 * several approaches cover a piece, any of them counts.
 *
 * @throws {RangeError} a use out of 0 to 1, distances out of order
 */
export function reachPieces(approaches: readonly Approach[], constants: ModelConstants): ReachPieces {
  const margin = constants.sectorMarginDeg;
  const near = approaches
    .filter((approach) => checked(approach).distanceM[0] < constants.scentRangeM)
    .map(({ bearingsDeg: [from, to], use }) => {
      const widthDeg = Math.min(360, sectorWidthDeg(from, to) + 2 * margin);
      return { fromDeg: normalizeDeg(from - margin), widthDeg, use };
    });
  const edges = near.flatMap((s) => [s.fromDeg, normalizeDeg(s.fromDeg + s.widthDeg)]);
  const cuts = [...new Set(edges)].sort((a, b) => a - b);
  const pieces = cuts.map((fromDeg, i) => {
    const next = cuts[(i + 1) % cuts.length] as number;
    const widthDeg = cuts.length === 1 ? 360 : normalizeDeg(next - fromDeg);
    const middle = fromDeg + widthDeg / 2;
    const missed = near
      .filter((s) => s.widthDeg >= 360 || normalizeDeg(middle - s.fromDeg) <= s.widthDeg)
      .reduce((product, s) => product * (1 - s.use), 1);
    return { fromDeg, widthDeg, weight: 1 - missed };
  });
  const used = pieces.filter((p) => p.weight > 0);
  return {
    fromDeg: Float64Array.from(used, (p) => p.fromDeg),
    widthDeg: Float64Array.from(used, (p) => p.widthDeg),
    weight: Float64Array.from(used, (p) => p.weight),
  };
}

/** Chance that drift carries scent onto an approach, 0 to 1, weighted by how much each is used. */
export function reachShare(drift: Pick<Drift, "kappa" | "meanToDeg">, pieces: ReachPieces): number {
  let share = 0;
  for (let i = 0; i < pieces.weight.length; i++) {
    const turn = (pieces.fromDeg[i] as number) - drift.meanToDeg;
    const from = turn < 0 ? turn + 360 : turn;
    share += (pieces.weight[i] as number) * chanceOfWidth(drift.kappa, from, pieces.widthDeg[i] as number);
  }
  return Math.min(1, share);
}

function checked(approach: Approach): Approach {
  const { use, distanceM } = approach;
  if (!(use >= 0 && use <= 1)) throw new RangeError(`use must be 0 to 1, found ${use}`);
  if (!(distanceM[0] >= 0 && distanceM[1] >= distanceM[0])) {
    throw new RangeError(`distanceM must be least then most, found ${distanceM.join(" to ")}`);
  }
  return approach;
}
