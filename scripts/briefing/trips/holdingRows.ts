import type { WindRow } from "../../air/sessionVerdict.ts";
import { endOfDay } from "../../time/civilTime.ts";
import type { ForecastHour } from "../forecastSeries.ts";

/** A row of a forecast and the time it holds for: until the next row, and never past its own day. */
export interface HoldingRow {
  hour: ForecastHour;
  from: Date;
  until: Date;
}

/**
 * The rows of a forecast that hold at some time between two instants, in order. Before the first row of a day and in a
 * day without rows nothing holds: such time is not known.
 *
 * @param hours   in order of time
 */
export function holdingRows(
  hours: readonly ForecastHour[],
  from: Date,
  to: Date,
  timezone: string,
): HoldingRow[] {
  return hours.flatMap((hour, i): HoldingRow[] => {
    if (hour.at >= to) return [];
    const next = hours[i + 1]?.at ?? null;
    const dayEnd = endOfDay(hour.localDate, timezone);
    const until = next !== null && next < dayEnd ? next : dayEnd;
    const isMoment = until <= hour.at && hour.at >= from;
    return until > from || isMoment ? [{ hour, from: hour.at, until }] : [];
  });
}

/** Whether the rows leave some time between the two instants without a forecast. */
export function leavesGap(rows: readonly HoldingRow[], from: Date, to: Date): boolean {
  let known = from;
  for (const row of rows) {
    if (row.from > known) return true;
    if (row.until > known) known = row.until;
  }
  return known < to;
}

/**
 * The wind of a session as it is judged, in order of time; time that no row covers has a wind that is not known. Of rows for
 * the very same time the last holds.
 *
 * @param isOld   a forecast so old that its direction is in doubt
 */
export function windOfRows(
  rows: readonly HoldingRow[],
  from: Date,
  to: Date,
  isOld: (row: HoldingRow) => boolean,
): WindRow[] {
  const winds: WindRow[] = [];
  let known = from;
  for (const row of rows) {
    if (row.until <= row.from) continue;
    if (row.from > known) winds.push({ at: known, windFromDeg: null, windSpeedMps: null });
    const { windFromDeg, windSpeedMps, gustMps } = row.hour;
    winds.push({ at: row.from, windFromDeg, windSpeedMps, gustMps, isDirectionDoubtful: isOld(row) });
    known = row.until;
  }
  if (known < to) winds.push({ at: known, windFromDeg: null, windSpeedMps: null });
  return winds;
}
