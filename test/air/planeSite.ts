import { readFileSync } from "node:fs";
import { type ModelConstants, type ModelRow, modelConstants } from "../../scripts/air/modelConstants.ts";
import type { Approach } from "../../scripts/air/reachShare.ts";
import { type SlopeAirDay, slopeAirDay } from "../../scripts/air/slopeAirDay.ts";
import type { SlopeSite, SunTable } from "../../scripts/air/slopeSite.ts";
import { sunTable } from "../../scripts/light/sunTable.ts";

const RADIAN = Math.PI / 180;

export const modelRows = JSON.parse(
  readFileSync(new URL("../../data/model.json", import.meta.url), "utf8"),
) as ModelRow[];

export const constants: ModelConstants = modelConstants(modelRows);

/** Skyline of an endless plane seen from itself: it hides what lies under its own uphill side. */
export function planeHorizonDeg(slopeDeg: number, aspectDeg: number): Float64Array {
  const rise = Math.tan(slopeDeg * RADIAN);
  return Float64Array.from({ length: 360 }, (_, bearing) => {
    const angle = Math.atan(rise * Math.cos((bearing - aspectDeg - 180) * RADIAN)) / RADIAN;
    return Math.max(0, angle);
  });
}

/** Greatest upwind slope of an endless plane for the 16 winds: mean over bearings 15 deg to each side by 5. */
export function planeSxDeg(slopeDeg: number, aspectDeg: number): Float64Array {
  const rise = Math.tan(slopeDeg * RADIAN);
  return Float64Array.from({ length: 16 }, (_, point) => {
    let sum = 0;
    for (let off = -15; off <= 15; off += 5) {
      sum += Math.atan(rise * Math.cos((point * 22.5 + off - aspectDeg - 180) * RADIAN)) / RADIAN;
    }
    return sum / 7;
  });
}

/** A plane slope of 20 deg in timber at 700 m; the worked examples stand on it. */
export function planeSite(aspectDeg: number, change: Partial<SlopeSite> = {}): SlopeSite {
  return {
    slopeDeg: 20,
    aspectDeg,
    landform: "slope",
    cover: "timber",
    elevationM: 700,
    horizonDeg: planeHorizonDeg(20, aspectDeg),
    floorDriftToDeg: null,
    sxDeg: planeSxDeg(20, aspectDeg),
    ...change,
  };
}

export const CROSS_MOUNTAIN = { lat: 36.19833, lon: -84.23083 };

/** Sun from 10 h before the day to 4 h after it, every 5 min. */
export function sunOfDay(dayStart: Date, position = CROSS_MOUNTAIN, hours = 24): SunTable {
  const startsAt = new Date(dayStart.getTime() - 10 * 3_600_000);
  return sunTable(position, startsAt, 5, (hours + 14) * 12 + 1);
}

export const OCTOBER_START = new Date("2026-10-15T00:00:00-04:00");
export const OCTOBER_END = new Date("2026-10-16T00:00:00-04:00");
export const octoberSun = sunOfDay(OCTOBER_START);

/** 15 October 2026 on Cross Mountain, UTC-4, 10 C, 70 % humidity. */
export function octoberDay(site: SlopeSite, cloudShare = 0): SlopeAirDay {
  return slopeAirDay({
    site,
    sun: octoberSun,
    dayStart: OCTOBER_START,
    dayEnd: OCTOBER_END,
    dayOfYear: 288,
    weather: { cloudShare, airTempC: 10, relativeHumidity: 0.7 },
    constants,
  });
}

export function approach(from: number, to: number, use = 1, name?: string): Approach {
  const base = { id: `a-${from}`, bearingsDeg: [from, to] as const, distanceM: [20, 150] as const, use };
  return name ? { ...base, name } : base;
}

/** "HH:MM" at UTC-4. */
export function octoberClock(at: Date): string {
  return new Date(at.getTime() - 4 * 3_600_000).toISOString().slice(11, 16);
}

export function octoberAt(clock: string): Date {
  return new Date(`2026-10-15T${clock}:00-04:00`);
}
