import type { EnsembleMember } from "./ensembleMembers.ts";
import { driveLimits, driveState, driveStates, FALL, packedMembers, packedSky, RISE } from "./memberDrive.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { earthSunFactor } from "./radiation.ts";
import type { SkyCases } from "./skyCases.ts";
import {
  altitudeDegAt,
  clearanceDegAt,
  emptySunSamples,
  fillSunSample,
  SUN,
  type SunSampling,
} from "./sunSamples.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** So much higher than the skyline no minute of a step can be under it: the sun sinks at most 1.3 deg in 5 min. */
const CLEAR_MARGIN_DEG = 2;

/** A stretch of time that is stepped through, with everything that acts on the air in it. */
export interface DriveSeries {
  startMs: number;
  minutes: number;
  /** 1: every minute is looked at; 5: every fifth, and the minutes of a step where something may change in it. */
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
 * shaded, clear-sky net radiation is low and the sky is not overcast. Exact to the minute: the minutes of a step are
 * looked at where a state or the weather changes in it, or the sun crosses the skyline, if only for a minute.
 *
 * @param seesEveryShadow  false: a shadow or a beam that comes and goes inside one step is passed over
 */
export function driveChanges(series: DriveSeries, seesEveryShadow = true): DriveChanges[] {
  const { stepMin, startMs, sky, sampling, members } = series;
  const changes = members.map((): DriveChanges => ({ rise: [], fall: [], riseCloud: [], fallCloud: [] }));
  const packed = packedMembers(members);
  const limits = driveLimits(series.albedo, series.constants);
  const states = new Uint8Array(members.length);
  const statesNow = new Uint8Array(members.length);
  // The minutes of a step; the last of them is the step's own.
  const samples = emptySunSamples(stepMin);
  const own = stepMin - 1;
  const skyline = skylineWatch(series);
  let row = 0;
  let lastRow = -1;
  let wasUp = true;
  let sunFactor = 1;
  let nextDayMs = Number.NEGATIVE_INFINITY;
  const packedRows = sky.map(packedSky);
  for (let minute = 0; minute <= series.minutes; minute += stepMin) {
    const atMs = startMs + minute * MINUTE_MS;
    row = rowAt(sky, atMs, row);
    const isNewRow = row !== lastRow;
    if (atMs >= nextDayMs) {
      sunFactor = sunFactorAt(series, atMs);
      nextDayMs = series.dayStartMs + (Math.floor((atMs - series.dayStartMs) / DAY_MS) + 1) * DAY_MS;
    }
    const isUp = fillSunSample(samples, own, atMs, sunFactor, sampling);
    if (!isUp && !wasUp && !isNewRow) continue;
    const isFirst = minute === 0;
    const isAnyMinute =
      (seesEveryShadow && skyline.isCrossed(samples[own * SUN.stride + SUN.clearanceDeg] as number, atMs)) ||
      (isNewRow && own > 0);
    driveStates(samples, own, packed, packedRows[row] as Float64Array, limits, statesNow);
    let isFilled = isFirst;
    for (let m = 0; m < members.length; m++) {
      if (statesNow[m] === states[m] && !isAnyMinute) continue;
      if (!isFilled) {
        for (let k = 0; k < own; k++) {
          const ms = atMs + (k - own) * MINUTE_MS;
          fillSunSample(samples, k, ms, sunFactorAt(series, ms), sampling);
        }
        isFilled = true;
      }
      const { cloudCase } = members[m] as EnsembleMember;
      let rowOfMinute = Math.max(0, lastRow);
      for (let k = isFirst ? own : 0; k <= own; k++) {
        rowOfMinute = rowAt(sky, atMs + (k - own) * MINUTE_MS, rowOfMinute);
        const packedCases = packedRows[rowOfMinute] as Float64Array;
        const inStep = driveState(samples, k, packed, m, packedCases, limits);
        const cloud = (sky[rowOfMinute] as SkyCases).cloudShare[cloudCase];
        record(changes[m] as DriveChanges, states[m] as number, inStep, minute + k - own, cloud);
        states[m] = inStep;
      }
    }
    wasUp = isUp;
    lastRow = row;
  }
  return changes;
}

function rowAt(sky: readonly SkyCases[], atMs: number, fromRow: number): number {
  let row = fromRow;
  while (row + 1 < sky.length && (sky[row + 1] as SkyCases).fromMs <= atMs) row++;
  return row;
}

/** Tells, step after step, whether the sun crosses the skyline of any member inside a step. */
function skylineWatch(series: DriveSeries): {
  isCrossed: (clearanceDeg: number, atMs: number) => boolean;
} {
  const { sampling, stepMin } = series;
  const shiftsDeg = [...new Set(series.members.map((member) => member.horizonShiftDeg))];
  const clearFromDeg = sampling.skylineRangeDeg[1] + Math.max(...shiftsDeg) + CLEAR_MARGIN_DEG;
  const sideOf = (clearanceDeg: number): number => {
    let side = 0;
    for (const shiftDeg of shiftsDeg) if (clearanceDeg >= shiftDeg) side++;
    return side;
  };
  let sideBefore = 0;
  return {
    isCrossed(clearanceDeg, atMs) {
      const side = sideOf(clearanceDeg);
      const isOther = side !== sideBefore;
      sideBefore = side;
      if (isOther || stepMin === 1) return isOther;
      if (altitudeDegAt(atMs, sampling) > clearFromDeg) return false;
      for (let back = 1; back < stepMin; back++) {
        if (sideOf(clearanceDegAt(atMs - back * MINUTE_MS, sampling)) !== side) return true;
      }
      return false;
    },
  };
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
