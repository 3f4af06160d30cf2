/**
 * The same direction as a bearing 0 <= x < 360.
 *
 * @throws {RangeError} when the bearing is not a finite number
 * @example normalizeDeg(-1) // 359
 */
export function normalizeDeg(bearingDeg: number): number {
  if (!Number.isFinite(bearingDeg))
    throw new RangeError(`bearingDeg must be a finite number, found ${bearingDeg}`);
  return ((bearingDeg % 360) + 360) % 360;
}

/**
 * The shorter turn from bearing a to bearing b, -180 < x <= 180: positive when b lies clockwise of a.
 *
 * @example signedDifferenceDeg(350, 10) // 20
 */
export function signedDifferenceDeg(a: number, b: number): number {
  const turn = normalizeDeg(b - a);
  return turn > 180 ? turn - 360 : turn;
}

/**
 * Width of the sector that runs clockwise from one bearing to another, 0 to 360. Equal bearings give 0; a whole turn
 * written out (0 to 360) gives 360, so that it can not shrink to nothing.
 *
 * @example sectorWidthDeg(350, 10) // 20
 */
export function sectorWidthDeg(fromDeg: number, toDeg: number): number {
  return Math.abs(toDeg - fromDeg) >= 360 ? 360 : normalizeDeg(toDeg - fromDeg);
}

const ROUNDING_DEG = 1e-9; // what arithmetic on bearings can lose; a bearing on an edge must not fall out by it

/**
 * Whether a bearing lies in the sector that runs clockwise from one bearing to another, both ends included (and 1e-9
 * degrees beyond them).
 *
 * @example isInSector(0, 350, 10) // true
 */
export function isInSector(bearingDeg: number, fromDeg: number, toDeg: number): boolean {
  const clockwiseOfStartDeg = normalizeDeg(bearingDeg - fromDeg);
  return (
    clockwiseOfStartDeg <= sectorWidthDeg(fromDeg, toDeg) + ROUNDING_DEG ||
    clockwiseOfStartDeg >= 360 - ROUNDING_DEG
  );
}
