import { contourSteps, type HeightRaster } from "./contourSteps.ts";
import { traceLevel } from "./traceLevel.ts";

/** One line of equal height. */
export interface ContourLine {
  /** Height in whole intervals over sea level. */
  step: number;
  heightM: number;
  /** Drawn thicker and labelled. */
  isIndex: boolean;
  /** Closed on itself: the first point is repeated at the end. */
  isRing: boolean;
  /** Easting, northing, easting, northing ... Walking along it, higher ground lies on the left. */
  pointsM: Float64Array;
}

export interface ContourOptions {
  /** Height between lines; whole multiples of it over sea level are drawn. */
  intervalM: number;
  /** Lines whose step is a multiple of this are index lines. */
  indexEvery: number;
}

/**
 * Contour lines of a grid, from low to high. Marching squares between cell centres, with the ground linear along the row and
 * column lines; where two high corners face two low ones, the saddle of the bilinear surface decides which pair is joined. A square
 * with a void corner has no line: a contour ends at its edge, without a ring around the void. Ground exactly at a height counts
 * as above it.
 *
 * @throws {RangeError} when the interval is not over 0 or leaves more than 65 534 contours, or `indexEvery` is no whole number over 0
 * @source marching squares: W. E. Lorensen and H. E. Cline, "Marching cubes", Computer Graphics 21 (1987), in two dimensions;
 *   saddles: G. M. Nielson and B. Hamann, "The asymptotic decider", Visualization 1991
 */
export function contourLines(
  grid: HeightRaster & { westM: number; northM: number; cellSizeM: number },
  options: ContourOptions,
): ContourLine[] {
  const { intervalM, indexEvery } = options;
  if (!(intervalM > 0)) throw new RangeError(`intervalM must be over 0, found ${intervalM}`);
  if (!(Number.isInteger(indexEvery) && indexEvery > 0)) {
    throw new RangeError(`indexEvery must be a whole number over 0, found ${indexEvery}`);
  }
  const steps = contourSteps(grid, intervalM);
  const visited = new Uint16Array(2 * steps.counts.length);
  const lines: ContourLine[] = [];
  for (let contour = 0; contour < steps.contours; contour++) {
    const step = steps.firstStep + contour;
    const heightM = step * intervalM;
    traceLevel({ raster: grid, steps, contour, heightM, visited }, (pointsM, isRing) => {
      lines.push({ step, heightM, isIndex: step % indexEvery === 0, isRing, pointsM });
    });
  }
  return lines;
}
