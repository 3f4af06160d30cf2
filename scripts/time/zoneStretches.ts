/** A stretch of time in which a zone keeps one offset. */
export interface ZoneStretch {
  fromMs: number;
  toMs: number;
  /** Whether the clock was changed at `fromMs`; otherwise the stretch is merely cut there. */
  startsAtChange: boolean;
  /** Local time minus UTC. */
  offsetMs: number;
  /** Such as "+13:00"; with seconds where the offset has them. */
  utcOffset: string;
  /** The same to the nearest minute, as ISO 8601 has it. */
  isoOffset: string;
}

/** Every stretch of a zone between two instants, in order and without a gap. */
export type StretchesBetween = (timezone: string, fromMs: number, toMs: number) => ZoneStretch[];

const WINDOW_MS = 366 * 86_400_000;
const LATEST_MS = 8.64e15;
const WINDOWS_MAX = 200;

/**
 * Looks up the stretch that an instant lies in. What was read once is kept, a year at a time and 200 zone years at most; the
 * rules of a zone do not change while a program runs, so that the answer is the same with and without.
 */
export function zoneStretches(read: StretchesBetween): (ms: number, timezone: string) => ZoneStretch {
  const years = new Map<string, ZoneStretch[]>();
  let last: { timezone: string; stretch: ZoneStretch } | null = null;
  return (ms, timezone) => {
    if (last !== null && last.timezone === timezone && isInside(last.stretch, ms)) return last.stretch;
    const window = Math.floor(ms / WINDOW_MS);
    const key = `${window} ${timezone}`;
    let stretches = years.get(key);
    if (stretches === undefined) {
      const fromMs = Math.max(window * WINDOW_MS, -LATEST_MS);
      stretches = read(timezone, fromMs, Math.min((window + 1) * WINDOW_MS, LATEST_MS + 1));
      if (years.size >= WINDOWS_MAX) years.clear();
      years.set(key, stretches);
    }
    const stretch = stretches.find((one) => isInside(one, ms));
    if (stretch === undefined) throw new RangeError(`the instant must be a valid one, found ${ms} ms`);
    last = { timezone, stretch };
    return stretch;
  };
}

function isInside({ fromMs, toMs }: ZoneStretch, ms: number): boolean {
  return ms >= fromMs && ms < toMs;
}
