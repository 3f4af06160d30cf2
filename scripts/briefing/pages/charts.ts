import type { PackSite } from "../../content/schema/packSchema.ts";

type Span = NonNullable<PackSite["phases"]>[number]["spans"][number];

/** A stretch of the slope air as a chart needs it: whole, with the honest range of each end. */
export interface AirSpan {
  phase: Span["phase"];
  from: Date;
  to: Date;
  /** earliest and latest start; the start itself at midnight */
  fromRange: [Date, Date];
  toRange: [Date, Date];
}

export interface LightEvents {
  firstLight: Date | null;
  sunrise: Date | null;
  sunset: Date | null;
  lastLight: Date | null;
}

interface ChartBase {
  /** unique on its page; ids inside the drawing start with it */
  id: string;
  title: string;
  desc: string;
  timezone: string;
  /** width of the printed drawing, millimetres */
  wideMm: number;
}

/** Light and slope air of one site and day on one clock axis. */
export interface DayTracksChart extends ChartBase {
  kind: "dayTracks";
  localDate: string;
  light: LightEvents;
  legal: { from: Date; to: Date } | null;
  usable: { from: Date; to: Date } | null;
  air: AirSpan[] | null;
}

/** The turns of the slope air of one site through the year, a row a day shown. */
export interface MonthStripsChart extends ChartBase {
  kind: "monthStrips";
  rows: {
    label: string;
    localDate: string;
    /** the row of the day for which tables are computed */
    framed: boolean;
    sunrise: Date | null;
    sunset: Date | null;
    air: AirSpan[];
  }[];
}

export type Chart = DayTracksChart | MonthStripsChart;
