import type { EnsembleMember } from "./ensembleMembers.ts";
import { driveLimits, driveState, driveStates, FALL, packedMembers, packedSky, RISE } from "./memberDrive.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { earthSunFactor } from "./radiation.ts";
import type { SkyCases } from "./skyCases.ts";
import { emptySunSamples, fillSunSample, type SunSampling } from "./sunSamples.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/** A stretch of time that is stepped through, with everything that acts on the air in it. */
export interface DriveSeries {
  startMs: number;
  minutes: number;
  /** 1: every minute is looked at; 5: every fifth, and the minutes of a step only where something changes in it. */
  stepMin: number;
  /** Day of the year at `dayStartMs`; the days before and after count on from it. */
  dayOfYear: number;
  dayStartMs: number;
  albedo: number;
  sampling: SunSampling;
  sky: readonly SkyCases[];
  members: readonly EnsembleMember[];
  constants: ModelConstants;
}

/** For one member, the minutes from the start at which each drive begins and ends, in turn: on, off, on ... */
export interface DriveChanges {
  rise: number[];
  fall: number[];
  /** Cloud share of the member at each beginning, in the same order. */
  riseCloud: number[];
  fallCloud: number[];
}

/**
 * When the drives of rising and falling air begin and end, for every member. Rising is driven while net radiation,
 * clear and clouded, and the clear-sky beam on the slope are over their thresholds; falling while the slope is
 * shaded, clear-sky net radiation is low and the sky is not overcast. Exact to the minute.
 */
export function driveChanges(series: DriveSeries): DriveChanges[] {
  const { stepMin, startMs, sky, sampling } = series;
  const count = series.members.length;
  const changes = series.members.map(
    (): DriveChanges => ({ rise: [], fall: [], riseCloud: [], fallCloud: [] }),
  );
  const packed = packedMembers(series.members);
  const limits = driveLimits(series.albedo, series.constants);
  const states = new Uint8Array(count);
  const statesNow = new Uint8Array(count);
  // The minutes of a step; the last of them is the step's own.
  const samples = emptySunSamples(stepMin);
  const own = stepMin - 1;
  let row = 0;
  let lastRow = -1;
  let wasUp = true;
  let sunFactor = 1;
  let nextDayMs = Number.NEGATIVE_INFINITY;
  let packedCases = packedSky(sky[0] as SkyCases);
  for (let minute = 0; minute <= series.minutes; minute += stepMin) {
    const atMs = startMs + minute * MINUTE_MS;
    while (row + 1 < sky.length && (sky[row + 1] as SkyCases).fromMs <= atMs) row++;
    const cases = sky[row] as SkyCases;
    if (row !== lastRow) packedCases = packedSky(cases);
    if (atMs >= nextDayMs) {
      sunFactor = sunFactorAt(series, atMs);
      nextDayMs = series.dayStartMs + (Math.floor((atMs - series.dayStartMs) / DAY_MS) + 1) * DAY_MS;
    }
    const isUp = fillSunSample(samples, own, atMs, sunFactor, sampling);
    if (!isUp && !wasUp && row === lastRow) continue;
    let isFilled = minute === 0;
    driveStates(samples, own, packed, packedCases, limits, statesNow);
    for (let m = 0; m < count; m++) {
      if (statesNow[m] === states[m]) continue;
      const change = changes[m] as DriveChanges;
      const cloud = cases.cloudShare[(series.members[m] as EnsembleMember).cloudCase];
      if (!isFilled) {
        for (let k = 0; k < own; k++) {
          const ms = atMs + (k - own) * MINUTE_MS;
          fillSunSample(samples, k, ms, sunFactor, sampling);
        }
        isFilled = true;
      }
      for (let k = minute === 0 ? own : 0; k <= own; k++) {
        const inStep = driveState(samples, k, packed, m, packedCases, limits);
        record(change, states[m] as number, inStep, minute + k - own, cloud);
        states[m] = inStep;
      }
    }
    wasUp = isUp;
    lastRow = row;
  }
  return changes;
}

/** The earth-sun factor at an instant of the series. */
export function sunFactorAt(series: DriveSeries, atMs: number): number {
  return earthSunFactor(series.dayOfYear + Math.floor((atMs - series.dayStartMs) / DAY_MS), series.constants);
}

function record(change: DriveChanges, before: number, after: number, minute: number, cloud: number): void {
  const changed = before ^ after;
  if (changed & RISE) {
    change.rise.push(minute);
    if (after & RISE) change.riseCloud.push(cloud);
  }
  if (changed & FALL) {
    change.fall.push(minute);
    if (after & FALL) change.fallCloud.push(cloud);
  }
}
