import type { Position } from "../../scripts/geo/position.ts";
import { type ElevationGrid, interpolate, placeOnGrid } from "../../scripts/terrain/elevationGrid.ts";
import { SIGHT, type SightRules } from "../../scripts/terrain/sightRules.ts";

/**
 * What one cell is, straight from the definition: every crossing of the line of sight with a row or column line, one by one, no
 * code shared with the sweep. Angles by true horizontal distance.
 */
export function marchedSight(
  grid: ElevationGrid,
  position: Position,
  eyeHeightM: number,
  targetHeightM: number,
  rules: SightRules,
): (row: number, column: number) => number {
  const place = placeOnGrid(grid, position);
  const snap = (x: number): number => (Math.abs(x - Math.round(x)) < 1e-6 ? Math.round(x) : x);
  const eyeRow = snap(place.row);
  const eyeColumn = snap(place.column);
  const eyeM = interpolate(grid, eyeRow, eyeColumn) + eyeHeightM;
  const k = (1 - rules.refraction) / (2 * rules.earthRadiusM);
  const lowered = (row: number, column: number): number => {
    const distanceM = Math.hypot(row - eyeRow, column - eyeColumn) * grid.cellSizeM;
    return grid.heightsM[row * grid.columns + column]! - k * distanceM ** 2;
  };
  const isInGrid = (row: number, column: number): boolean =>
    row >= 0 && column >= 0 && row < grid.rows && column < grid.columns;

  return (row, column) => {
    const south = row - eyeRow;
    const east = column - eyeColumn;
    if (Number.isNaN(lowered(row, column))) return SIGHT.unknown;
    const cells = Math.hypot(south, east);
    if (cells === 0) return SIGHT.visible;
    const slope = (lowered(row, column) + targetHeightM - eyeM) / cells;
    let touchesVoid = false;
    let hides = false;
    const cross = (share: number, values: number[], heightM: number): void => {
      if (values.some(Number.isNaN)) touchesVoid = true;
      if (Number.isNaN(heightM)) return;
      if ((heightM - eyeM) / (share * cells) > slope + 1e-9 * grid.cellSizeM) hides = true;
    };
    const stretch = (share: number, r0: number, c0: number, r1: number, c1: number, part: number): void => {
      const a = lowered(r0, c0);
      const b = lowered(r1, c1);
      // A stretch is known when both its ends are, also for a line that meets it at one of them.
      cross(share, [a, b], Number.isNaN(b) ? b : a + (b - a) * part);
    };
    const walk = (start: number, by: number, at: (line: number, share: number) => void): void => {
      if (by === 0) return;
      const sign = Math.sign(by);
      const end = start + by;
      for (
        let line = sign > 0 ? Math.floor(start) + 1 : Math.ceil(start) - 1;
        (end - line) * sign > 0;
        line += sign
      ) {
        at(line, (line - start) / by);
      }
    };
    // On a diagonal the stretches from the last centre on lie on the lines of the target itself.
    const isOfTarget = (r: number, c: number): boolean =>
      Math.abs(Math.abs(south) - Math.abs(east)) < 1e-9 && (r === row || c === column);
    walk(eyeColumn, east, (line, share) => {
      const r = eyeRow + south * share;
      const whole = Math.abs(r - Math.round(r)) < 1e-9;
      const r0 = whole ? Math.round(r) : Math.floor(r);
      // Through a centre: both stretches of the line meet there, and on a slant those of the other line too.
      if (!whole) return stretch(share, r0, line, r0 + 1, line, r - r0);
      const neighbours =
        south === 0
          ? [
              [r0 - 1, line],
              [r0 + 1, line],
            ]
          : [
              [r0 - 1, line],
              [r0 + 1, line],
              [r0, line - 1],
              [r0, line + 1],
            ];
      for (const [nr, nc] of neighbours as [number, number][]) {
        if (isInGrid(nr, nc) && !isOfTarget(nr, nc)) stretch(share, r0, line, nr, nc, 0);
      }
    });
    walk(eyeRow, south, (line, share) => {
      const c = eyeColumn + east * share;
      const whole = Math.abs(c - Math.round(c)) < 1e-9;
      const c0 = whole ? Math.round(c) : Math.floor(c);
      if (!whole) return stretch(share, line, c0, line, c0 + 1, c - c0);
      const neighbours =
        east === 0
          ? [
              [line, c0 - 1],
              [line, c0 + 1],
            ]
          : [
              [line, c0 - 1],
              [line, c0 + 1],
              [line - 1, c0],
              [line + 1, c0],
            ];
      for (const [nr, nc] of neighbours as [number, number][]) {
        if (isInGrid(nr, nc) && !isOfTarget(nr, nc)) stretch(share, line, c0, nr, nc, 0);
      }
    });
    if (hides) return SIGHT.hidden;
    return touchesVoid ? SIGHT.unknown : SIGHT.visible;
  };
}
