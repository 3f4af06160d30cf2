/** A run of closed whole degrees, clockwise, both ends closed; `from` may be over `to` across north. */
export interface BearingRun {
  from: number;
  to: number;
}

/** Fewer open degrees than this between two closed ones are closed too: nobody can keep to so narrow a gap. */
export const NARROWEST_OPEN_DEG = 3;

/**
 * The runs of closed degrees, by their first degree from north on. A full circle is two halves, 0 to 180 and 180 to 0, so that it can
 * never read as nothing.
 *
 * @param isClosed   for each whole degree 0 to 359
 */
export function closedRuns(isClosed: (deg: number) => boolean): BearingRun[] {
  const closed = Array.from({ length: 360 }, (_, deg) => isClosed(deg));
  const first = closed.indexOf(true);
  if (first === -1) return [];
  const runs: BearingRun[] = [];
  for (let step = 0; step < 360; step++) {
    const deg = (first + step) % 360;
    if (!closed[deg]) continue;
    const last = runs.at(-1);
    if (last !== undefined && step - stepOf(last.to) <= NARROWEST_OPEN_DEG) last.to = deg;
    else runs.push({ from: deg, to: deg });
  }
  // Across the place where the count began.
  const [head, tail] = [runs[0]!, runs.at(-1)!];
  if (360 - stepOf(tail.to) <= NARROWEST_OPEN_DEG) {
    if (runs.length === 1) return WHOLE_CIRCLE.map((run) => ({ ...run }));
    head.from = tail.from;
    runs.pop();
  }
  return runs.sort((a, b) => a.from - b.from);

  function stepOf(deg: number): number {
    return (deg - first + 360) % 360;
  }
}

const WHOLE_CIRCLE: readonly BearingRun[] = [
  { from: 0, to: 180 },
  { from: 180, to: 0 },
];

/** The whole degrees of a run, clockwise. */
export function degreesOf({ from, to }: BearingRun): number[] {
  return Array.from({ length: ((to - from + 360) % 360) + 1 }, (_, at) => (from + at) % 360);
}
