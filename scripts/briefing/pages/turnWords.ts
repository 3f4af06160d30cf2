import { clockText, roundedInstant } from "../words/clockText.ts";
import type { AirSpan } from "./charts.ts";

/** One stretch of turning air in words. */
export interface TurnRow {
  /** "falling to rising" */
  change: string;
  /** "08:30 to 09:30": the turn to the printed step, outward; an estimate, so "about" stands before it */
  span: string;
  /** "08:10 to 09:40": earliest start and latest end, outward to 5 min */
  range: string;
}

/** Every turn of a day in order of time; a turn that runs over midnight says so. */
export function turnRows(spans: readonly AirSpan[], stepMin: number, timezone: string): TurnRow[] {
  return spans.flatMap((span, i) => {
    if (span.phase !== "turning") return [];
    const before = spans[i - 1]?.phase ?? null;
    const after = spans[i + 1]?.phase ?? null;
    return [
      {
        change: changeText(before, after),
        span: spanText(span.from, span.to, before, after, stepMin, timezone),
        range: spanText(span.fromRange[0], span.toRange[1], before, after, 5, timezone),
      },
    ];
  });
}

/** The day of the air in one line: "falling, turning about 08:30 to 09:30, rising ...". */
export function airSentence(spans: readonly AirSpan[], stepMin: number, timezone: string): string {
  const turns = turnRows(spans, stepMin, timezone);
  let turn = 0;
  return spans
    .map((span) => (span.phase === "turning" ? `turning about ${turns[turn++]?.span}` : span.phase))
    .join(", ");
}

function changeText(before: string | null, after: string | null): string {
  if (before === null && after === null) return "all day";
  if (before === null) return `from midnight to ${after}`;
  if (after === null) return `${before} to midnight`;
  return before === after ? `${before}, a break` : `${before} to ${after}`;
}

function spanText(
  from: Date,
  to: Date,
  before: string | null,
  after: string | null,
  stepMin: number,
  timezone: string,
): string {
  const first =
    before === null ? "midnight" : clockText(roundedInstant(from, stepMin, "down", timezone), timezone);
  const last = after === null ? "midnight" : clockText(roundedInstant(to, stepMin, "up", timezone), timezone);
  return `${first} to ${last}`;
}
