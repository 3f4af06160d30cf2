import type { ModelConstants } from "./modelConstants.ts";
import type { SessionStep } from "./sessionSteps.ts";
import type { Verdict } from "./slopeSite.ts";

/** A stretch of steps, from the first up to but not with the end. */
export interface Stretch {
  first: number;
  end: number;
  minutes: number;
}

/** The longest stretch of a session without a lasting avoid, the earlier of two equal ones; null without any. */
export function sitStretch(
  steps: readonly SessionStep[],
  verdicts: readonly Verdict[],
  constants: ModelConstants,
): Stretch | null {
  let best: Stretch | null = null;
  let first = 0;
  const take = (end: number): void => {
    if (end <= first) return;
    const minutes = minutesOf(steps, first, end);
    if (!best || minutes > best.minutes + 1e-9) best = { first, end, minutes };
  };
  let i = 0;
  while (i < steps.length) {
    if (verdicts[i] !== "avoid") {
      i++;
      continue;
    }
    let end = i;
    while (end < steps.length && verdicts[end] === "avoid") end++;
    if (minutesOf(steps, i, end) >= constants.lastingAvoidMin - 1e-9) {
      take(i);
      first = end;
    }
    i = end;
  }
  take(steps.length);
  return best;
}

/** Share of the time of a stretch that has a verdict, 0 to 1; 0 for an empty stretch. */
export function verdictShare(
  steps: readonly SessionStep[],
  verdicts: readonly Verdict[],
  verdict: Verdict,
  stretch: Pick<Stretch, "first" | "end">,
): number {
  const all = minutesOf(steps, stretch.first, stretch.end);
  let own = 0;
  for (let i = stretch.first; i < stretch.end; i++) {
    if (verdicts[i] === verdict) own += (steps[i] as SessionStep).minutes;
  }
  return all > 0 ? own / all : 0;
}

function minutesOf(steps: readonly SessionStep[], first: number, end: number): number {
  let sum = 0;
  for (let i = first; i < end; i++) sum += (steps[i] as SessionStep).minutes;
  return sum;
}
