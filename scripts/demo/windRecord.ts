import { type CompassPoint, pointBearingDeg } from "../geo/compassPoints.ts";
import { eachDay, isoInZone, resolveClock } from "../time/civilTime.ts";
import { hashShare } from "./valueNoise.ts";

/** What a station's record is made from. `shares` is "N 5, NNE 3": percent of runs from each direction. */
export interface WindPlan {
  file: string;
  periods: { from: string; to: string }[];
  shares: string;
  dayMps: number;
  nightMps: number;
  /** share of the hours 04 to 07 that are calm */
  calmShare: number;
  /** share of rows that the station lost */
  missingShare: number;
  seed: number;
}

const RUN_HOURS = 6;
const DAY_HOURS = { from: 8, to: 18 };
const CALM_HOURS = { from: 4, to: 7 };
const SPEED_SPREAD = 0.35;

/**
 * An hourly wind record as a table: instant with offset, degrees the wind blows from, mean speed in metres a second.
 * A direction holds for 6 hours; the directions have the stated shares exactly, their order is scattered by a hash. Calm
 * hours have speed 0 and no direction.
 */
export function windRecord(plan: WindPlan, timezone: string): string {
  const days = plan.periods.flatMap(({ from, to }) => eachDay(from, to));
  const directions = scatteredDirections(plan, (days.length * 24) / RUN_HOURS);
  const rows: string[] = [];
  for (const [day, localDate] of days.entries()) {
    for (let hour = 0; hour < 24; hour++) {
      const clock = resolveClock(localDate, `${String(hour).padStart(2, "0")}:00`, timezone);
      const isLost = hashShare(day, hour, plan.seed + 1) < plan.missingShare;
      if (clock.kind === "gap" || isLost) continue;
      const at = isoInZone(clock.kind === "one" ? clock.at : clock.first, timezone);
      const fromDeg = directions[Math.floor((day * 24 + hour) / RUN_HOURS)]!;
      const speedMps = hourSpeedMps(plan, day, hour);
      rows.push(speedMps === 0 ? `${at},,0` : `${at},${fromDeg},${speedMps.toFixed(1)}`);
    }
  }
  return `${["at,windFromDeg,windSpeedMps", ...rows].join("\n")}\n`;
}

function hourSpeedMps(plan: WindPlan, day: number, hour: number): number {
  const canBeCalm = hour >= CALM_HOURS.from && hour <= CALM_HOURS.to;
  if (canBeCalm && hashShare(day, hour, plan.seed + 2) < plan.calmShare) return 0;
  const usual = hour >= DAY_HOURS.from && hour <= DAY_HOURS.to ? plan.dayMps : plan.nightMps;
  return usual * (1 + SPEED_SPREAD * (2 * hashShare(day, hour, plan.seed + 3) - 1));
}

/** As many runs of each direction as its share asks for, by largest remainder, in scattered order. */
function scatteredDirections({ shares, seed }: WindPlan, runs: number): number[] {
  const parts = shares.split(",").map((part) => {
    const [point, percent] = part.trim().split(" ");
    const exact = (Number(percent) / 100) * runs;
    return { fromDeg: pointBearingDeg(point as CompassPoint), count: Math.floor(exact), rest: exact % 1 };
  });
  const missing = runs - parts.reduce((sum, { count }) => sum + count, 0);
  const byRest = parts.toSorted((a, b) => b.rest - a.rest || a.fromDeg - b.fromDeg);
  for (const part of byRest.slice(0, missing)) part.count++;
  return parts
    .flatMap(({ fromDeg, count }) => Array.from({ length: count }, () => fromDeg))
    .map((fromDeg, run) => ({ fromDeg, order: hashShare(run, 0, seed) }))
    .sort((a, b) => a.order - b.order)
    .map(({ fromDeg }) => fromDeg);
}
