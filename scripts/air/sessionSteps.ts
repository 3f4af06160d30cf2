const MINUTE_MS = 60_000;

/** One step of a session. The first and the last may be shorter than the rest. */
export interface SessionStep {
  fromMs: number;
  toMs: number;
  minutes: number;
}

/** A session as it is judged: its steps lie on the grid of the computed air. */
export interface SessionWindow {
  session: string;
  from: Date;
  to: Date;
}

/**
 * The steps of a window on a grid through an anchor, in order; none for an empty window.
 *
 * @param anchorMs any instant on the grid
 */
export function sessionSteps(from: Date, to: Date, anchorMs: number, stepMin: number): SessionStep[] {
  const stepMs = stepMin * MINUTE_MS;
  const endMs = to.getTime();
  const steps: SessionStep[] = [];
  let atMs = from.getTime();
  while (atMs < endMs) {
    const nextMs = anchorMs + (Math.floor((atMs - anchorMs) / stepMs) + 1) * stepMs;
    const toMs = Math.min(nextMs, endMs);
    steps.push({ fromMs: atMs, toMs, minutes: (toMs - atMs) / MINUTE_MS });
    atMs = toMs;
  }
  return steps;
}
