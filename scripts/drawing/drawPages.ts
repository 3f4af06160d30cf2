import type { Chart } from "../briefing/pages/charts.ts";
import { dayTracks } from "./dayTracks.ts";
import { monthStrips } from "./monthStrips.ts";
import { VERDICT_MARKS } from "./verdictMarks.ts";

/** Width of the drawing for a phone: 288 px. */
export const NARROW_MM = 76.2;

/** A chart with its two drawings, each at its true size; a style sheet shows one of them. */
export type DrawnChart = Chart & { svg: { wide: string; narrow: string } };

/** A chart drawn for paper and wide screens, and for phones. */
export function drawnChart(chart: Chart): DrawnChart {
  const draw = (widthMm: number, stepHours: number, suffix: string): string =>
    chart.kind === "dayTracks"
      ? dayTracks(chart, widthMm, stepHours, suffix)
      : monthStrips(chart, widthMm, stepHours, suffix);
  return { ...chart, svg: { wide: draw(chart.wideMm, 2, "-w"), narrow: draw(NARROW_MM, 4, "-n") } };
}

/**
 * The pages with every chart in them drawn, and with the verdict marks that their tables use. Nothing else changes.
 *
 * @returns new pages; `marks` on each page is the SVG of the verdict marks
 */
export function drawPages<P extends Record<string, { permalink: string }[]>>(
  pages: P,
): { [K in keyof P]: (P[K][number] & { marks: string })[] } {
  const drawn = Object.entries(pages).map(([kind, list]) => [
    kind,
    list.map((page) => ({ ...(withDrawings(page) as typeof page), marks: VERDICT_MARKS })),
  ]);
  return Object.fromEntries(drawn);
}

/** The value with its drawings in every chart: a copy where there is a chart in it, else the value itself. */
function withDrawings(value: unknown): unknown {
  if (value === null || typeof value !== "object" || value instanceof Date) return value;
  if (Array.isArray(value)) {
    const drawn = value.map(withDrawings);
    return drawn.some((item, i) => item !== value[i]) ? drawn : value;
  }
  if (isChart(value)) return drawnChart(value);
  let copy: Record<string, unknown> | null = null;
  for (const [key, inner] of Object.entries(value)) {
    const drawn = withDrawings(inner);
    if (drawn === inner) continue;
    copy ??= { ...value };
    copy[key] = drawn;
  }
  return copy ?? value;
}

function isChart(value: object): value is Chart {
  return "kind" in value && (value.kind === "dayTracks" || value.kind === "monthStrips");
}
