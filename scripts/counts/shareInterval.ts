/** What a count of some among many says of the true share, 0 to 1. */
export interface ShareInterval {
  share: number;
  low: number;
  high: number;
}

/** Half-width of the middle 95 % of a normal distribution, in standard deviations. */
const Z = 1.959964;

/**
 * Share of `some` among `all`, with the interval that holds the true share 19 times in 20. Null when nothing was counted. It takes each
 * count as independent of the others: hours of one wind or visits of one animal that follow each other say less than it tells.
 *
 * @throws {RangeError} counts that are no whole numbers from 0 up, or `some` over `all`
 * @source Wilson 1927, Journal of the American Statistical Association 22, 209
 */
export function shareInterval(some: number, all: number): ShareInterval | null {
  if (!Number.isInteger(some) || !Number.isInteger(all) || some < 0 || some > all) {
    throw new RangeError(
      `counts must be whole numbers, the first not over the second, found ${some} of ${all}`,
    );
  }
  if (all === 0) return null;
  const share = some / all;
  const spread = (Z * Z) / all;
  const middle = (share + spread / 2) / (1 + spread);
  const half = (Z / (1 + spread)) * Math.sqrt((share * (1 - share)) / all + spread / (4 * all));
  return {
    share,
    low: some === 0 ? 0 : Math.max(0, middle - half),
    high: some === all ? 1 : Math.min(1, middle + half),
  };
}
