/** A stretch of time, start before end. */
export interface TimeWindow {
  start: Date;
  end: Date;
}

const MINUTE_MS = 60_000;

/** The stretches that lie in both lists, in order of time. Windows that only touch share nothing. */
export function intersectWindows(a: readonly TimeWindow[], b: readonly TimeWindow[]): TimeWindow[] {
  const both: TimeWindow[] = [];
  for (const one of a) {
    for (const other of b) {
      const start = later(one.start, other.start);
      const end = earlier(one.end, other.end);
      if (start.getTime() < end.getTime()) both.push({ start, end });
    }
  }
  return mergeWindows(both);
}

/** What is left of a span when the closed stretches are taken out, in order of time. */
export function windowsOutside(closed: readonly TimeWindow[], span: TimeWindow): TimeWindow[] {
  let open: TimeWindow[] = [span];
  for (const stretch of closed) {
    open = open.flatMap((window) => [
      { start: window.start, end: earlier(window.end, stretch.start) },
      { start: later(window.start, stretch.end), end: window.end },
    ]);
    open = open.filter(isStretch);
  }
  return mergeWindows(open);
}

/** The same windows in order of time; those that overlap or touch become one. */
export function mergeWindows(windows: readonly TimeWindow[]): TimeWindow[] {
  const merged: TimeWindow[] = [];
  for (const window of [...windows].sort((a, b) => a.start.getTime() - b.start.getTime())) {
    const last = merged.at(-1);
    if (last && window.start.getTime() <= last.end.getTime()) last.end = later(last.end, window.end);
    else merged.push({ ...window });
  }
  return merged;
}

/** Whole minutes inside each window: start up, end down. A window without a whole minute is gone. */
export function wholeMinutesInside(windows: readonly TimeWindow[], stepMin = 1): TimeWindow[] {
  const stepMs = stepMin * MINUTE_MS;
  return windows
    .map(({ start, end }) => ({
      start: new Date(Math.ceil(start.getTime() / stepMs) * stepMs),
      end: new Date(Math.floor(end.getTime() / stepMs) * stepMs),
    }))
    .filter(isStretch);
}

export function later(a: Date, b: Date): Date {
  return b.getTime() > a.getTime() ? b : a;
}

export function earlier(a: Date, b: Date): Date {
  return b.getTime() < a.getTime() ? b : a;
}

export function isStretch(window: TimeWindow): boolean {
  return window.start.getTime() < window.end.getTime();
}
