import type { AirSpan, MonthStripsChart } from "../briefing/pages/charts.ts";
import { civilAt } from "../time/civilTime.ts";
import { drawnStretches } from "./slopeAirStrip.ts";
import { hatchPattern, svgFrame } from "./svgFrame.ts";
import { label, mm, textWidthMm } from "./svgText.ts";

const GUTTER_MM = 15.5;
const ROW_MM = 4;
const TOP_MM = 5.2;

/** The clock scale that all rows of a year share. */
export interface HourScale {
  fromHour: number;
  toHour: number;
  x(hours: number): number;
}

/**
 * Small multiples: a row a date on one clock, sun ticks, and a hatched bar with a dot for each turn. Rows are placed by
 * the clock of their own day, so a change of the clocks moves the rows after it as it moves a watch.
 */
export function monthStrips(
  chart: MonthStripsChart,
  widthMm: number,
  stepHours: number,
  idSuffix: string,
): string {
  const id = `${chart.id}${idSuffix}`;
  const scale = hourScale(chart, GUTTER_MM, widthMm - 3);
  const parts = [hatchPattern(`${id}-h`), hourMarks(scale, stepHours, TOP_MM + chart.rows.length * ROW_MM)];
  chart.rows.forEach((row, i) => {
    const y = TOP_MM + i * ROW_MM;
    parts.push(label(row.label, 0.8, y + ROW_MM - 0.9), stripRow(row, chart.timezone, scale, y, `${id}-h`));
    if (row.framed) {
      parts.push(
        `<rect class="draw-line" x="0.25" y="${mm(y)}" width="${mm(widthMm - 0.5)}" height="${ROW_MM}" fill="none" stroke="#000" stroke-width="0.5"/>`,
      );
    }
  });
  const heightMm = TOP_MM + chart.rows.length * ROW_MM + 0.6;
  return svgFrame(id, { widthMm, heightMm }, chart, parts.join(""));
}

/** Hours since midnight on the clock of the row's own day, 0 to 24. */
export function clockHours(at: Date, localDate: string, timezone: string): number {
  const here = civilAt(at, timezone);
  if (here.localDate > localDate) return 24;
  if (here.localDate < localDate) return 0;
  const [hours, minutes] = here.clock.split(":").map(Number) as [number, number];
  return hours + minutes / 60;
}

/** 04 to 21 o'clock, widened by whole hours until every sun tick and turn is on it. */
export function hourScale(chart: MonthStripsChart, leftMm: number, rightMm: number): HourScale {
  const hours = chart.rows.flatMap((row) =>
    [
      ...[row.sunrise, row.sunset].flatMap((at) => (at === null ? [] : [at])),
      ...row.air.flatMap((span) => (span.phase === "turning" ? [span.fromRange[0], span.toRange[1]] : [])),
    ].map((at) => clockHours(at, row.localDate, chart.timezone)),
  );
  const fromHour = Math.floor(Math.min(4, ...hours));
  const toHour = Math.ceil(Math.max(21, ...hours));
  return {
    fromHour,
    toHour,
    x: (h) =>
      leftMm +
      ((Math.min(Math.max(h, fromHour), toHour) - fromHour) / (toHour - fromHour)) * (rightMm - leftMm),
  };
}

function stripRow(
  row: MonthStripsChart["rows"][number],
  timezone: string,
  scale: HourScale,
  y: number,
  hatchId: string,
): string {
  const x = (at: Date): number => scale.x(clockHours(at, row.localDate, timezone));
  const middle = y + ROW_MM / 2;
  const drawn = drawnStretches(row.air);
  const levels = drawn
    .filter((stretch) => stretch.phase !== "turning" && x(stretch.to) > x(stretch.from))
    .map((s) => `M${mm(x(s.from))} ${mm(middle + (s.phase === "falling" ? 1.3 : -1.3))}H${mm(x(s.to))}`);
  const sun = [row.sunrise, row.sunset]
    .flatMap((at) => (at === null ? [] : [x(at)]))
    .map((at) => `M${mm(at)} ${mm(y + 0.5)}v${mm(ROW_MM - 1)}`);
  return (
    `<path class="draw-line" d="${levels.join("")}" fill="none" stroke="#000" stroke-width="0.35"/>` +
    drawn.map((stretch, i) => turnBar(stretch, row.air[i], x, middle, hatchId)).join("") +
    `<path class="draw-line" d="${sun.join("")}" fill="none" stroke="#000" stroke-width="0.6"/>`
  );
}

function turnBar(
  stretch: { phase: string; from: Date; to: Date },
  plain: AirSpan | undefined,
  x: (at: Date) => number,
  middle: number,
  hatchId: string,
): string {
  if (stretch.phase !== "turning" || plain === undefined) return "";
  const [x0, x1] = [x(stretch.from), x(stretch.to)];
  if (x1 <= x0) return "";
  const dot = (x(plain.from) + x(plain.to)) / 2;
  return (
    `<rect class="draw-line" x="${mm(x0)}" y="${mm(middle - 1.3)}" width="${mm(x1 - x0)}" height="2.6" fill="url(#${hatchId})" stroke="#000" stroke-width="0.25"/>` +
    `<circle class="draw-ink" cx="${mm(dot)}" cy="${mm(middle)}" r="0.8" fill="#000"/>`
  );
}

function hourMarks(scale: HourScale, stepHours: number, bottomMm: number): string {
  const parts: string[] = [];
  for (
    let hour = Math.ceil(scale.fromHour / stepHours) * stepHours;
    hour <= scale.toHour;
    hour += stepHours
  ) {
    const text = String(hour).padStart(2, "0");
    const half = textWidthMm(text) / 2;
    const centre = Math.min(
      Math.max(scale.x(hour), scale.x(scale.fromHour) + half - 1),
      scale.x(scale.toHour) + 3 - half,
    );
    parts.push(
      `<path class="draw-faint" d="M${mm(scale.x(hour))} ${mm(TOP_MM)}V${mm(bottomMm)}" fill="none" stroke="#000" stroke-width="0.25" stroke-dasharray="0.3 1.2"/>`,
      label(text, centre, 3.6, "middle"),
    );
  }
  return parts.join("");
}
