/** A row-major raster smoothed by a Gaussian, `sigma` in posts, cut at three sigma; the edge repeats its last post. */
export function gaussianBlur(
  heightsM: Float64Array,
  { rows, columns }: { rows: number; columns: number },
  sigma: number,
): Float64Array {
  const kernel = gaussianKernel(sigma);
  const eastward = pass(heightsM, rows, columns, columns, 1, kernel);
  return pass(eastward, columns, rows, 1, columns, kernel);
}

function gaussianKernel(sigma: number): Float64Array {
  const reach = Math.ceil(3 * sigma);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = kernel.reduce((total, weight) => total + weight, 0);
  return kernel.map((weight) => weight / sum);
}

/** Smooths each of `lines` lines of `length` posts; a post's place is line x lineStride + index x postStride. */
function pass(
  from: Float64Array,
  lines: number,
  length: number,
  lineStride: number,
  postStride: number,
  kernel: Float64Array,
): Float64Array {
  const to = new Float64Array(from.length);
  const reach = (kernel.length - 1) / 2;
  for (let line = 0; line < lines; line++) {
    for (let index = 0; index < length; index++) {
      let sum = 0;
      for (let tap = -reach; tap <= reach; tap++) {
        const near = Math.min(length - 1, Math.max(0, index + tap));
        sum += kernel[tap + reach]! * from[line * lineStride + near * postStride]!;
      }
      to[line * lineStride + index * postStride] = sum;
    }
  }
  return to;
}
