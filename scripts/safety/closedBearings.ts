import { isInSector } from "../geo/bearings.ts";
import type { NoShootBearings, NoShootSpan } from "../shooting/noShootBearings.ts";
import { NO_BACKSTOP } from "../shooting/noShootBearings.ts";
import { type Check, figure, listed, sentence } from "./check.ts";

export interface ClosedLane {
  id: string;
  /** Whole degrees of the lane. */
  bearingsDeg: readonly number[];
}

/**
 * C3: bearings closed by what is protected within the danger distance. Any closed bearing is a CAUTION, and so is a far road or boundary
 * that is left to a backstop; OK only says that nothing protected is drawn so near. People who are out that day are not in it.
 *
 * @param facts.closed   null = no map features, or no weapon: NOT CHECKED
 */
export function closedBearings(facts: {
  subject: string;
  dangerM: number | null;
  closed: NoShootBearings | null;
  lanes: readonly ClosedLane[];
}): Check {
  const { subject, dangerM, closed, lanes } = facts;
  if (closed === null || dangerM === null) {
    const missing = dangerM === null ? "No weapon is known" : "No map features were given";
    const text = `${missing}: mark the closed bearings on the ground.`;
    return { id: "C3", result: "NOT CHECKED", text, subject, inputs: { dangerM } };
  }
  const spans = closed.spans.filter(({ reason }) => reason !== NO_BACKSTOP);
  const nearestM = least(spans);
  const inputs = {
    dangerM,
    closedSpans: spans.length,
    nearestM,
    leftToBackstop: closed.leftToBackstop.length,
  };
  const others = "seats and ways of others count while in use";
  if (spans.length === 0 && closed.leftToBackstop.length === 0) {
    const text = `Nothing protected is drawn within ${figure(dangerM)} m. ${sentence(others)}`;
    return { id: "C3", result: "OK", text, subject, inputs };
  }
  const words = [
    ...(spans.length === 0 ? [] : [`closed for ${listed(reasonsOf(spans))}${nearWords(nearestM)}`]),
    ...lanes.flatMap((lane) => laneWords(lane, spans)),
    ...closed.leftToBackstop.map(
      ({ reason, distanceM }) => `${reason} at ${figure(distanceM ?? 0)} m left to the ground behind`,
    ),
    others,
  ];
  return { id: "C3", result: "CAUTION", text: words.map(sentence).join(" "), subject, inputs };
}

function nearWords(nearestM: number | null): string {
  return nearestM === null ? "" : `, the nearest at ${figure(Math.floor(nearestM))} m`;
}

function laneWords({ id, bearingsDeg }: ClosedLane, spans: readonly NoShootSpan[]): string[] {
  const inClosed = bearingsDeg.filter((deg) =>
    spans.some(({ fromDeg, toDeg }) => isInSector(deg, fromDeg, toDeg)),
  );
  if (inClosed.length === 0) return [];
  return [`lane ${id} lies ${inClosed.length === bearingsDeg.length ? "wholly" : "in part"} in them`];
}

function reasonsOf(spans: readonly NoShootSpan[]): string[] {
  return [...new Set(spans.map(({ reason }) => reason))];
}

function least(spans: readonly NoShootSpan[]): number | null {
  const distances = spans.flatMap(({ distanceM }) => distanceM ?? []);
  return distances.length === 0 ? null : Math.min(...distances);
}
