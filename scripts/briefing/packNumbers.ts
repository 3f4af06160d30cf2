/** The precisions of pack.json: angles 3 decimals, positions 6, metres 1, metres a second 2, shares 4. */

export const packAngle = (deg: number): number => rounded(deg, 3);
export const packMetres = (m: number): number => rounded(m, 1);
export const packSpeed = (mps: number): number => rounded(mps, 2);
export const packShare = (share: number): number => Math.min(1, Math.max(0, rounded(share, 4)));

/** A bearing, 0 <= x < 360 also after rounding. */
export function packBearing(deg: number): number {
  const turned = rounded(((deg % 360) + 360) % 360, 3);
  return turned >= 360 ? 0 : turned;
}

/** A position, -180 <= lon < 180 also after rounding. */
export function packPosition(position: { lat: number; lon: number }): { lat: number; lon: number } {
  const lon = rounded(position.lon, 6);
  return { lat: rounded(position.lat, 6), lon: lon >= 180 ? -180 : lon };
}

/** Rounds half away from zero and never returns minus zero. */
export function rounded(value: number, decimals: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`a number of a pack must be finite, found ${value}`);
  const scale = 10 ** decimals;
  const result = (Math.sign(value) * Math.round(Math.abs(value) * scale)) / scale;
  return result === 0 ? 0 : result;
}
