import type { DayTracksChart } from "../briefing/pages/charts.ts";
import { axisMarks } from "./axisMarks.ts";
import { type ClockAxis, clockAxis } from "./clockAxis.ts";
import { LIGHT_BAR_MM, lightBar } from "./lightBar.ts";
import { SLOPE_AIR_MM, slopeAirStrip } from "./slopeAirStrip.ts";
import { hatchPattern, svgFrame } from "./svgFrame.ts";
import { label, mm } from "./svgText.ts";

const GUTTER_MM = 15;
const BRACKET_MM = 4;

/**
 * Light, legal hours, usable light and slope air of a day as tracks on one clock axis, at true size.
 *
 * @param widthMm   whole width
 * @param stepHours hours between ticks
 * @param idSuffix  makes the ids of this drawing its own
 */
export function dayTracks(
  chart: DayTracksChart,
  widthMm: number,
  stepHours: number,
  idSuffix: string,
): string {
  const id = `${chart.id}${idSuffix}`;
  const axis = clockAxis(
    chart.localDate,
    chart.timezone,
    { leftMm: GUTTER_MM, rightMm: widthMm - 3, stepHours },
    held(chart),
  );
  const parts = [hatchPattern(`${id}-h`)];
  let y = 0.5;
  const track = (name: string, heightMm: number, textMm: number, drawing: string): void => {
    if (drawing === "") return;
    parts.push(label(name, 0, y + textMm), drawing);
    y += heightMm;
  };
  track("Light", LIGHT_BAR_MM + 0.8, 3.8, lightBar(chart.light, axis, y, `${id}-h`));
  track("Legal", BRACKET_MM, 3.2, bracket(chart.legal, axis, y + 2));
  track("Usable", BRACKET_MM, 3.2, bracket(chart.usable, axis, y + 2));
  if (chart.air !== null) track("Air", SLOPE_AIR_MM + 1, 7, slopeAirStrip(chart.air, axis, y + 0.6));
  parts.push(axisMarks(axis, y));
  return svgFrame(id, { widthMm, heightMm: y + 5.2 }, chart, parts.join(""));
}

/** A line with an end tick at each side; an end beyond the axis has no tick. */
function bracket(span: { from: Date; to: Date } | null, axis: ClockAxis, yMm: number): string {
  if (span === null) return "";
  const [x0, x1] = [axis.x(span.from), axis.x(span.to)];
  const tick = (x: number): string => `M${mm(x)} ${mm(yMm - 1.3)}v2.6`;
  const d = `M${mm(x0)} ${mm(yMm)}H${mm(x1)}${span.from >= axis.from ? tick(x0) : ""}${span.to <= axis.to ? tick(x1) : ""}`;
  return `<path class="draw-line" d="${d}" fill="none" stroke="#000" stroke-width="0.5"/>`;
}

/** What the axis must hold: the light, and the turns; midnight ends of the air do not widen it. */
function held(chart: DayTracksChart): Date[] {
  const { light, legal, usable, air } = chart;
  const turns = (air ?? []).flatMap((span) =>
    span.phase === "turning" ? [span.fromRange[0], span.toRange[1]] : [],
  );
  return [
    ...[light.firstLight, light.sunrise, light.sunset, light.lastLight].flatMap((at) =>
      at === null ? [] : [at],
    ),
    ...(legal === null ? [] : [legal.from, legal.to]),
    ...(usable === null ? [] : [usable.from, usable.to]),
    ...turns,
  ];
}
