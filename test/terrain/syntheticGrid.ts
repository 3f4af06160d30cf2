import type { Position } from "../../scripts/geo/position.ts";
import { fromUtm, type UtmZone } from "../../scripts/geo/utm.ts";
import type { ElevationGrid } from "../../scripts/terrain/elevationGrid.ts";

/** On the central meridian of its zone, where grid north is true north. */
export const ZONE: UtmZone = { number: 59, hemisphere: "S" };

/**
 * A grid of made-up ground whose middle cell lies at 500 000 E, 5 000 000 N unless told otherwise.
 *
 * @param heightM   height at metres east and north of the middle cell
 */
export function syntheticGrid(
  side: number,
  cellSizeM: number,
  heightM: (eastM: number, northM: number) => number,
  middle: { eastingM: number; northingM: number } = { eastingM: 500000, northingM: 5000000 },
): ElevationGrid {
  const half = (side - 1) / 2;
  const heightsM = new Float32Array(side * side);
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      heightsM[row * side + column] = heightM((column - half) * cellSizeM, (half - row) * cellSizeM);
    }
  }
  return {
    zone: ZONE,
    westM: middle.eastingM - half * cellSizeM,
    northM: middle.northingM + half * cellSizeM,
    cellSizeM,
    rows: side,
    columns: side,
    heightsM,
    filled: null,
    sourceCellM: { eastM: cellSizeM, northM: cellSizeM },
    source: { format: "GeoTIFF", voids: 0, filledCells: 0 },
  };
}

/** Position at metres east and north of the middle of {@link syntheticGrid}. */
export function positionAt(eastM: number, northM: number): Position {
  return fromUtm({ eastingM: 500000 + eastM, northingM: 5000000 + northM }, ZONE);
}

/** An exact plane through 500 m at the middle. */
export function plane(slopeDeg: number, aspectDeg: number): (eastM: number, northM: number) => number {
  const fall = Math.tan((slopeDeg * Math.PI) / 180);
  const east = Math.sin((aspectDeg * Math.PI) / 180);
  const north = Math.cos((aspectDeg * Math.PI) / 180);
  return (eastM, northM) => 500 - fall * (east * eastM + north * northM);
}

/** Hills without any symmetry: a handful of waves whose lengths share no measure. */
export function hills(eastM: number, northM: number): number {
  return (
    600 +
    80 * Math.sin(eastM / 410 + 0.3) * Math.cos(northM / 530) +
    35 * Math.sin((eastM + 2 * northM) / 277) +
    14 * Math.cos((3 * eastM - northM) / 151 + 1.1)
  );
}
