import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";

/** A point of a route; `elevationM` where the owner or a track gives it. */
export interface RoutePoint extends Position {
  elevationM?: number | null | undefined;
}

/** Ground height at a position, metres; null where it is not known. */
export type ElevationAt = (position: Position) => number | null;

/** A point every `stepM` along a route and at its end. */
export interface RouteStep extends Position {
  /** Distance from the start over the map. */
  alongM: number;
  elevationM: number | null;
}

/**
 * A route cut into equal steps over the map, so that a track with a point every metre is not steeper than its ground.
 * The last step is the rest. Heights come from the ground where it is given, else between the heights of the points.
 *
 * @param elevationAt   null without a grid
 * @throws {RangeError} with fewer than two points or a step that is not above 0
 */
export function routeSteps(
  points: readonly RoutePoint[],
  elevationAt: ElevationAt | null,
  stepM: number,
): RouteStep[] {
  if (points.length < 2) throw new RangeError(`a route needs at least 2 points, found ${points.length}`);
  if (!(stepM > 0)) throw new RangeError(`stepM must be above 0, found ${stepM}`);
  const steps: RouteStep[] = [];
  let startM = 0;
  let nextM = 0;
  for (let leg = 1; leg < points.length; leg++) {
    const from = points[leg - 1]!;
    const to = points[leg]!;
    const { distanceM } = distanceAndBearing(from, to);
    while (nextM <= startM + distanceM && distanceM > 0) {
      steps.push(stepAt(from, to, (nextM - startM) / distanceM, nextM, elevationAt));
      nextM += stepM;
    }
    startM += distanceM;
  }
  const last = points.at(-1)!;
  const rest = startM - (steps.at(-1)?.alongM ?? 0);
  if (rest > 1e-6 || steps.length === 0) steps.push(stepAt(last, last, 0, startM, elevationAt));
  return steps;
}

function stepAt(
  from: RoutePoint,
  to: RoutePoint,
  share: number,
  alongM: number,
  elevationAt: ElevationAt | null,
): RouteStep {
  const eastDeg = shortWayDeg(to.lon - from.lon); // a route may pass the date line
  const lon =
    Math.abs(from.lon + share * eastDeg) > 180
      ? shortWayDeg(from.lon + share * eastDeg)
      : from.lon + share * eastDeg;
  const position = { lat: from.lat + share * (to.lat - from.lat), lon };
  return { ...position, alongM, elevationM: elevationAt ? elevationAt(position) : between(from, to, share) };
}

function between(from: RoutePoint, to: RoutePoint, share: number): number | null {
  const [start, end] = [from.elevationM ?? null, to.elevationM ?? null];
  if (start === null || end === null) return null;
  return start + share * (end - start);
}

function shortWayDeg(differenceDeg: number): number {
  return ((((differenceDeg + 180) % 360) + 360) % 360) - 180;
}
