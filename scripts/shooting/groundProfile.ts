/**
 * Ground height at a place: metres east and north (true) of the seat. Null where it is not known.
 */
export type HeightAt = (eastM: number, northM: number) => number | null;

/** Ground heights along one bearing from a seat, straight between samples; NaN where the ground is not known. */
export interface GroundProfile {
  stepM: number;
  /** At 0, one step, two steps ... */
  heightsM: Float64Array;
}

/**
 * Ground along a true bearing out to a distance or a little beyond it.
 *
 * @throws {RangeError} when the step or the reach is not over 0
 */
export function groundProfile(
  heightAt: HeightAt,
  bearingDeg: number,
  reachM: number,
  stepM: number,
): GroundProfile {
  if (!(stepM > 0)) throw new RangeError(`stepM must be over 0, found ${stepM}`);
  if (!(reachM > 0)) throw new RangeError(`reachM must be over 0, found ${reachM}`);
  const east = Math.sin((bearingDeg * Math.PI) / 180);
  const north = Math.cos((bearingDeg * Math.PI) / 180);
  const heightsM = new Float64Array(Math.ceil(reachM / stepM) + 2);
  for (let at = 0; at < heightsM.length; at++) {
    heightsM[at] = heightAt(east * at * stepM, north * at * stepM) ?? Number.NaN;
  }
  return { stepM, heightsM };
}

/** Height of the ground at a distance along the profile; NaN where it is not known or beyond its end. */
export function profileHeightM({ stepM, heightsM }: GroundProfile, distanceM: number): number {
  const place = distanceM / stepM;
  const before = Math.floor(place);
  const share = place - before;
  const heightM = heightsM[before] ?? Number.NaN;
  if (share === 0) return heightM;
  return heightM + ((heightsM[before + 1] ?? Number.NaN) - heightM) * share;
}
