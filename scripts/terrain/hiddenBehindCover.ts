export type HiddenGround = { hiddenM: number; why: null } | { hiddenM: null; why: string };

/**
 * How far level ground is hidden behind cover: cover height x distance / (eye height - cover height). Heights over the same level
 * ground; says nothing about ground that rises or falls, nor about what shows through the cover.
 *
 * @returns metres behind the cover, 0 or more; null when the eye is not higher than the cover, which then hides all
 * @source similar triangles
 * @example hiddenBehindCover(6, 1.5, 60) // 20 m: 1.5 x 60 / 4.5
 */
export function hiddenBehindCover(eyeHeightM: number, coverHeightM: number, distanceM: number): HiddenGround {
  assertNotNegative("eyeHeightM", eyeHeightM);
  assertNotNegative("coverHeightM", coverHeightM);
  assertNotNegative("distanceM", distanceM);
  if (coverHeightM === 0) return { hiddenM: 0, why: null };
  if (eyeHeightM <= coverHeightM) return { hiddenM: null, why: "the eye is not higher than the cover" };
  return { hiddenM: (coverHeightM * distanceM) / (eyeHeightM - coverHeightM), why: null };
}

/** Cover on a lane and what is to be seen behind it; heights over the same level ground. */
export interface CoverOnLane {
  coverHeightM: number;
  coverDistanceM: number;
  targetDistanceM: number;
  targetHeightM: number;
}

/**
 * Least height of a platform from which a target behind cover shows over it.
 *
 * @param eyeOverPlatformM   height of the eye over the platform
 * @returns metres over level ground, 0 when the eye of a person on the ground sees it
 * @throws {RangeError} when the target does not lie behind the cover
 * @source similar triangles; inverse of {@link hiddenBehindCover}
 * @example 1.5 m of cover at 60 m, ground at 80 m, eye 1.2 m over the platform: (1.5 x 80 - 0 x 60) / 20 - 1.2 = 4.8 m
 */
export function leastPlatformHeightM(lane: CoverOnLane, eyeOverPlatformM: number): number {
  const { coverHeightM, coverDistanceM, targetDistanceM, targetHeightM } = lane;
  assertNotNegative("coverHeightM", coverHeightM);
  assertNotNegative("coverDistanceM", coverDistanceM);
  assertNotNegative("targetHeightM", targetHeightM);
  assertNotNegative("eyeOverPlatformM", eyeOverPlatformM);
  if (!(targetDistanceM > coverDistanceM && Number.isFinite(targetDistanceM))) {
    throw new RangeError(`targetDistanceM must be over ${coverDistanceM}, found ${targetDistanceM}`);
  }
  const eyeM =
    (coverHeightM * targetDistanceM - targetHeightM * coverDistanceM) / (targetDistanceM - coverDistanceM);
  return Math.max(0, eyeM - eyeOverPlatformM);
}

function assertNotNegative(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new RangeError(`${name} must be 0 or more, found ${value}`);
}
