import type { LightEvents } from "../briefing/pages/charts.ts";
import type { ClockAxis } from "./clockAxis.ts";
import { mm } from "./svgText.ts";

/** Height of the bar, millimetres. */
export const LIGHT_BAR_MM = 5;

type LightState = "night" | "twilight" | "day";

export interface LightStretch {
  state: LightState;
  from: Date;
  to: Date;
}

/**
 * The light of the stretch that an axis shows: night, twilight and day in order of time. Events in any order, so a sun
 * that sets after midnight is right too.
 *
 * @returns null when no event happens: the drawing then can not know which light it is, and words must say it
 */
export function lightStretches(
  light: LightEvents,
  axis: Pick<ClockAxis, "from" | "to">,
): LightStretch[] | null {
  const changes = (
    [
      { at: light.firstLight, before: "night", after: "twilight" },
      { at: light.sunrise, before: "twilight", after: "day" },
      { at: light.sunset, before: "day", after: "twilight" },
      { at: light.lastLight, before: "twilight", after: "night" },
    ] as const
  )
    .flatMap((change) => (change.at === null ? [] : [{ ...change, at: change.at }]))
    .sort((a, b) => Number(a.at) - Number(b.at));
  const [first] = changes;
  if (first === undefined) return null;
  const stretches: LightStretch[] = [];
  let state: LightState = first.before;
  let from = axis.from;
  for (const change of changes) {
    if (change.at > from && from < axis.to) {
      stretches.push({ state, from, to: earlier(change.at, axis.to) });
      from = change.at;
    }
    state = change.after;
  }
  if (from < axis.to) stretches.push({ state, from, to: axis.to });
  return stretches;
}

/** The bar: night solid, day empty, twilight hatched where it is at least 4 mm wide, ticks at sunrise and sunset. */
export function lightBar(light: LightEvents, axis: ClockAxis, yMm: number, hatchId: string): string {
  const stretches = lightStretches(light, axis);
  if (stretches === null) return "";
  const parts = stretches.map(({ state, from, to }) => {
    const [x0, x1] = [axis.x(from), axis.x(to)];
    if (state === "day" || (state === "twilight" && x1 - x0 < 4)) return "";
    const paint = state === "night" ? `class="draw-night" fill="#000"` : `fill="url(#${hatchId})"`;
    return `<rect ${paint} x="${mm(x0)}" y="${mm(yMm)}" width="${mm(x1 - x0)}" height="${LIGHT_BAR_MM}"/>`;
  });
  const ticks = [light.sunrise, light.sunset]
    .flatMap((at) => (at === null || at < axis.from || at > axis.to ? [] : [axis.x(at)]))
    .map((x) => `M${mm(x)} ${mm(yMm)}v${LIGHT_BAR_MM}`);
  const frame = `M${mm(axis.leftMm)} ${mm(yMm)}H${mm(axis.rightMm)}v${LIGHT_BAR_MM}H${mm(axis.leftMm)}z`;
  const day = `<rect class="draw-day" fill="#fff" x="${mm(axis.leftMm)}" y="${mm(yMm)}" width="${mm(axis.rightMm - axis.leftMm)}" height="${LIGHT_BAR_MM}"/>`;
  return `${day}${parts.join("")}<path class="draw-line" d="${frame}${ticks.join("")}" fill="none" stroke="#000" stroke-width="0.35"/>`;
}

function earlier(a: Date, b: Date): Date {
  return new Date(Math.min(Number(a), Number(b)));
}
