import { type MemberSpan, withSpans } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { membersOf, phaseSpans } from "./phaseSpans.ts";
import type { SlopeAirDay } from "./slopeAirDay.ts";

/**
 * The day with one turn moved to the instant that a local note gives: the beginning of rising or falling air of the
 * plain run that is nearest to the session, and with it the end of the air before. All members move by the same time,
 * so ranges keep their width, but no spell is cut to under `spanMinMin`. Where the air is moved beyond what the model
 * gives it, it keeps the speed at the model's own end. Without any turn that day the day is returned as it is.
 *
 * @param session the window whose turn is meant
 */
export function withTurnMoved(
  day: SlopeAirDay,
  session: { from: Date; to: Date },
  turnsAt: Date,
  constants: ModelConstants,
): SlopeAirDay {
  const plain = day.members.spans[0] ?? [];
  const dayStartMs = day.start.getTime();
  const begins = plain.filter((s) => s.fromMs > dayStartMs && s.fromMs < day.end.getTime());
  const distance = (s: MemberSpan): number =>
    Math.max(0, session.from.getTime() - s.fromMs, s.fromMs - session.to.getTime());
  const turn = begins.toSorted((a, b) => distance(a) - distance(b))[0];
  if (!turn) return day;
  const shiftMs = turnsAt.getTime() - turn.fromMs;
  const moved = new Set(membersOf(day.members, turn));
  const spans = day.members.spans.map((own) => ownMoved(own, moved, shiftMs, constants.spanMinMin * 60_000));
  const members = withSpans(day.members, spans, constants);
  return { ...day, members, spans: phaseSpans(members, day, day.directions, constants) };
}

/** One member's spells with its turn moved, as far as the spells before and after leave room. */
function ownMoved(
  own: readonly MemberSpan[],
  moved: ReadonlySet<MemberSpan>,
  shiftMs: number,
  leastMs: number,
): MemberSpan[] {
  const i = own.findIndex((span) => moved.has(span));
  const turn = own[i];
  if (!turn) return [...own];
  const before = own[i - 1];
  const earliest = before ? Math.min(0, before.fromMs + leastMs - before.toMs) : shiftMs;
  const latest = Math.max(0, turn.toMs - leastMs - turn.fromMs);
  const byMs = Math.min(latest, Math.max(earliest, shiftMs));
  return own.map((span, k) => {
    if (k === i) return { ...span, fromMs: span.fromMs + byMs };
    return k === i - 1 ? { ...span, toMs: span.toMs + byMs } : span;
  });
}
