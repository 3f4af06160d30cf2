import type { ElevationGrid } from "../terrain/elevationGrid.ts";

/**
 * Made-up hills on 10 m cells, the same for the same seed: eight octaves of value noise, 100 to 900 m, with the roughness of a
 * survey of ground under trees.
 */
export function benchGround(side: number, seed: number): ElevationGrid {
  const heightsM = new Float32Array(side * side);
  for (let octave = 0; octave < 8; octave++) {
    const waveCells = 400 / 2 ** octave;
    const sizeM = 330 / 2 ** octave;
    for (let row = 0; row < side; row++) {
      const y = row / waveCells;
      const y0 = Math.floor(y);
      const down = smooth(y - y0);
      for (let column = 0; column < side; column++) {
        const x = column / waveCells;
        const x0 = Math.floor(x);
        const right = smooth(x - x0);
        const north = mix(noise(x0, y0, seed + octave), noise(x0 + 1, y0, seed + octave), right);
        const south = mix(noise(x0, y0 + 1, seed + octave), noise(x0 + 1, y0 + 1, seed + octave), right);
        heightsM[row * side + column]! += sizeM * mix(north, south, down);
      }
    }
  }
  for (let at = 0; at < heightsM.length; at++) heightsM[at]! += 150;
  return {
    zone: { number: 32, hemisphere: "N" },
    westM: 500000,
    northM: 5200000,
    cellSizeM: 10,
    rows: side,
    columns: side,
    heightsM,
    filled: null,
    sourceCellM: { eastM: 10, northM: 10 },
    source: { format: "GeoTIFF", voids: 0, filledCells: 0 },
  };
}

/** A number from 0 to 1 for a point of the lattice. */
function noise(x: number, y: number, seed: number): number {
  let mixed = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 4294967296;
}

function smooth(share: number): number {
  return share * share * (3 - 2 * share);
}

function mix(a: number, b: number, share: number): number {
  return a + (b - a) * share;
}
