import type { DriveChanges } from "./driveChanges.ts";
import type { EnsembleMember } from "./ensembleMembers.ts";
import type { ModelConstants } from "./modelConstants.ts";

/** A stretch of rising or falling air in minutes from the start of a series; between spans the air turns. */
export interface AirSpan {
  phase: "falling" | "rising";
  fromMin: number;
  toMin: number;
}

/**
 * The spells of rising and falling air of one member, in order, never touching across phases. A phase begins when its
 * drive has held for more than its lag, longer under cloud; a drive that holds at the start of the series is taken to
 * have held for long. Short breaks inside one phase are closed, then short spells dropped.
 *
 * @param minutes length of the series
 */
export function memberSpans(
  changes: DriveChanges,
  member: EnsembleMember,
  minutes: number,
  constants: ModelConstants,
): AirSpan[] {
  const rising = drivenSpans("rising", changes.rise, changes.riseCloud, member.riseLagMin, minutes);
  const falling = drivenSpans("falling", changes.fall, changes.fallCloud, member.fallLagMin, minutes);
  if (member.fallHoldMin > 0) holdFalling(falling, rising, member.fallHoldMin, minutes, constants.gapMinMin);
  const spans = [...rising, ...falling].sort((a, b) => a.fromMin - b.fromMin);
  return withoutShortSpans(closedGaps(spans, constants.gapMinMin), constants.spanMinMin, minutes);
}

function drivenSpans(
  phase: AirSpan["phase"],
  edges: readonly number[],
  clouds: readonly number[],
  lagMin: number,
  minutes: number,
): AirSpan[] {
  const spans: AirSpan[] = [];
  for (let i = 0; i < edges.length; i += 2) {
    const begins = edges[i] as number;
    const toMin = edges[i + 1] ?? minutes;
    const waitMin = begins === 0 ? 0 : Math.floor(lagMin * (1 + (clouds[i / 2] as number)));
    if (begins + waitMin < toMin) spans.push({ phase, fromMin: begins + waitMin, toMin });
  }
  return spans;
}

/** Lets falling air outlive its drive, but never up to the rising air that follows. */
function holdFalling(
  falling: AirSpan[],
  rising: readonly AirSpan[],
  holdMin: number,
  minutes: number,
  gapMin: number,
): void {
  for (const span of falling) {
    const next = rising.find((r) => r.fromMin >= span.toMin);
    const latest = next ? next.fromMin - gapMin : minutes;
    span.toMin = Math.max(span.toMin, Math.min(span.toMin + holdMin, latest, minutes));
  }
}

function closedGaps(spans: readonly AirSpan[], gapMin: number): AirSpan[] {
  const closed: AirSpan[] = [];
  for (const span of spans) {
    const last = closed.at(-1);
    if (last && last.phase === span.phase && span.fromMin - last.toMin < gapMin) {
      last.toMin = Math.max(last.toMin, span.toMin);
    } else closed.push(span);
  }
  return closed;
}

function withoutShortSpans(spans: readonly AirSpan[], spanMin: number, minutes: number): AirSpan[] {
  return spans.filter((s) => s.toMin - s.fromMin >= spanMin || s.fromMin === 0 || s.toMin === minutes);
}
