import { crossingBetween, type Knot, turnBetween } from "./curveSearch.ts";

/** A stretch of time, milliseconds since 1970 UTC. */
export interface MsSpan {
  fromMs: number;
  toMs: number;
}

/** A body's height between two instants, looked at once an hour; between two turns it only climbs or only sinks. */
export interface HeightCurve extends MsSpan {
  heightDegAt: (ms: number) => number;
  /** Hourly, from an hour before the stretch to at least an hour after it. */
  knots: readonly Knot[];
  bends: readonly Bend[];
  /** Where it turns from climbing to sinking or back, to half a second. */
  readonly turns: readonly Knot[];
}

/** The two hours in which a turn lies, the outermost look in their middle. */
export interface Bend {
  before: Knot;
  here: Knot;
  after: Knot;
  isTop: boolean;
  /** The turn itself, searched for when it is first asked for. */
  turn: () => Knot;
}

/** A passage through a height, upwards or downwards. */
export interface Crossing {
  at: Date;
  climbs: boolean;
}

const STEP_MS = 3_600_000;

/**
 * Follows a body's height from one instant to another, hour by hour, and finds each turn. Sun and moon turn many hours
 * apart, so that no turn slips between two hours and a body that only just reaches a height is seen.
 */
export function heightCurve(heightDegAt: (ms: number) => number, fromMs: number, toMs: number): HeightCurve {
  const knots: Knot[] = [];
  const bends: Bend[] = [];
  for (let ms = Math.floor(fromMs) - STEP_MS; ms < toMs + 2 * STEP_MS; ms += STEP_MS) {
    knots.push({ ms, heightDeg: heightDegAt(ms) });
  }
  for (let i = 1; i < knots.length - 1; i++) {
    const bend = bendAt(heightDegAt, knots[i - 1]!, knots[i]!, knots[i + 1]!);
    if (bend !== null) bends.push(bend);
  }
  return {
    fromMs,
    toMs,
    heightDegAt,
    knots,
    bends,
    get turns() {
      return bends.map(({ turn }) => turn());
    },
  };
}

/**
 * Every passage through a height in the stretch of the curve or in a shorter one, both ends included, in order of time, to
 * the millisecond.
 */
export function crossings(
  curve: HeightCurve,
  levelDeg: number,
  { fromMs, toMs }: MsSpan = curve,
): Crossing[] {
  const { heightDegAt, bends } = curve;
  const turns = bends.filter((bend) => hasTurnAcross(bend, levelDeg)).map(({ turn }) => turn());
  const knots = turns.length === 0 ? curve.knots : [...curve.knots, ...turns].sort((a, b) => a.ms - b.ms);
  const found: Crossing[] = [];
  for (let i = 1; i < knots.length; i++) {
    const start = knots[i - 1]!;
    const end = knots[i]!;
    const climbs = end.heightDeg >= levelDeg;
    if (start.heightDeg >= levelDeg === climbs || end.ms < fromMs || start.ms > toMs) continue;
    const ms = crossingBetween(heightDegAt, start, end, levelDeg);
    if (ms >= fromMs && ms <= toMs) found.push({ at: new Date(ms), climbs });
  }
  return found;
}

/** The crossing nearest to an instant, null when there is none. */
export function nearestCrossing(found: Crossing[], ms: number): Date | null {
  const distanceMs = (crossing: Crossing): number => Math.abs(crossing.at.getTime() - ms);
  return found.toSorted((a, b) => distanceMs(a) - distanceMs(b))[0]?.at ?? null;
}

/** The last turn up to an instant and the first after it, those that the curve has. */
export function bendsAround({ bends }: HeightCurve, ms: number): Bend[] {
  const isBy = ({ before, here, after, turn }: Bend): boolean =>
    (ms >= before.ms && ms <= after.ms ? turn().ms : here.ms) <= ms;
  const first = bends.findIndex((bend) => !isBy(bend));
  return first < 0 ? bends.slice(-1) : bends.slice(Math.max(0, first - 1), first + 1);
}

/** Whether the body turns within `marginDeg` of a height. */
export function turnsNear(bend: Bend, levelDeg: number, marginDeg: number): boolean {
  const outDeg = outFromHereDeg(bend, levelDeg);
  if (outDeg < -marginDeg || outDeg > outMostDeg(bend) + marginDeg) return false;
  return Math.abs(bend.turn().heightDeg - levelDeg) <= marginDeg;
}

/** Whether the turn may lie across a height that the look in the middle does not pass. */
function hasTurnAcross(bend: Bend, levelDeg: number): boolean {
  const outDeg = outFromHereDeg(bend, levelDeg);
  return outDeg >= 0 && outDeg <= outMostDeg(bend);
}

/** How far a height lies beyond the look in the middle, on the side to which the body turns. */
function outFromHereDeg({ here, isTop }: Bend, levelDeg: number): number {
  return isTop ? levelDeg - here.heightDeg : here.heightDeg - levelDeg;
}

/**
 * The farthest that the turn can lie beyond the look in the middle: it is within half an hour of it, and in that time the body
 * does not go as far as in the whole hour on the other side.
 */
function outMostDeg({ before, here, after }: Bend): number {
  return Math.max(Math.abs(here.heightDeg - before.heightDeg), Math.abs(here.heightDeg - after.heightDeg));
}

function bendAt(heightDegAt: (ms: number) => number, before: Knot, here: Knot, after: Knot): Bend | null {
  const isTop = here.heightDeg >= before.heightDeg && here.heightDeg > after.heightDeg;
  const isBottom = here.heightDeg <= before.heightDeg && here.heightDeg < after.heightDeg;
  if (!isTop && !isBottom) return null;
  let found: Knot | null = null;
  return {
    before,
    here,
    after,
    isTop,
    turn() {
      found ??= turnBetween(heightDegAt, before, here, after, isTop ? 1 : -1);
      return found;
    },
  };
}
