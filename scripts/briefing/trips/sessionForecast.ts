import type { SessionWeather } from "../../safety/sessionChecks.ts";
import type { ForecastHour } from "../forecastSeries.ts";
import { type HoldingRow, holdingRows, leavesGap } from "./holdingRows.ts";
import { plus } from "./sitTimes.ts";

/** The forecast of one session: the rows that hold in it, and the weather of all the time near or in the tree. */
export interface SessionForecast {
  /** Rows that hold between start and end of the session; empty without a forecast for it. */
  rows: HoldingRow[];
  /** Weather from the climb up to after the climb down; with a row of nulls where some of it has no forecast. */
  weather: SessionWeather[];
  /** The row in force at the start, or the first after it; null without a forecast. */
  first: ForecastHour | null;
  /** The oldest issue of all rows that hold; null without a forecast. */
  issuedAt: Date | null;
  /** The latest issue of them: nobody can know them before. */
  lastIssuedAt: Date | null;
  /** Issued longer before the session starts than the limit. */
  isOld: boolean;
}

const UNKNOWN: SessionWeather = {
  windSpeedMps: null,
  gustMps: null,
  thunder: null,
  freezingRain: null,
  tempC: null,
};

/**
 * @param facts.hours      the trip's forecast, in order of time
 * @param facts.beforeMin  minutes before the start from which on the hunter may be climbing
 * @param facts.afterMin   minutes after the end in which the hunter still climbs down
 */
export function sessionForecast(facts: {
  hours: readonly ForecastHour[];
  from: Date;
  to: Date;
  timezone: string;
  beforeMin: number;
  afterMin: number;
  oldH: number;
}): SessionForecast {
  const { hours, from, to, timezone, beforeMin, afterMin, oldH } = facts;
  const rows = holdingRows(hours, from, to, timezone);
  if (rows.length === 0) {
    return { rows, weather: [], first: null, issuedAt: null, lastIssuedAt: null, isOld: false };
  }
  const upFrom = plus(from, -beforeMin);
  const downTo = plus(to, afterMin);
  const near = holdingRows(hours, upFrom, downTo, timezone);
  const issues = rows.map(({ hour }) => hour.issuedAt.getTime());
  const issuedAt = new Date(Math.min(...issues));
  return {
    rows,
    weather: [...near.map(({ hour }) => hour), ...(leavesGap(near, upFrom, downTo) ? [UNKNOWN] : [])],
    first: rows[0]?.hour ?? null,
    issuedAt,
    lastIssuedAt: new Date(Math.max(...issues)),
    isOld: isOldAt(issuedAt, from, oldH),
  };
}

/** Whether a forecast is issued over `oldH` hours before an instant. */
export function isOldAt(issuedAt: Date, at: Date, oldH: number): boolean {
  return at.getTime() - issuedAt.getTime() > oldH * 3_600_000;
}
