interface Raster {
  rows: number;
  columns: number;
  heightsM: Float32Array | Float64Array;
}

/**
 * Heights smoothed by a Gaussian bell, cut at three standard deviations. Voids stay void and lend no weight to others.
 *
 * @param sigmaCells   standard deviation in cells; 0 leaves the heights as they are
 * @returns row-major metres
 */
export function smoothHeights(raster: Raster, sigmaCells: number): Float64Array {
  if (!(sigmaCells > 0)) return Float64Array.from(raster.heightsM);
  const half = Math.max(1, Math.ceil(3 * sigmaCells));
  const weights = Float64Array.from({ length: 2 * half + 1 }, (_, at) =>
    Math.exp(-(((at - half) / sigmaCells) ** 2) / 2),
  );
  const sums = new Float64Array(raster.heightsM.length);
  const known = new Float64Array(raster.heightsM.length);
  for (let at = 0; at < sums.length; at++) {
    const heightM = raster.heightsM[at]!;
    if (Number.isNaN(heightM)) continue;
    sums[at] = heightM;
    known[at] = 1;
  }
  const { rows, columns } = raster;
  const blur = (values: Float64Array): Float64Array =>
    blurAlong(blurAlong(values, rows, columns, columns, 1, weights), columns, rows, 1, columns, weights);
  const heights = blur(sums);
  const shares = blur(known);
  for (let at = 0; at < heights.length; at++) {
    heights[at] = Number.isNaN(raster.heightsM[at]!) ? Number.NaN : heights[at]! / shares[at]!;
  }
  return heights;
}

/** Weighted sums along lines of cells; what lies beyond the ends counts as nothing. */
function blurAlong(
  values: Float64Array,
  lines: number,
  length: number,
  lineStride: number,
  stride: number,
  weights: Float64Array,
): Float64Array {
  const half = (weights.length - 1) / 2;
  const blurred = new Float64Array(values.length);
  for (let line = 0; line < lines; line++) {
    for (let cell = 0; cell < length; cell++) {
      const from = Math.max(0, cell - half);
      const to = Math.min(length - 1, cell + half);
      let sum = 0;
      for (let other = from; other <= to; other++) {
        sum += values[line * lineStride + other * stride]! * weights[other - cell + half]!;
      }
      blurred[line * lineStride + cell * stride] = sum;
    }
  }
  return blurred;
}
