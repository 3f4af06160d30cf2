import { distanceAndBearing } from "../geo/geodesic.ts";
import { gridText, parseGridText } from "../geo/mgrs.ts";
import type { Position } from "../geo/position.ts";
import { type Check, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/**
 * C25: whether the grid reference read in the field is the same place as the position. Further apart than `gridOffMaxM` is a
 * STOP: one of the two would send help to the wrong place. Without a reading from the field there is nothing to compare.
 *
 * @param facts.grid   null = none entered
 */
export function positionFormats(
  facts: { subject: string; position: Position; grid: string | null },
  limits: Pick<SafetyLimits, "gridOffMaxM">,
): Check {
  const { subject, position, grid } = facts;
  const inputs = { lat: position.lat, lon: position.lon, grid };
  if (grid === null) {
    const text = `No grid reading from the field; the position works out to ${computedGrid(position)}.`;
    return { id: "C25", result: "NOT CHECKED", text, subject, inputs };
  }
  const read = readGrid(grid);
  if (read === null) {
    const text = `Grid ${JSON.stringify(grid)} can not be read; position not compared.`;
    return { id: "C25", result: "NOT CHECKED", text, subject, inputs };
  }
  const apartM = distanceAndBearing(position, read).distanceM;
  const isApart = apartM > limits.gridOffMaxM;
  const text = isApart
    ? `Grid and position are ${figure(apartM)} m apart: one of them is wrong.`
    : `Grid and position agree to ${figure(Math.ceil(apartM))} m.`;
  return {
    id: "C25",
    result: isApart ? "STOP" : "OK",
    text,
    subject,
    inputs: { ...inputs, apartM: Math.round(apartM * 10) / 10 },
  };
}

function readGrid(grid: string): Position | null {
  try {
    return parseGridText(grid);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function computedGrid(position: Position): string {
  try {
    return gridText(position);
  } catch (error) {
    if (error instanceof RangeError) return "no grid there";
    throw error;
  }
}
