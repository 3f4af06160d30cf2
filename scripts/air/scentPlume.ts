import type { StabilityBand, StabilityClass } from "./stabilityClass.ts";

/** Standard deviations of a plume across the wind and upwards, metres. */
export interface PlumeSpread {
  acrossM: number;
  upwardM: number;
}

/** Where a plume is asked: seen from a source that stands in a steady wind. */
export interface PlumePoint {
  /** along the wind from the source, metres */
  downwindM: number;
  /** off the line of the wind, either side, metres */
  acrossM: number;
  /** over the ground, metres */
  heightM: number;
}

/** The curves were fitted from here on; nearer they are extrapolated. */
const FITTED_FROM_M = 100;

/** Under this wind there is no steady plume. */
const CALM_UNDER_MPS = 0.5;

/**
 * Spread of a plume over open country at a distance down the wind, more than 0 m. The curves are fitted from 100 m to 10 km and
 * are extrapolated nearer. Between two classes it is the mean of both. They do not know trees, hills or turning air.
 *
 * @source Briggs 1973 (in Gifford 1976), open country; the mean between classes: Pasquill 1961, from memory
 */
export function plumeSpread(stability: StabilityBand, downwindM: number): PlumeSpread {
  switch (stability) {
    case "A-B":
      return meanSpread(spreadOfClass("A", downwindM), spreadOfClass("B", downwindM));
    case "B-C":
      return meanSpread(spreadOfClass("B", downwindM), spreadOfClass("C", downwindM));
    case "C-D":
      return meanSpread(spreadOfClass("C", downwindM), spreadOfClass("D", downwindM));
    default:
      return spreadOfClass(stability, downwindM);
  }
}

const meanSpread = (one: PlumeSpread, other: PlumeSpread): PlumeSpread => ({
  acrossM: (one.acrossM + other.acrossM) / 2,
  upwardM: (one.upwardM + other.upwardM) / 2,
});

function spreadOfClass(stability: StabilityClass, downwindM: number): PlumeSpread {
  const x = downwindM;
  const widened = x / Math.sqrt(1 + 0.0001 * x);
  switch (stability) {
    case "A":
      return { acrossM: 0.22 * widened, upwardM: 0.2 * x };
    case "B":
      return { acrossM: 0.16 * widened, upwardM: 0.12 * x };
    case "C":
      return { acrossM: 0.11 * widened, upwardM: (0.08 * x) / Math.sqrt(1 + 0.0002 * x) };
    case "D":
      return { acrossM: 0.08 * widened, upwardM: (0.06 * x) / Math.sqrt(1 + 0.0015 * x) };
    case "E":
      return { acrossM: 0.06 * widened, upwardM: (0.03 * x) / (1 + 0.0003 * x) };
    case "F":
      return { acrossM: 0.04 * widened, upwardM: (0.016 * x) / (1 + 0.0003 * x) };
  }
}

/**
 * Concentration for a source of strength 1 a second, per cubic metre, in a steady wind over flat ground that gives everything back.
 *
 * @param windMps wind at the source, more than 0
 * @source Turner 1970, Workbook of Atmospheric Dispersion Estimates, AP-26, equation 3.1
 */
export function plumeConcentration(
  { acrossM, upwardM }: PlumeSpread,
  windMps: number,
  sourceHeightM: number,
  at: Pick<PlumePoint, "acrossM" | "heightM">,
): number {
  const bell = (off: number, spread: number): number => Math.exp(-(off * off) / (2 * spread * spread));
  const upward = bell(at.heightM - sourceHeightM, upwardM) + bell(at.heightM + sourceHeightM, upwardM);
  return (bell(at.acrossM, acrossM) * upward) / (2 * Math.PI * windMps * acrossM * upwardM);
}

/** How strong scent from a raised hunter is beside the same hunter's on the ground. */
export interface RaisedScent {
  /** 1 = as strong as from the ground, under 1 = weaker; not negative; null with `why` */
  factor: number | null;
  stability: StabilityBand;
  /** nearer than the curves were fitted */
  extrapolated: boolean;
  why: string | null;
}

/** The hunter, the air and the place of the nose. */
export interface RaisedScentQuestion {
  stability: StabilityBand;
  /** wind at 10 m, m/s */
  windMps: number;
  raisedHeightM: number;
  /** height scent leaves the same hunter who stands on the ground, metres */
  groundHeightM: number;
  at: PlumePoint;
}

/**
 * Strength of scent at a point down the wind from a hunter at a height, as a factor of the same hunter's scent from the ground.
 * Null with why in calm (under 0.5 m/s), for a wind or height that is unknown, and for a point that is not down the wind.
 * Information only: it betters no verdict, since gusts, trees and slope air bring scent down sooner than a steady plume over
 * flat ground does. It does not cover trees, terrain or turning air.
 *
 * @source Turner 1970, equation 3.1, with the spreads of Briggs 1973; wind and strength cancel out. The calm is a choice.
 */
export function raisedScent(question: RaisedScentQuestion): RaisedScent {
  const { stability, raisedHeightM, groundHeightM, at } = question;
  const extrapolated = at.downwindM < FITTED_FROM_M;
  const why = whyNoFactor(question);
  if (why !== null) return { factor: null, stability, extrapolated, why };
  const { upwardM } = plumeSpread(stability, at.downwindM);
  // logarithms, so that nothing becomes 0 / 0 close to the tree
  const strength = (sourceM: number): number => {
    const nearer = -((at.heightM - sourceM) ** 2) / (2 * upwardM * upwardM);
    const mirrored = -((at.heightM + sourceM) ** 2) / (2 * upwardM * upwardM);
    return nearer + Math.log1p(Math.exp(mirrored - nearer));
  };
  const factor = Math.exp(strength(raisedHeightM) - strength(groundHeightM));
  if (!Number.isFinite(factor)) return { factor: null, stability, extrapolated, why: "too near to tell" };
  return { factor, stability, extrapolated, why: null };
}

function whyNoFactor({ windMps, raisedHeightM, groundHeightM, at }: RaisedScentQuestion): string | null {
  if (!Number.isFinite(windMps)) return "the wind is not known";
  if (windMps < CALM_UNDER_MPS) return "calm: scent goes any direction";
  if (!(at.downwindM > 0)) return "not down the wind";
  if (!(raisedHeightM >= 0 && groundHeightM >= 0 && at.heightM >= 0)) return "a height is not known";
  return null;
}
