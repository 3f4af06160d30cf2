import type { ElevationGrid } from "./elevationGrid.ts";

/** Where the light of a shaded map comes from. */
export interface ShadingLight {
  /** Grid bearing of the light. */
  azimuthDeg: number;
  /** Over the horizon, 0 to 90. */
  altitudeDeg: number;
  /** Heights are taken this many times as large. */
  exaggeration: number;
}

export interface GroundForm {
  slopeDeg: Float32Array;
  /** From grid north; NaN on ground too flat to face anywhere. */
  aspectGridDeg: Float32Array;
  /** 1 (facing away) to 255 (facing the light); 0 on the border and beside voids. */
  grey: Uint8Array;
}

const DEG = 180 / Math.PI;

/**
 * Slope, aspect and shading of every cell in one pass over the heights, row-major like the grid. Slope and aspect are NaN on the
 * border and beside voids; the exaggeration does not touch them.
 *
 * @param aspectFromSlopeDeg  under this slope the aspect is NaN
 * @source B. K. P. Horn, "Hill shading and the reflectance map", Proceedings of the IEEE 69 (1981), 14-47
 */
export function groundForm(grid: ElevationGrid, aspectFromSlopeDeg: number, light: ShadingLight): GroundForm {
  const cells = grid.heightsM.length;
  const form = {
    slopeDeg: new Float32Array(cells),
    aspectGridDeg: new Float32Array(cells),
    grey: new Uint8Array(cells),
  };
  hornPass(grid, light, aspectFromSlopeDeg, form.slopeDeg, form.aspectGridDeg, form.grey);
  return form;
}

/**
 * Relief lit from one side, without cast shadows: 1 to 255, and 0 on the border and beside voids, row-major.
 *
 * @source Horn (1981), as {@link groundForm}
 * @example flat ground under a light at 45 degrees is 1 + 254 sin 45 = 181
 */
export function reliefShading(grid: ElevationGrid, light: ShadingLight): Uint8Array {
  const grey = new Uint8Array(grid.heightsM.length);
  hornPass(grid, light, 0, null, null, grey);
  return grey;
}

/** One pass of Horn's differences; the sums of a column serve three windows, so that each cell reads three heights. */
function hornPass(
  grid: ElevationGrid,
  light: ShadingLight,
  aspectFromSlopeDeg: number,
  slopeDeg: Float32Array | null,
  aspectGridDeg: Float32Array | null,
  grey: Uint8Array,
): void {
  const { azimuthDeg, altitudeDeg, exaggeration } = light;
  if (!(altitudeDeg >= 0 && altitudeDeg <= 90)) {
    throw new RangeError(`altitudeDeg must be 0 to 90, found ${altitudeDeg}`);
  }
  if (!Number.isFinite(azimuthDeg)) throw new RangeError(`azimuthDeg must be finite, found ${azimuthDeg}`);
  const { rows, columns, heightsM: z, cellSizeM } = grid;
  const perCell = 1 / (8 * cellSizeM);
  const up = 254 * Math.sin(altitudeDeg / DEG);
  const lightEast = 254 * Math.cos(altitudeDeg / DEG) * Math.sin(azimuthDeg / DEG) * exaggeration;
  const lightSouth = -254 * Math.cos(altitudeDeg / DEG) * Math.cos(azimuthDeg / DEG) * exaggeration;
  const exaggeration2 = exaggeration * exaggeration;
  for (const edge of slopeDeg === null ? [] : [slopeDeg, aspectGridDeg!]) {
    edge.fill(Number.NaN, 0, columns);
    edge.fill(Number.NaN, (rows - 1) * columns);
  }
  for (let row = 1; row < rows - 1; row++) {
    const middle = row * columns;
    const north = middle - columns;
    const south = middle + columns;
    if (slopeDeg !== null && aspectGridDeg !== null) {
      slopeDeg[middle] = slopeDeg[south - 1] = aspectGridDeg[middle] = aspectGridDeg[south - 1] = Number.NaN;
    }
    let westSum = z[north]! + 2 * z[middle]! + z[south]!;
    let westFall = z[south]! - z[north]!;
    let sum = z[north + 1]! + 2 * z[middle + 1]! + z[south + 1]!;
    let fall = z[south + 1]! - z[north + 1]!;
    for (let column = 1; column < columns - 1; column++) {
      const nextHere = z[middle + column + 1]!;
      const northEast = z[north + column + 1]!;
      const southEast = z[south + column + 1]!;
      const eastSum = northEast + 2 * nextHere + southEast;
      const eastFall = southEast - northEast;
      // The middle height has no weight, but over a void the result would be no measurement: sum carries its NaN.
      const towardsEast = (eastSum - westSum + 0 * sum) * perCell;
      const towardsSouth = (westFall + 2 * fall + eastFall) * perCell;
      const steepness2 = towardsEast * towardsEast + towardsSouth * towardsSouth;
      const at = middle + column;
      const lit =
        (up - lightEast * towardsEast - lightSouth * towardsSouth) /
        Math.sqrt(1 + exaggeration2 * steepness2);
      // Of a NaN both comparisons fail, and the grey stays 0.
      if (lit > 0) grey[at] = 1.5 + lit;
      else if (lit <= 0) grey[at] = 1;
      if (slopeDeg !== null && aspectGridDeg !== null) {
        const slope = Math.atan(Math.sqrt(steepness2)) * DEG;
        slopeDeg[at] = slope;
        if (slope >= aspectFromSlopeDeg && slope > 0) {
          const aspect = Math.atan2(-towardsEast, towardsSouth) * DEG;
          const turned = Math.fround(aspect < 0 ? aspect + 360 : aspect);
          aspectGridDeg[at] = turned >= 360 ? 0 : turned;
        } else {
          aspectGridDeg[at] = Number.NaN;
        }
      }
      westSum = sum;
      westFall = fall;
      sum = eastSum;
      fall = eastFall;
    }
  }
}
