/** A point of a body's way over the sky: time as whole milliseconds since 1970 UTC, height in degrees. */
export interface Knot {
  ms: number;
  heightDeg: number;
}

const SECANT_PROBES = 12; // an ordinary passage takes six
const TURN_MS = 500;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The first whole millisecond on the far side of a height that a curve passes once between two knots. Secants, and plain
 * halving where they do not close in.
 */
export function crossingBetween(
  heightDegAt: (ms: number) => number,
  start: Knot,
  end: Knot,
  levelDeg: number,
): number {
  const startsAbove = start.heightDeg >= levelDeg;
  let early = start.ms;
  let late = end.ms;
  let older = start;
  let newer = end;
  for (let probe = 0; late - early > 1; probe++) {
    const share = (levelDeg - older.heightDeg) / (newer.heightDeg - older.heightDeg);
    const guess = older.ms + share * (newer.ms - older.ms);
    const isUsable = probe < SECANT_PROBES && guess > early && guess < late;
    const ms = isUsable ? Math.max(Math.floor(guess), early + 1) : Math.floor((early + late) / 2);
    older = newer;
    newer = { ms, heightDeg: heightDegAt(ms) };
    if (newer.heightDeg >= levelDeg === startsAbove) early = ms;
    else late = ms;
  }
  return late;
}

/**
 * The one highest (sign 1) or lowest (sign -1) point of a curve, to half a second: the peaks of parabolas through three
 * points, and the golden section where they do not close in.
 *
 * @param here   as high as `before` and `after` or higher (as low or lower)
 */
export function turnBetween(
  heightDegAt: (ms: number) => number,
  before: Knot,
  here: Knot,
  after: Knot,
  sign: 1 | -1,
): Knot {
  let [early, top, late] = [before, here, after];
  for (let probe = 0; late.ms - top.ms > TURN_MS || top.ms - early.ms > TURN_MS; probe++) {
    const ms = probe < SECANT_PROBES ? parabolaProbeMs(early, top, late) : goldenProbeMs(early, top, late);
    const knot = { ms, heightDeg: heightDegAt(ms) };
    const isHigher = sign * knot.heightDeg > sign * top.heightDeg;
    if (ms < top.ms) [early, top, late] = isHigher ? [early, knot, top] : [knot, top, late];
    else [early, top, late] = isHigher ? [top, knot, late] : [early, top, knot];
  }
  return top;
}

/** Peak of the parabola, at least `TURN_MS` from the best point so far, so that the sides close in too. */
function parabolaProbeMs(early: Knot, top: Knot, late: Knot): number {
  const back = top.ms - early.ms;
  const ahead = late.ms - top.ms;
  const riseBack = (top.heightDeg - early.heightDeg) * ahead;
  const riseAhead = (top.heightDeg - late.heightDeg) * back;
  const offset = Math.round((riseBack * ahead - riseAhead * back) / (2 * (riseBack + riseAhead)));
  if (Number.isNaN(offset)) return goldenProbeMs(early, top, late);
  const leastAhead = back > ahead ? -TURN_MS : TURN_MS;
  return top.ms + (Math.abs(offset) < TURN_MS ? leastAhead : offset);
}

/** A point in the wider of the two sides. */
function goldenProbeMs(early: Knot, top: Knot, late: Knot): number {
  const back = top.ms - early.ms;
  const ahead = late.ms - top.ms;
  return top.ms + Math.round((1 - GOLDEN) * (back > ahead ? -back : ahead));
}
