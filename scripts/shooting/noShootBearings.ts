import { isInSector } from "../geo/bearings.ts";
import { type BearingCover, closeLines, openCover } from "./bearingCover.ts";
import { type BearingRun, closedRuns, degreesOf } from "./bearingRuns.ts";
import type { LineOfFire } from "./linesOfFire.ts";
import { isInside, type PlanePoint } from "./seatPlane.ts";
import type { ShootingRules } from "./shootingRules.ts";

/** Something that a bullet must not reach: people, or what stands for them. */
export interface ProtectedThing {
  id: string;
  /** What it is, in words; spans of one reason are merged. */
  reason: string;
  lines: PlanePoint[][];
  /** Whether the lines are rings around ground that is protected itself. */
  isArea: boolean;
  /** Parts farther than this close a degree only while the ground behind is not known to stop a bullet there. Null: all close. */
  farM: number | null;
}

/** Bearings not to shoot on, for one reason. */
export interface NoShootSpan {
  /** True, clockwise; a full circle is two spans. */
  fromDeg: number;
  toDeg: number;
  /** Nearest of what is protected in the span; null for "no backstop". */
  distanceM: number | null;
  /** The nearest of them; null for "no backstop". */
  thingId: string | null;
  reason: string;
}

export interface NoShootBearings {
  /** By reason apart, by their first bearing. */
  spans: NoShootSpan[];
  /** All reasons together, for drawing. */
  merged: { fromDeg: number; toDeg: number }[];
  /** Far things on bearings that stay open because earth stands behind and was seen in daylight: to be told as a caution. */
  leftToBackstop: NoShootSpan[];
}

export const NO_BACKSTOP = "no backstop";

/**
 * The bearings that are closed from a seat: `closedHalfDeg` on both sides of every protected thing within the danger distance, and the
 * degrees of lanes without earth close behind. Ends are rounded outward to whole degrees.
 *
 * @param lines   lines of fire of all lanes; null when the ground is not known: then no degree is known to have a backstop
 */
export function noShootBearings(
  things: readonly ProtectedThing[],
  lines: readonly LineOfFire[] | null,
  dangerM: number,
  rules: ShootingRules,
): NoShootBearings {
  const isStopped = backstopSeen(lines ?? []);
  const closed = new Map<string, ReasonCover>();
  const left = new Map<string, ReasonCover>();
  for (const thing of things) {
    const near = openCover();
    const far = openCover();
    const splitM = thing.farM === null ? dangerM : Math.min(thing.farM, dangerM);
    if (thing.isArea && isInside(thing.lines)) near.fill(0);
    closeLines(near, thing.lines, { fromM: -1, toM: splitM }, rules);
    closeLines(far, thing.lines, { fromM: splitM, toM: dangerM }, rules);
    for (let deg = 0; deg < 360; deg++) {
      add(closed, thing, deg, near[deg]!);
      add(isStopped(deg) && near[deg] === Number.POSITIVE_INFINITY ? left : closed, thing, deg, far[deg]!);
    }
  }
  const spans = [...closed].flatMap(([reason, cover]) => spansOf(reason, cover));
  const bare = bareRuns(lines ?? []);
  const all = [...spans, ...bare].sort((a, b) => a.fromDeg - b.fromDeg || (a.reason < b.reason ? -1 : 1));
  const merged = mergedSpans(all);
  const isClosed = (deg: number) => merged.some(({ fromDeg, toDeg }) => isInSector(deg, fromDeg, toDeg));
  return {
    spans: all,
    merged,
    leftToBackstop: [...left].flatMap(([reason, cover]) =>
      spansOf(reason, {
        ...cover,
        distanceM: cover.distanceM.map((m, deg) => (isClosed(deg) ? Number.POSITIVE_INFINITY : m)),
      }),
    ),
  };
}

/** The bearings that one thing closes by itself, whatever stands behind. */
export function closedBy(
  thing: Pick<ProtectedThing, "lines" | "isArea">,
  dangerM: number,
  rules: ShootingRules,
): { fromDeg: number; toDeg: number; distanceM: number }[] {
  const cover = openCover();
  if (thing.isArea && isInside(thing.lines)) cover.fill(0);
  closeLines(cover, thing.lines, { fromM: -1, toM: dangerM }, rules);
  return closedRuns((deg) => cover[deg] !== Number.POSITIVE_INFINITY).map((run) => ({
    fromDeg: run.from,
    toDeg: run.to,
    distanceM: Math.min(...degreesOf(run).map((deg) => cover[deg]!)),
  }));
}

interface ReasonCover {
  distanceM: BearingCover;
  thingIds: string[];
}

function add(
  covers: Map<string, ReasonCover>,
  { id, reason }: ProtectedThing,
  deg: number,
  distanceM: number,
): void {
  if (distanceM === Number.POSITIVE_INFINITY) return;
  const cover = covers.get(reason) ?? { distanceM: openCover(), thingIds: [] };
  covers.set(reason, cover);
  if (distanceM >= cover.distanceM[deg]!) return;
  cover.distanceM[deg] = distanceM;
  cover.thingIds[deg] = id;
}

function spansOf(reason: string, { distanceM, thingIds }: ReasonCover): NoShootSpan[] {
  return closedRuns((deg) => distanceM[deg] !== Number.POSITIVE_INFINITY).map((run) => {
    const nearest = degreesOf(run).reduce((best, deg) => (distanceM[deg]! < distanceM[best]! ? deg : best));
    return {
      fromDeg: run.from,
      toDeg: run.to,
      distanceM: distanceM[nearest]!,
      thingId: thingIds[nearest] ?? null,
      reason,
    };
  });
}

/** Whether a degree lies in lanes alone that all have earth close behind there and were seen in daylight. */
function backstopSeen(lines: readonly LineOfFire[]): (deg: number) => boolean {
  const good = new Set<number>();
  const bad = new Set<number>();
  for (const { bearingDeg, worst, isSeenOnGround } of lines) {
    (worst.ground === "earth" && isSeenOnGround ? good : bad).add(bearingDeg);
  }
  return (deg) => good.has(deg) && !bad.has(deg);
}

/** Half a degree more on both sides: a line of fire stands for its whole degree. */
function bareRuns(lines: readonly LineOfFire[]): NoShootSpan[] {
  const bare = new Set(
    lines.filter(({ worst }) => worst.ground !== "earth").map(({ bearingDeg }) => bearingDeg),
  );
  return closedRuns((deg) => bare.has(deg)).map((run) => ({
    ...(isHalf(run)
      ? { fromDeg: run.from, toDeg: run.to }
      : { fromDeg: (run.from + 359.5) % 360, toDeg: (run.to + 0.5) % 360 }),
    distanceM: null,
    thingId: null,
    reason: NO_BACKSTOP,
  }));
}

function isHalf({ from, to }: BearingRun): boolean {
  return Math.abs(to - from) === 180 && (from === 0 || to === 0);
}

function mergedSpans(spans: readonly NoShootSpan[]): { fromDeg: number; toDeg: number }[] {
  const closed = new Set(
    spans.flatMap(({ fromDeg, toDeg }) =>
      degreesOf({ from: Math.floor(fromDeg), to: Math.ceil(toDeg) % 360 }),
    ),
  );
  return closedRuns((deg) => closed.has(deg)).map(({ from, to }) => ({ fromDeg: from, toDeg: to }));
}
