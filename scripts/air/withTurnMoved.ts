import { type MemberSpan, withSpans } from "./memberAir.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { membersOf, phaseSpans } from "./phaseSpans.ts";
import type { SlopeAirDay } from "./slopeAirDay.ts";

/**
 * The day with one turn moved to the instant that a local note gives: the beginning of rising or falling air of the
 * plain run that is nearest to the session, and with it the end of the air before. All members move by the same time,
 * so ranges keep their width. Without any turn that day the day is returned as it is.
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
  const spans = day.members.spans.map((own) => {
    const shifted = own.map((span, i): MemberSpan => {
      const next = own[i + 1];
      const fromMs = moved.has(span) ? span.fromMs + shiftMs : span.fromMs;
      const toMs = next && moved.has(next) ? span.toMs + shiftMs : span.toMs;
      return { ...span, fromMs, toMs, shiftMs: moved.has(span) ? shiftMs : 0 };
    });
    const turned = shifted.find((_, i) => moved.has(own[i] as MemberSpan));
    // A turn moved far leaves no room for what stood in its way.
    return shifted
      .map((s) =>
        turned && s !== turned && s.fromMs < turned.fromMs
          ? { ...s, toMs: Math.min(s.toMs, turned.fromMs) }
          : s,
      )
      .filter(
        (s) =>
          s.toMs > s.fromMs &&
          (s === turned || !turned || s.toMs <= turned.fromMs || s.fromMs >= turned.toMs),
      );
  });
  const members = withSpans(day.members, spans, constants);
  return { ...day, members, spans: phaseSpans(members, day, day.directions, constants) };
}
