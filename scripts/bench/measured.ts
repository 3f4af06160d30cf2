/** One measured figure and what it is to be at most. */
export interface Measured {
  what: string;
  figure: number;
  unit: string;
  /** null: told for comparison, held to nothing */
  goal: number | null;
  /** How it was measured, for the line below. */
  how: string;
}

/** The lines that tell a figure: what, figure, goal, met or not; then how. */
export function measuredLines({ what, figure, unit, goal, how }: Measured): string[] {
  if (goal === null) return [`${what}: ${shown(figure)} ${unit}`, `  ${how}`];
  const verdict = figure <= goal ? "met" : "NOT MET";
  return [`${what}: ${shown(figure)} ${unit}, goal at most ${goal} ${unit}: ${verdict}`, `  ${how}`];
}

/** The middle value, or the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const [below, above] = [
    sorted[Math.floor((sorted.length - 1) / 2)],
    sorted[Math.ceil((sorted.length - 1) / 2)],
  ];
  if (below === undefined || above === undefined) throw new RangeError("median needs a value, found none");
  return (below + above) / 2;
}

/** Three digits, so that no figure is rounded to its goal. */
export function shown(figure: number): string {
  return figure >= 100 ? figure.toFixed(0) : figure.toPrecision(3);
}
