/**
 * Smooth noise from -1 to 1 over the plane: a hashed value at each whole point, eased between them.
 *
 * @param seed   whole number; another seed gives another pattern
 */
export function valueNoise(x: number, y: number, seed: number): number {
  const west = Math.floor(x);
  const south = Math.floor(y);
  const east = ease(x - west);
  const north = ease(y - south);
  const lower = mix(latticeValue(west, south, seed), latticeValue(west + 1, south, seed), east);
  const upper = mix(latticeValue(west, south + 1, seed), latticeValue(west + 1, south + 1, seed), east);
  return mix(lower, upper, north);
}

/** A share 0 <= x < 1 that depends on the three whole numbers alone and looks random. */
export function hashShare(a: number, b: number, seed: number): number {
  let hash = Math.imul(a, 374761393) ^ Math.imul(b, 668265263) ^ Math.imul(seed, 1274126177);
  hash = Math.imul(hash ^ (hash >>> 15), 2246822519);
  hash = Math.imul(hash ^ (hash >>> 13), 3266489917);
  return ((hash ^ (hash >>> 16)) >>> 0) / 2 ** 32;
}

function latticeValue(x: number, y: number, seed: number): number {
  return 2 * hashShare(x, y, seed) - 1;
}

function ease(share: number): number {
  return share * share * (3 - 2 * share);
}

function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}
