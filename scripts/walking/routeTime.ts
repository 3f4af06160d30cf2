import { type ElevationAt, type RoutePoint, type RouteStep, routeSteps } from "./routeSteps.ts";
import { langmuirMin, naismithMin, type ToblerConstants, toblerSpeedKmh } from "./walkingRules.ts";

/** Choices of the walking model, as in data/model.json. Factors multiply the time, `offTrackFactor` the speed. */
export interface WalkingConstants extends ToblerConstants {
  walkStepM: number;
  offTrackFactor: number;
  darkFactor: number;
  loadFactor: number;
  walkSlowFactor: number;
}

export interface RouteRequest {
  points: readonly RoutePoint[];
  /** null without a grid: the points' own heights are then used. */
  elevationAt: ElevationAt | null;
  /** Share walked off the track, 0 to 1. */
  offTrackShare: number;
  isLoaded: boolean;
  isDark: boolean;
  /** Minutes the owner walked, [least, most]: they win over computed ones. */
  ownerMinutes: readonly [number, number] | null;
}

export interface RouteTime {
  /** Distance on the slope; over the map where no heights are known. */
  lengthM: number;
  climbM: number | null;
  fallM: number | null;
  /** [quick, slow], whole minutes, rounded outward; schedules use the slow end. */
  minutes: [number, number] | null;
  minutesSource: "owner" | "computed" | null;
  naismithLangmuirMin: number | null;
  why: Record<string, string>;
}

/**
 * Length, climb, fall and time of a route in steps over the map: Tobler's speed with factors for off track, load and
 * dark, and Naismith with Langmuir's correction beside it, which knows none of these. Does not cover rests, fords, the
 * quiet last stretch or deep snow. Owner's minutes are passed through unchanged, whatever the load or light.
 *
 * @returns climb, fall and computed minutes null with a reason where a height is not known
 * @throws {RangeError} when offTrackShare is not 0 to 1 or the route has fewer than two points
 * @source Tobler 1993; Naismith 1892; Langmuir 1984
 */
export function routeTime(request: RouteRequest, constants: WalkingConstants): RouteTime {
  const { points, elevationAt, offTrackShare, ownerMinutes } = request;
  if (!(offTrackShare >= 0 && offTrackShare <= 1)) {
    throw new RangeError(`offTrackShare must be 0 to 1, found ${offTrackShare}`);
  }
  const steps = routeSteps(points, elevationAt, constants.walkStepM);
  const owner = ownerMinutes === null ? null : ([...ownerMinutes] as [number, number]);
  const sums = sumSteps(steps, constants);
  if (sums === null) {
    const reason = elevationAt
      ? "the route leaves the known ground"
      : "no terrain file and no heights on the route";
    const unknown = { climbM: null, fallM: null, naismithLangmuirMin: null };
    const why = { climbM: reason, fallM: reason, naismithLangmuirMin: reason };
    const lengthM = steps.at(-1)!.alongM;
    if (owner) return { lengthM, ...unknown, minutes: owner, minutesSource: "owner", why };
    return {
      lengthM,
      ...unknown,
      minutes: null,
      minutesSource: null,
      why: { ...why, minutes: reason, minutesSource: reason },
    };
  }
  const { toblerMin, ...found } = sums;
  if (owner) return { ...found, minutes: owner, minutesSource: "owner", why: {} };
  const quickMin = toblerMin * timeFactor(request, constants);
  const minutes: [number, number] = [Math.floor(quickMin), Math.ceil(quickMin * constants.walkSlowFactor)];
  return { ...found, minutes, minutesSource: "computed", why: {} };
}

function timeFactor({ offTrackShare, isLoaded, isDark }: RouteRequest, constants: WalkingConstants): number {
  const ground = 1 - offTrackShare + offTrackShare / constants.offTrackFactor;
  return ground * (isLoaded ? constants.loadFactor : 1) * (isDark ? constants.darkFactor : 1);
}

function sumSteps(steps: readonly RouteStep[], constants: WalkingConstants) {
  const sums = { lengthM: 0, climbM: 0, fallM: 0, naismithLangmuirMin: 0, toblerMin: 0 };
  for (let at = 1; at < steps.length; at++) {
    const from = steps[at - 1]!;
    const to = steps[at]!;
    if (from.elevationM === null || to.elevationM === null) return null;
    const runM = to.alongM - from.alongM;
    const riseM = to.elevationM - from.elevationM;
    sums.lengthM += Math.hypot(runM, riseM);
    sums.climbM += Math.max(0, riseM);
    sums.fallM += Math.max(0, -riseM);
    sums.naismithLangmuirMin += naismithMin(runM, Math.max(0, riseM)) + langmuirMin(riseM, runM);
    sums.toblerMin += (runM / 1000 / toblerSpeedKmh(riseM / runM, constants)) * 60;
  }
  return sums;
}
