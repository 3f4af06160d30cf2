import type { MemberAir, MemberSpan } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import type { Phase } from "./slopeSite.ts";

/** A stretch of the local day with one phase of the slope air. */
export interface PhaseSpan {
  phase: Phase;
  from: Date;
  to: Date;
  /** Earliest and latest beginning in the ensemble; null at midnight, and then `why` says so. */
  fromRange: readonly [Date, Date] | null;
  toRange: readonly [Date, Date] | null;
  /** Mean over the span of the plain run's slope air alone, in still air; null while turning. */
  speedMps: number | null;
  /** Where the slope air alone goes; null while turning and where there is no slope air. */
  driftToDeg: number | null;
  /** Fewer than 14 of 17 members have this spell at all. */
  mayNotHappen: boolean;
  why: Partial<Record<"fromRange" | "toRange" | "speedMps" | "driftToDeg", string>>;
}

/** Where falling and rising air goes at a site; null where it has no direction. */
export interface AirDirections {
  fallToDeg: number | null;
  riseToDeg: number | null;
  /** Why there is no direction; null when there is one. */
  why: string | null;
}

/**
 * The spans of one local day in order, without gap or overlap, from the spells of all members. Ranges run from the
 * least to the greatest of the members that have the spell.
 */
export function phaseSpans(
  air: MemberAir,
  day: { start: Date; end: Date },
  directions: AirDirections,
  constants: ModelConstants,
): PhaseSpan[] {
  const startMs = day.start.getTime();
  const endMs = day.end.getTime();
  const plain = (air.spans[0] ?? []).filter((s) => s.toMs > startMs && s.fromMs < endMs);
  const matched = plain.map((span) => membersOf(air, span));
  const spans: PhaseSpan[] = [];
  let atMs = startMs;
  plain.forEach((span, i) => {
    const fromMs = Math.max(startMs, span.fromMs);
    const toMs = Math.min(endMs, span.toMs);
    if (fromMs > atMs) spans.push(turning(atMs, fromMs));
    const isRising = span.phase === "rising";
    const driftToDeg = isRising ? directions.riseToDeg : directions.fallToDeg;
    spans.push({
      phase: span.phase,
      from: new Date(fromMs),
      to: new Date(toMs),
      fromRange: null,
      toRange: null,
      speedMps: meanSpeedMps(air, fromMs, toMs),
      driftToDeg,
      mayNotHappen: (matched[i]?.length ?? 0) < constants.mayNotHappenBelow,
      why: driftToDeg === null ? { driftToDeg: directions.why ?? "not known" } : {},
    });
    atMs = toMs;
  });
  if (atMs < endMs) spans.push(turning(atMs, endMs));
  addRanges(spans, plain, matched, startMs, endMs);
  return spans;
}

/** The spell of each member that stands for a spell of the plain run: the one that shares most time with it. */
export function membersOf(air: MemberAir, span: MemberSpan): MemberSpan[] {
  const found: MemberSpan[] = [];
  for (const own of air.spans) {
    let best: MemberSpan | null = null;
    let bestShared = 0;
    for (const other of own) {
      if (other.phase !== span.phase) continue;
      const shared = Math.min(other.toMs, span.toMs) - Math.max(other.fromMs, span.fromMs);
      if (shared > bestShared) {
        best = other;
        bestShared = shared;
      }
    }
    if (best) found.push(best);
  }
  return found;
}

function turning(fromMs: number, toMs: number): PhaseSpan {
  const why = "the air turns, it has no steady speed or direction";
  return {
    phase: "turning",
    from: new Date(fromMs),
    to: new Date(toMs),
    fromRange: null,
    toRange: null,
    speedMps: null,
    driftToDeg: null,
    mayNotHappen: false,
    why: { speedMps: why, driftToDeg: why },
  };
}

function addRanges(
  spans: PhaseSpan[],
  plain: readonly MemberSpan[],
  matched: readonly (readonly MemberSpan[])[],
  startMs: number,
  endMs: number,
): void {
  const begins = new Map<number, readonly [Date, Date]>();
  plain.forEach((span, i) => {
    const own = matched[i] ?? [];
    if (span.fromMs > startMs) begins.set(span.fromMs, range(own.map((s) => s.fromMs)));
    if (span.toMs < endMs) begins.set(span.toMs, range(own.map((s) => s.toMs)));
  });
  for (const span of spans) {
    span.fromRange = begins.get(span.from.getTime()) ?? null;
    span.toRange = begins.get(span.to.getTime()) ?? null;
    if (!span.fromRange) span.why.fromRange = "midnight";
    if (!span.toRange) span.why.toRange = "midnight";
  }
}

function range(times: readonly number[]): readonly [Date, Date] {
  return [new Date(Math.min(...times)), new Date(Math.max(...times))];
}

function meanSpeedMps(air: MemberAir, fromMs: number, toMs: number): number {
  const stepMs = air.stepMin * 60_000;
  const first = Math.max(0, Math.ceil((fromMs - air.startMs) / stepMs));
  const end = Math.min(air.steps, Math.max(first + 1, Math.ceil((toMs - air.startMs) / stepMs)));
  let sum = 0;
  for (let step = first; step < end; step++) sum += air.speedMps[step] as number;
  return end > first ? sum / (end - first) : 0;
}
