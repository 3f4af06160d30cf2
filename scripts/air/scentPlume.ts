/** How unsteady the air is, from A (strong sun, little wind) to F (clear night, little wind). */
export type StabilityClass = "A" | "B" | "C" | "D" | "E" | "F";

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

/**
 * Spread of a plume over open country at a distance down the wind, more than 0 m. The curves are fitted from 100 m to 10 km and
 * are extrapolated nearer. They do not know trees, hills or turning air.
 *
 * @source Briggs 1973 (in Gifford 1976), open country
 */
export function plumeSpread(stability: StabilityClass, downwindM: number): PlumeSpread {
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
  /** 1 = as strong as from the ground, under 1 = weaker; not negative */
  factor: number;
  /** nearer than the curves were fitted */
  extrapolated: boolean;
}

/**
 * Strength of scent at a point down the wind from a hunter at a height, as a factor of the same hunter's scent from the ground
 * (`groundHeightM`). Null for a point that is not down the wind. Information only: it betters no verdict, since gusts, trees and slope
 * air bring scent down sooner than a steady plume over flat ground does.
 *
 * @source Turner 1970, equation 3.1, with the spreads of Briggs 1973; wind and strength cancel out
 */
export function raisedScent(
  stability: StabilityClass,
  raisedHeightM: number,
  groundHeightM: number,
  at: PlumePoint,
): RaisedScent | null {
  if (!(at.downwindM > 0)) return null;
  const { upwardM } = plumeSpread(stability, at.downwindM);
  // logarithms, so that nothing becomes 0 / 0 close to the tree
  const strength = (sourceM: number): number => {
    const nearer = -((at.heightM - sourceM) ** 2) / (2 * upwardM * upwardM);
    const mirrored = -((at.heightM + sourceM) ** 2) / (2 * upwardM * upwardM);
    return nearer + Math.log1p(Math.exp(mirrored - nearer));
  };
  return {
    factor: Math.exp(strength(raisedHeightM) - strength(groundHeightM)),
    extrapolated: at.downwindM < FITTED_FROM_M,
  };
}
