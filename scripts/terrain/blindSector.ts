/**
 * Width of the sector that the trunk hides from an eye beside it: 2 asin(r / (r + d)). For a round trunk.
 *
 * @param trunkRadiusM   at the height of the eye, over 0
 * @param eyeToBarkM     from the eye to the nearest bark, 0 or more
 * @returns degrees, over 0 to 180
 * @source tangents from a point to a circle
 * @example blindSectorDeg(0.15, 0.45) // 28.96
 */
export function blindSectorDeg(trunkRadiusM: number, eyeToBarkM: number): number {
  if (!(trunkRadiusM > 0 && Number.isFinite(trunkRadiusM))) {
    throw new RangeError(`trunkRadiusM must be over 0, found ${trunkRadiusM}`);
  }
  if (!(eyeToBarkM >= 0)) throw new RangeError(`eyeToBarkM must be 0 or more, found ${eyeToBarkM}`);
  return (2 * Math.asin(trunkRadiusM / (trunkRadiusM + eyeToBarkM)) * 180) / Math.PI;
}
