import type { Check } from "../safety/check.ts";
import { helicopterSpot } from "../safety/helicopterSpot.ts";
import { safetyLimits } from "../safety/safetyLimits.ts";
import { broadSlope } from "../terrain/broadSlope.ts";
import type { PackContext } from "./packContext.ts";
import { terrainRules } from "./terrainRules.ts";

const LEAST_CELLS = 5;
const LEAST_RADIUS_CELLS = 1.5;

/**
 * C17 of the spot that the area names; null when it names none. The slope is that of the plane that fits the ground of the spot, at
 * least of the cells beside it; a single ditch or stone is not seen.
 */
export function composeHelicopterSpot({ area, shapes, shared, constants }: PackContext): Check | null {
  const spot = area.content.facts.emergency.helicopterSpot;
  if (spot === undefined) return null;
  const limits = safetyLimits(shared.model);
  const sizeM = spot.sizeM ?? null;
  const facts = { subject: spot.feature, sizeM, noWires: spot.noWires ?? null };
  return helicopterSpot({ ...facts, slopeDeg: slopeDeg((sizeM ?? limits.landingPreferredM) / 2) }, limits);

  function slopeDeg(radiusM: number): number | null {
    const corners = shapes.find(({ id }) => id === spot?.feature)?.lines.flat() ?? [];
    if (area.ground === null || corners.length === 0) return null;
    const middle = { lat: mean(corners.map(({ lat }) => lat)), lon: mean(corners.map(({ lon }) => lon)) };
    const rules = {
      ...terrainRules(constants),
      fitRadiusMinM: radiusM,
      fitRadiusCells: LEAST_RADIUS_CELLS,
      fitCellsMin: LEAST_CELLS,
    };
    return broadSlope(area.ground.grid, middle, rules).slope?.slopeDeg ?? null;
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
