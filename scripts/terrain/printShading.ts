import type { ElevationGrid } from "./elevationGrid.ts";
import { reliefShading, type ShadingLight } from "./reliefShading.ts";

export interface PrintShadingRules extends ShadingLight {
  /** Ink share of ground that faces straight away from the light, 0 to 1. */
  inkMax: number;
  /** Share of that ink left in the lowest ground. */
  valleyShare: number;
  /** Heights between which the ink grows to its full share; such as those of the sheet. */
  lowM: number;
  highM: number;
}

/**
 * Relief for printing under everything else: paper white (255) on level and lit ground, grey on slopes that face away from the
 * light, weaker in valleys than on heights. Border and voids are white.
 *
 * @returns row-major greys, 255 x (1 - ink)
 * @source E. Imhof, Cartographic Relief Presentation (1982): aerial perspective, from memory
 */
export function printShading(grid: ElevationGrid, rules: PrintShadingRules): Uint8Array {
  const { inkMax, valleyShare, lowM, highM } = rules;
  if (!(inkMax >= 0 && inkMax <= 1)) throw new RangeError(`inkMax must be 0 to 1, found ${inkMax}`);
  if (!(valleyShare >= 0 && valleyShare <= 1)) {
    throw new RangeError(`valleyShare must be 0 to 1, found ${valleyShare}`);
  }
  const shading = reliefShading(grid, rules);
  const level = 254 * Math.sin((rules.altitudeDeg * Math.PI) / 180);
  const spanM = highM - lowM;
  for (let at = 0; at < shading.length; at++) {
    const grey = shading[at]!;
    const shade = grey === 0 || level === 0 ? 0 : Math.max(0, 1 - (grey - 1) / level);
    if (shade === 0) {
      shading[at] = 255;
      continue;
    }
    const share = spanM > 0 ? (grid.heightsM[at]! - lowM) / spanM : 1;
    const strength = valleyShare + (1 - valleyShare) * Math.min(1, Math.max(0, share));
    shading[at] = Math.round(255 * (1 - inkMax * shade * strength));
  }
  return shading;
}
