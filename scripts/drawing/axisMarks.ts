import type { ClockAxis } from "./clockAxis.ts";
import { label, mm, textWidthMm } from "./svgText.ts";

/** Hour ticks with their figures below a base line; a label that would touch the one before it is left out. */
export function axisMarks(axis: ClockAxis, yMm: number): string {
  const parts = [
    `<path class="draw-line" d="M${mm(axis.leftMm)} ${mm(yMm)}H${mm(axis.rightMm)}" fill="none" stroke="#000" stroke-width="0.25"/>`,
  ];
  const labels = [...axis.ticks].sort((a, b) => b.label.length - a.label.length || a.x - b.x);
  const taken: [number, number][] = [];
  for (const tick of labels) {
    const half = textWidthMm(tick.label) / 2;
    const centre = Math.min(Math.max(tick.x, axis.leftMm), axis.rightMm + 3 - half);
    if (taken.some(([from, to]) => centre - half < to + 0.6 && centre + half > from - 0.6)) continue;
    taken.push([centre - half, centre + half]);
    parts.push(
      `<path class="draw-line" d="M${mm(tick.x)} ${mm(yMm)}v1" fill="none" stroke="#000" stroke-width="0.25"/>`,
      label(tick.label, centre, yMm + 4.2, "middle"),
    );
  }
  return parts.join("");
}
