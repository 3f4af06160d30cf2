import { isInSector, normalizeDeg } from "../geo/bearings.ts";
import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";
import { type Check, type CheckResult, combined, figure, sentence } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** One seat that is taken in a session. */
export interface TakenSeat {
  hunterId: string;
  hunterName: string;
  siteId: string;
  siteName: string;
  position: Position;
  lanes: readonly { id: string; bearingDeg: number; widthDeg: number }[];
  /** How far a miss may hurt someone; null = weapon not known. */
  dangerM: number | null;
  /** Bullets, not arrows: seats too near together are a caution. Null = weapon not known. */
  isFirearm: boolean | null;
}

/**
 * C24 for each pair of seats of one session: whether one sits in the lane of the other, within the danger distance of his weapon, is a
 * STOP for the pair; else within that distance each is a closed bearing of the other, a CAUTION where no no-fire strip lies between
 * them, or with firearms nearer than `seatsApartM`. An unknown weapon is NOT CHECKED, but for a lane. The subject is the second hunter.
 *
 * @param hasStrip   whether a drawn no-fire strip lies between two seats
 * @param clearM     ground kept clear around a person: a lane that passes nearer holds him
 */
export function partySeparation(
  seats: readonly TakenSeat[],
  hasStrip: (a: TakenSeat, b: TakenSeat) => boolean,
  clearM: number,
  limits: Pick<SafetyLimits, "seatsApartM">,
): Check[] {
  return seats.flatMap((a, at) => seats.slice(at + 1).map((b) => pair(a, b, hasStrip(a, b), clearM, limits)));
}

function pair(
  a: TakenSeat,
  b: TakenSeat,
  hasStrip: boolean,
  clearM: number,
  { seatsApartM }: Pick<SafetyLimits, "seatsApartM">,
): Check {
  const { distanceM, bearingDeg, backBearingDeg } = distanceAndBearing(a.position, b.position);
  const isSame = distanceM < 1;
  const findings: [CheckResult, string][] = [];
  for (const [from, to, toDeg] of [
    [a, b, bearingDeg],
    [b, a, backBearingDeg],
  ] as const) {
    const isReached = from.dangerM === null || distanceM <= from.dangerM;
    const lane = from.lanes.find((one) => isReached && (isSame || holds(one, toDeg, distanceM, clearM)));
    if (lane !== undefined) {
      findings.push(["STOP", `${to.siteName} lies in lane ${lane.id} of ${from.siteName}`]);
    } else if (from.dangerM === null) {
      findings.push(["NOT CHECKED", `the weapon of ${from.hunterName} is not known`]);
    } else if (isReached) {
      findings.push([
        hasStrip ? "OK" : "CAUTION",
        `bearing ${degreesText(toDeg)} from ${from.siteName} is closed`,
      ]);
    }
  }
  const isNear = distanceM < seatsApartM;
  if (isNear && (a.isFirearm !== false || b.isFirearm !== false)) {
    findings.push(["CAUTION", `nearer than ${figure(seatsApartM)} m with firearms`]);
  }
  if (findings.length === 0) findings.push(["OK", "out of danger distance of each other"]);
  if (!hasStrip && findings.some(([result]) => result === "CAUTION")) {
    findings.push(["CAUTION", "no no-fire strip is drawn between them"]);
  }
  return {
    id: "C24",
    result: combined(findings.map(([result]) => result)),
    text: sentence(
      `${a.hunterName} at ${a.siteName} and ${b.hunterName} at ${b.siteName}, ${figure(Math.floor(distanceM))} m apart: ${findings.map(([, words]) => words).join("; ")}`,
    ),
    subject: b.hunterId,
    inputs: {
      apartM: distanceM,
      bearingDeg,
      backBearingDeg,
      with: a.hunterId,
      site: b.siteId,
      otherSite: a.siteId,
      hasStrip,
    },
  };
}

/** Whether a lane, widened by the ground to keep clear, holds a bearing. */
function holds(
  { bearingDeg, widthDeg }: TakenSeat["lanes"][number],
  toDeg: number,
  distanceM: number,
  clearM: number,
): boolean {
  const halfDeg = widthDeg / 2 + (Math.atan(clearM / distanceM) * 180) / Math.PI;
  return (
    halfDeg >= 180 ||
    isInSector(toDeg, normalizeDeg(bearingDeg - halfDeg), normalizeDeg(bearingDeg + halfDeg))
  );
}

function degreesText(bearingDeg: number): string {
  return String(Math.round(bearingDeg) % 360).padStart(3, "0");
}
