import type { EnsembleMember } from "./ensembleMembers.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { earthSunFactor } from "./radiation.ts";
import type { SkyCases } from "./skyCases.ts";
import { emptySunSamples, fillSunSample, SUN, type SunSamples, type SunSampling } from "./sunSamples.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
// Read once: an imported object in the inner loop costs three times the work itself.
const SUN_STRIDE = SUN.stride;
const SUN_EAST = SUN.east;
const SUN_NORTH = SUN.north;
const SUN_UP = SUN.up;
const SUN_CLEARANCE = SUN.clearanceDeg;
const SUN_BEAM = SUN.beamWm2;
const SUN_DIFFUSE = SUN.diffuseWm2;
const RISE = 1;
const FALL = 2;

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
  const limits = limitsOf(series);
  const states = new Uint8Array(count);
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
    for (let m = 0; m < count; m++) {
      const state = driveState(samples, own, packed, m, packedCases, limits);
      if (state === states[m]) continue;
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

/** Clear-sky beam on a member's slope, W/m2. */
export function directWm2(samples: SunSamples, index: number, packed: Float64Array, member: number): number {
  const s = index * SUN_STRIDE;
  const p = member * MEMBER.stride;
  if ((samples[s + SUN_CLEARANCE] as number) < (packed[p + MEMBER.horizonShiftDeg] as number)) return 0;
  const incidence =
    (packed[p + MEMBER.normalEast] as number) * (samples[s + SUN_EAST] as number) +
    (packed[p + MEMBER.normalNorth] as number) * (samples[s + SUN_NORTH] as number) +
    (packed[p + MEMBER.normalUp] as number) * (samples[s + SUN_UP] as number);
  if (incidence <= 0) return 0;
  return (samples[s + SUN_BEAM + (packed[p + MEMBER.airCase] as number)] as number) * incidence;
}

/** Clear-sky net radiation of a member's slope, W/m2, for its clear-sky beam. */
export function clearNetWm2(
  samples: SunSamples,
  index: number,
  packed: Float64Array,
  member: number,
  direct: number,
  clearCoolingWm2: number,
  albedo: number,
): number {
  const p = member * MEMBER.stride;
  const skyShare = packed[p + MEMBER.skyShare] as number;
  const airCase = packed[p + MEMBER.airCase] as number;
  const sunshine = direct + skyShare * (samples[index * SUN_STRIDE + SUN_DIFFUSE + airCase] as number);
  return (1 - albedo) * sunshine - clearCoolingWm2 * (packed[p + MEMBER.longwaveFactor] as number) * skyShare;
}

/** Where each number of a member stands in its packed row. */
const MEMBER = {
  stride: 10,
  normalEast: 0,
  normalNorth: 1,
  normalUp: 2,
  skyShare: 3,
  longwaveFactor: 4,
  riseNetWm2: 5,
  fallNetWm2: 6,
  horizonShiftDeg: 7,
  cloudCase: 8,
  airCase: 9,
} as const;

/** The members as one row of numbers each: the inner loop runs ten times faster on them than on objects. */
export function packedMembers(members: readonly EnsembleMember[]): Float64Array {
  return Float64Array.from(
    members.flatMap((m) => [
      ...[m.normalEast, m.normalNorth, m.normalUp, m.skyShare, m.longwaveFactor],
      ...[m.riseNetWm2, m.fallNetWm2, m.horizonShiftDeg, m.cloudCase, m.airCase],
    ]),
  );
}

/** Cooling of flat ground, then three cloud shares, three global shares, three cooling shares. */
function packedSky(cases: SkyCases): Float64Array {
  return Float64Array.of(
    cases.clearCoolingWm2,
    ...cases.cloudShare,
    ...cases.globalShare,
    ...cases.coolingShare,
  );
}

function limitsOf(series: DriveSeries): Float64Array {
  const { sunOffDirectWm2, coolingShareMin } = series.constants;
  return Float64Array.of(series.albedo, sunOffDirectWm2, coolingShareMin);
}

function driveState(
  samples: SunSamples,
  index: number,
  packed: Float64Array,
  member: number,
  sky: Float64Array,
  limits: Float64Array,
): number {
  const albedo = limits[0] as number;
  const p = member * MEMBER.stride;
  const direct = directWm2(samples, index, packed, member);
  const clearNet = clearNetWm2(samples, index, packed, member, direct, sky[0] as number, albedo);
  const cloudCase = packed[p + MEMBER.cloudCase] as number;
  const coolingShare = sky[7 + cloudCase] as number;
  if (direct < (limits[1] as number)) {
    const isCool = clearNet <= (packed[p + MEMBER.fallNetWm2] as number);
    return isCool && coolingShare >= (limits[2] as number) ? FALL : 0;
  }
  const riseNet = packed[p + MEMBER.riseNetWm2] as number;
  if (clearNet < riseNet) return 0;
  const sunLeft = 1 - (sky[1 + cloudCase] as number);
  if (sunLeft === 1) return RISE;
  const s = index * SUN_STRIDE;
  const airCase = packed[p + MEMBER.airCase] as number;
  const skyShare = packed[p + MEMBER.skyShare] as number;
  const beamFlat = (samples[s + SUN_BEAM + airCase] as number) * (samples[s + SUN_UP] as number);
  const diffuse = samples[s + SUN_DIFFUSE + airCase] as number;
  const global = (beamFlat + diffuse) * (sky[4 + cloudCase] as number);
  const sunshine = direct * sunLeft + skyShare * Math.max(0, global - beamFlat * sunLeft);
  const loss = (sky[0] as number) * (packed[p + MEMBER.longwaveFactor] as number) * skyShare * coolingShare;
  return (1 - albedo) * sunshine - loss >= riseNet ? RISE : 0;
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
