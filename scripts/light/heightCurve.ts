/** A point of a body's way over the sky: time as milliseconds since 1970 UTC, height in degrees. */
interface Knot {
  ms: number;
  heightDeg: number;
}

/** A body's height between two instants, cut where it turns: between two neighbouring knots it only climbs or only sinks. */
export interface HeightCurve {
  heightDegAt: (ms: number) => number;
  knots: Knot[];
  /** The knots where it turns from climbing to sinking or back. */
  turns: Knot[];
}

/** A passage through a height, upwards or downwards. */
export interface Crossing {
  at: Date;
  climbs: boolean;
}

const STEP_MS = 20 * 60_000;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Follows a body's height from one instant to another in steps of 20 minutes and finds each turn to the second. Sun
 * and moon turn hours apart, so that no turn slips between two steps and a body that only just reaches a height is seen.
 */
export function heightCurve(heightDegAt: (ms: number) => number, fromMs: number, toMs: number): HeightCurve {
  const knots: Knot[] = [];
  const turns: Knot[] = [];
  const knotAt = (ms: number): Knot => ({ ms, heightDeg: heightDegAt(ms) });
  let before = knotAt(fromMs - STEP_MS);
  let here = knotAt(fromMs);
  for (let ms = fromMs; before.ms < toMs; ms += STEP_MS) {
    const after = knotAt(ms + STEP_MS);
    const isHighest = here.heightDeg >= before.heightDeg && here.heightDeg > after.heightDeg;
    const isLowest = here.heightDeg <= before.heightDeg && here.heightDeg < after.heightDeg;
    if (isHighest || isLowest) {
      const turn = knotAt(turnBetween(heightDegAt, before.ms, after.ms, isHighest ? 1 : -1));
      turns.push(turn);
      knots.push(...[turn, here].sort((a, b) => a.ms - b.ms));
    } else {
      knots.push(here);
    }
    before = here;
    here = after;
  }
  return { heightDegAt, knots: knots.sort((a, b) => a.ms - b.ms), turns };
}

/** Every passage through a height on the curve, in order of time, to the millisecond. */
export function crossings(curve: HeightCurve, levelDeg: number): Crossing[] {
  const found: Crossing[] = [];
  for (let i = 1; i < curve.knots.length; i++) {
    const start = curve.knots[i - 1]!;
    const end = curve.knots[i]!;
    const climbs = end.heightDeg >= levelDeg;
    if (start.heightDeg >= levelDeg === climbs) continue;
    found.push({ at: new Date(crossingBetween(curve.heightDegAt, start.ms, end.ms, levelDeg)), climbs });
  }
  return found;
}

/** The crossing nearest to an instant, null when there is none. */
export function nearestCrossing(found: Crossing[], ms: number): Date | null {
  const distanceMs = (crossing: Crossing): number => Math.abs(crossing.at.getTime() - ms);
  return found.toSorted((a, b) => distanceMs(a) - distanceMs(b))[0]?.at ?? null;
}

function crossingBetween(
  heightDegAt: (ms: number) => number,
  startMs: number,
  endMs: number,
  levelDeg: number,
): number {
  const startsAbove = heightDegAt(startMs) >= levelDeg;
  let early = startMs;
  let late = endMs;
  while (late - early > 1) {
    const middle = Math.floor((early + late) / 2);
    if (heightDegAt(middle) >= levelDeg === startsAbove) early = middle;
    else late = middle;
  }
  return late; // the first whole millisecond on the new side, whatever stretch the curve was made for
}

/** Golden-section search for the one highest (sign 1) or lowest (sign -1) point between two instants. */
function turnBetween(
  heightDegAt: (ms: number) => number,
  startMs: number,
  endMs: number,
  sign: 1 | -1,
): number {
  let early = startMs;
  let late = endMs;
  while (late - early > 1000) {
    const left = late - GOLDEN * (late - early);
    const right = early + GOLDEN * (late - early);
    if (sign * heightDegAt(left) > sign * heightDegAt(right)) late = right;
    else early = left;
  }
  return Math.round((early + late) / 2);
}
