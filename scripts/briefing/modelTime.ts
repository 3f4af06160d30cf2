/** Model times stand on 5 min steps in pack.json; an estimate has no better minute. */
const STEP_MS = 5 * 60_000;

export function toModelStep(at: Date): Date {
  return new Date(Math.round(at.getTime() / STEP_MS) * STEP_MS);
}

/** A range of model times, outward to whole steps. */
export function rangeToModelSteps(range: readonly [Date, Date]): [Date, Date] {
  return [
    new Date(Math.floor(range[0].getTime() / STEP_MS) * STEP_MS),
    new Date(Math.ceil(range[1].getTime() / STEP_MS) * STEP_MS),
  ];
}
