import type { AirSpan } from "../briefing/pages/charts.ts";
import type { ClockAxis } from "./clockAxis.ts";
import { label, mm, textWidthMm } from "./svgText.ts";

/** Height of the strip with the row of its turning words, millimetres. */
export const SLOPE_AIR_MM = 13.3;

const HIGH_MM = 1;
const LOW_MM = 8.6;
const MIDDLE_MM = (HIGH_MM + LOW_MM) / 2;
const TURN_WORD_MM = 12.6;
const ARROW_MM = 3.6;

/** A stretch as it is drawn: level stretches give way to the honest range of the turns beside them. */
export interface DrawnStretch {
  phase: AirSpan["phase"];
  from: Date;
  to: Date;
}

/**
 * Stretches of a day that meet without gap: a turn takes its range from the earliest start to the latest end; where two
 * ranges would leave nothing of a level stretch between them, all three keep their plain times.
 */
export function drawnStretches(spans: readonly AirSpan[]): DrawnStretch[] {
  return spans.map((span, i) => {
    const from = edge(spans, i - 1);
    const to = edge(spans, i);
    return { phase: span.phase, from: from ?? span.from, to: to ?? span.to };
  });
}

/** Where the drawing changes from span i to the next: at the far end of the range on the level side. */
function edge(spans: readonly AirSpan[], i: number): Date | null {
  const [left, right] = [spans[i], spans[i + 1]];
  if (left === undefined || right === undefined) return null;
  if (left.phase === "turning") return isSqueezed(spans, i + 1) ? left.to : left.toRange[1];
  if (right.phase === "turning") return isSqueezed(spans, i) ? right.from : right.fromRange[0];
  return left.to;
}

/** Whether the ranges of the turns on both sides leave nothing of a level stretch. */
function isSqueezed(spans: readonly AirSpan[], i: number): boolean {
  const [before, span, after] = [spans[i - 1], spans[i], spans[i + 1]];
  if (span === undefined) return false;
  const start = before?.phase === "turning" ? before.toRange[1] : span.from;
  const end = after?.phase === "turning" ? after.fromRange[0] : span.to;
  return start >= end;
}

/** The stepped line: low is falling, high is rising, a dashed ramp is turning; word and arrow say the same. */
export function slopeAirStrip(spans: readonly AirSpan[], axis: ClockAxis, yMm: number): string {
  const drawn = drawnStretches(spans).filter((s) => s.to > axis.from && s.from < axis.to);
  const level = (phase: AirSpan["phase"] | undefined): number =>
    yMm + (phase === "falling" ? LOW_MM : phase === "rising" ? HIGH_MM : MIDDLE_MM);
  const solid: string[] = [];
  const dashed: string[] = [];
  const words: string[] = [];
  drawn.forEach((stretch, i) => {
    const [x0, x1] = [axis.x(stretch.from), axis.x(stretch.to)];
    if (stretch.phase === "turning") {
      const [before, after] = [drawn[i - 1]?.phase, drawn[i + 1]?.phase];
      dashed.push(
        before === after && before !== undefined
          ? `M${mm(x0)} ${mm(level(before))}L${mm((x0 + x1) / 2)} ${mm(level("turning"))}L${mm(x1)} ${mm(level(after))}`
          : `M${mm(x0)} ${mm(level(before))}L${mm(x1)} ${mm(level(after))}`,
      );
    } else {
      solid.push(`M${mm(x0)} ${mm(level(stretch.phase))}H${mm(x1)}`);
      words.push(levelWord(stretch.phase, x0, x1, level(stretch.phase)));
    }
  });
  words.push(turningWords(drawn, axis, yMm));
  return (
    `<path class="draw-line" d="${solid.join("")}" fill="none" stroke="#000" stroke-width="0.9"/>` +
    `<path class="draw-line" d="${dashed.join("")}" fill="none" stroke="#000" stroke-width="0.6" stroke-dasharray="1.4 0.9"/>` +
    words.join("")
  );
}

/** Word and arrow of a level stretch, inside the track; the arrow goes first when there is no room, then the word. */
function levelWord(phase: "falling" | "rising", x0: number, x1: number, yMm: number): string {
  const width = textWidthMm(phase);
  const y = phase === "falling" ? yMm - 1.6 : yMm + 4.1;
  const room = x1 - x0;
  if (room >= width + ARROW_MM + 2) {
    const left = (x0 + x1 - width - ARROW_MM - 0.8) / 2;
    return arrow(phase, left, y) + label(phase, left + ARROW_MM + 0.8, y);
  }
  return room >= width + 0.6 ? label(phase, (x0 + x1) / 2, y, "middle") : "";
}

function turningWords(drawn: readonly DrawnStretch[], axis: ClockAxis, yMm: number): string {
  const half = (textWidthMm("turning") + ARROW_MM + 0.8) / 2;
  let freeFrom = Number.NEGATIVE_INFINITY;
  return drawn
    .filter((stretch) => stretch.phase === "turning")
    .map((stretch) => {
      const middle = (axis.x(stretch.from) + axis.x(stretch.to)) / 2;
      const centre = Math.min(Math.max(middle, axis.leftMm + half), axis.rightMm - half);
      if (centre - half < freeFrom) return "";
      freeFrom = centre + half + 1;
      const y = yMm + TURN_WORD_MM;
      return arrow("turning", centre - half, y) + label("turning", centre - half + ARROW_MM + 0.8, y);
    })
    .join("");
}

/** Down-right, up-right or double-headed, its foot on the baseline of the word. */
function arrow(phase: AirSpan["phase"], x: number, y: number): string {
  const d = {
    falling: `M${mm(x)} ${mm(y - 2.4)}l3 2.4m-1.9 0h1.9v-1.9`,
    rising: `M${mm(x)} ${mm(y)}l3 -2.4m-1.9 0h1.9v1.9`,
    turning: `M${mm(x)} ${mm(y - 1.1)}h3.2m-1.2 -1.2l1.2 1.2l-1.2 1.2m-0.8 -2.4l-1.2 1.2l1.2 1.2`,
  }[phase];
  return `<path class="draw-line" d="${d}" fill="none" stroke="#000" stroke-width="0.4"/>`;
}
