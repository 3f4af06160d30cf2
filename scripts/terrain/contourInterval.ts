export interface ContourIntervalRules {
  /** Intervals to choose from, rising, in metres or feet. */
  intervals: readonly number[];
  unit: "m" | "ft";
  /** Ground this steep must leave the least gap between lines on paper. */
  steepDeg: number;
  leastGapMm: number;
  /** With fewer lines than this the ground's own steepest slope decides instead. */
  fewLines: number;
}

/** The ground of one sheet. */
export interface SheetRelief {
  lowestM: number;
  highestM: number;
  /** Slope that only few cells exceed (such as 1 in 100); null when not known. */
  steepestDeg: number | null;
}

export interface ContourInterval {
  interval: number;
  unit: "m" | "ft";
  intervalM: number;
  /** Gap that the steep slope of the rules leaves between lines on paper. */
  gapMm: number;
}

const METRES_PER_FOOT = 0.3048; // international foot, exact

/**
 * The contour interval of a sheet: the least one whose lines keep their gap on steep ground. A sheet on which that leaves only few
 * lines takes a finer one, as far as its own steepest slope keeps the gap. The greatest interval when none fits.
 *
 * @param scale   15000 for 1:15 000
 * @example contourInterval({ lowestM: 300, highestM: 900, steepestDeg: null }, 15000, metreRules).interval // 10
 */
export function contourInterval(
  relief: SheetRelief,
  scale: number,
  rules: ContourIntervalRules,
): ContourInterval {
  if (!(scale > 0)) throw new RangeError(`scale must be over 0, found ${scale}`);
  if (rules.intervals.length === 0) throw new RangeError("intervals must hold at least one, found none");
  const metres = rules.unit === "ft" ? METRES_PER_FOOT : 1;
  const gapMm = (interval: number, slopeDeg: number): number =>
    ((interval * metres) / Math.tan((slopeDeg * Math.PI) / 180) / scale) * 1000;
  const leastFor = (slopeDeg: number): number =>
    rules.intervals.find((interval) => gapMm(interval, slopeDeg) >= rules.leastGapMm) ??
    rules.intervals.at(-1)!;
  let interval = leastFor(rules.steepDeg);
  const lines = (relief.highestM - relief.lowestM) / (interval * metres);
  if (lines < rules.fewLines && relief.steepestDeg !== null && relief.steepestDeg < rules.steepDeg) {
    interval = leastFor(Math.max(relief.steepestDeg, 0.1));
  }
  return { interval, unit: rules.unit, intervalM: interval * metres, gapMm: gapMm(interval, rules.steepDeg) };
}
