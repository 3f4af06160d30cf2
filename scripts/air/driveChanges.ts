import type { EnsembleMember } from "./ensembleMembers.ts";
import type { ModelConstants } from "./modelConstants.ts";
import { earthSunFactor } from "./radiation.ts";
import type { SkyCases } from "./skyCases.ts";
import { emptySunSamples, fillSunSample, type SunSamples, type SunSampling } from "./sunSamples.ts";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
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
  const { members, stepMin, startMs, sky } = series;
  const changes = members.map((): DriveChanges => ({ rise: [], fall: [], riseCloud: [], fallCloud: [] }));
  const states = new Uint8Array(members.length);
  const samples = emptySunSamples(1);
  const between = emptySunSamples(stepMin);
  let row = 0;
  let lastRow = -1;
  let wasUp = true;
  for (let minute = 0; minute <= series.minutes; minute += stepMin) {
    const atMs = startMs + minute * MINUTE_MS;
    while (row + 1 < sky.length && (sky[row + 1] as SkyCases).fromMs <= atMs) row++;
    const cases = sky[row] as SkyCases;
    const isUp = fillSunSample(samples, 0, atMs, sunFactorAt(series, atMs), series.sampling);
    if (!isUp && !wasUp && row === lastRow) continue;
    let isBetweenFilled = minute === 0 || stepMin === 1;
    for (let m = 0; m < members.length; m++) {
      const member = members[m] as EnsembleMember;
      const state = driveState(samples, 0, member, cases, series);
      if (state === states[m]) continue;
      const change = changes[m] as DriveChanges;
      const cloud = cases.cloudShare[member.cloudCase];
      if (minute > 0 && stepMin > 1) {
        if (!isBetweenFilled) {
          for (let k = 1; k < stepMin; k++) {
            const ms = atMs + (k - stepMin) * MINUTE_MS;
            fillSunSample(between, k, ms, sunFactorAt(series, ms), series.sampling);
          }
          isBetweenFilled = true;
        }
        for (let k = 1; k < stepMin; k++) {
          const inStep = driveState(between, k, member, cases, series);
          record(change, states[m] as number, inStep, minute + k - stepMin, cloud);
          states[m] = inStep;
        }
      }
      record(change, states[m] as number, state, minute, cloud);
      states[m] = state;
    }
    wasUp = isUp;
    lastRow = row;
  }
  return changes;
}

/** The earth-sun factor at an instant of the series. */
export function sunFactorAt(series: DriveSeries, atMs: number): number {
  const day = series.dayOfYear + Math.floor((atMs - series.dayStartMs) / DAY_MS);
  return earthSunFactor(day, series.constants);
}

/** Clear-sky beam on a member's slope, W/m2. */
export function directWm2(samples: SunSamples, index: number, member: EnsembleMember): number {
  if ((samples.clearanceDeg[index] as number) < member.horizonShiftDeg) return 0;
  const incidence =
    member.normalEast * (samples.east[index] as number) +
    member.normalNorth * (samples.north[index] as number) +
    member.normalUp * (samples.up[index] as number);
  return incidence > 0 ? (samples.beamWm2[member.airCase][index] as number) * incidence : 0;
}

/** Clear-sky net radiation of a member's slope, W/m2, for its clear-sky beam. */
export function clearNetWm2(
  samples: SunSamples,
  index: number,
  member: EnsembleMember,
  direct: number,
  cases: SkyCases,
  albedo: number,
): number {
  const sunshine = direct + member.skyShare * (samples.diffuseWm2[member.airCase][index] as number);
  return (1 - albedo) * sunshine - cases.clearCoolingWm2 * member.longwaveFactor * member.skyShare;
}

function driveState(
  samples: SunSamples,
  index: number,
  member: EnsembleMember,
  cases: SkyCases,
  series: DriveSeries,
): number {
  const { constants, albedo } = series;
  const direct = directWm2(samples, index, member);
  const clearNet = clearNetWm2(samples, index, member, direct, cases, albedo);
  const coolingShare = cases.coolingShare[member.cloudCase];
  if (direct < constants.sunOffDirectWm2) {
    return clearNet <= member.fallNetWm2 && coolingShare >= constants.coolingShareMin ? FALL : 0;
  }
  if (clearNet < member.riseNetWm2) return 0;
  const sunLeft = 1 - cases.cloudShare[member.cloudCase];
  const beamFlat = (samples.beamWm2[member.airCase][index] as number) * (samples.up[index] as number);
  const global =
    (beamFlat + (samples.diffuseWm2[member.airCase][index] as number)) * cases.globalShare[member.cloudCase];
  const sunshine = direct * sunLeft + member.skyShare * Math.max(0, global - beamFlat * sunLeft);
  const loss = cases.clearCoolingWm2 * member.longwaveFactor * member.skyShare * coolingShare;
  return (1 - albedo) * sunshine - loss >= member.riseNetWm2 ? RISE : 0;
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
