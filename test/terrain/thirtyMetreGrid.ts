import { type ElevationGrid, interpolate } from "../../scripts/terrain/elevationGrid.ts";

/** The ground of a grid on cells of 30 m, bilinear, from the same north-west corner. */
export function thirtyMetreGrid(grid: ElevationGrid): ElevationGrid {
  const cellSizeM = 30;
  const rows = Math.floor(((grid.rows - 1) * grid.cellSizeM) / cellSizeM) + 1;
  const columns = Math.floor(((grid.columns - 1) * grid.cellSizeM) / cellSizeM) + 1;
  const heightsM = new Float32Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      heightsM[row * columns + column] = interpolate(
        grid,
        (row * cellSizeM) / grid.cellSizeM,
        (column * cellSizeM) / grid.cellSizeM,
      );
    }
  }
  return {
    ...grid,
    cellSizeM,
    rows,
    columns,
    heightsM,
    filled: null,
    sourceCellM: { eastM: cellSizeM, northM: cellSizeM },
  };
}
