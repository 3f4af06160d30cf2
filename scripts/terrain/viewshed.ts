import type { Position } from "../geo/position.ts";
import { type ElevationGrid, interpolate, placeOnGrid } from "./elevationGrid.ts";
import { dropPerM2, SIGHT, type SightRules } from "./sightRules.ts";
import { type SightWindow, sightSweep } from "./sightSweep.ts";

export interface ViewshedRequest {
  eyeHeightM: number;
  /** How far over the ground what is looked for stands. */
  targetHeightM: number;
  reachM: number;
}

/** What is seen from a place: one mark for each cell around it. */
export interface Viewshed {
  /** First row and column of the grid that the marks cover. */
  row0: number;
  column0: number;
  rows: number;
  columns: number;
  /** Row-major; values of {@link SIGHT}. */
  sight: Uint8Array;
  /** Easting and northing of the centre of the first cell. */
  westM: number;
  northM: number;
  cellSizeM: number;
  eye: { eastingM: number; northingM: number; elevationM: number };
  reachM: number;
  visibleCells: number;
  hiddenCells: number;
  unknownCells: number;
  /** Whether the grid ends within the reach, so that ground that may be in view is not in the marks. */
  isCutByGrid: boolean;
}

export type ViewshedResult = { viewshed: Viewshed; why: null } | { viewshed: null; why: string };

// An eye this near a row or column line stands on it: positions come through a projection that rounds.
const ON_LINE_CELLS = 1e-6;

/**
 * Cells of bare ground in view from an eye over the ground. A target at the centre of a cell, at its height over the ground, is
 * visible when the straight line from the eye clears the ground wherever it crosses the row and column lines through the
 * cell centres, the ground being linear between two neighbouring centres. Every centre is first lowered by (1 - k) D^2 / 2R. A line
 * that touches the ground sees over it. The ground between two centres is known when both are. Does not see trees, nor what stands
 * between the eye and the first line.
 *
 * @returns marks, or null with the reason when the height of the place itself is unknown. A cell is `unknown`, never
 *   visible, when a void lies on its line of sight and known ground does not hide it.
 * @throws {RangeError} when a height is under 0 or the reach is not over 0
 * @source lowering by curvature and refraction: P. Yoeli, Cartographica 22 (1985)
 */
export function viewshed(
  grid: ElevationGrid,
  position: Position,
  request: ViewshedRequest,
  rules: SightRules,
): ViewshedResult {
  const { eyeHeightM, targetHeightM, reachM } = request;
  if (!(eyeHeightM >= 0)) throw new RangeError(`eyeHeightM must be 0 or more, found ${eyeHeightM}`);
  if (!(targetHeightM >= 0)) throw new RangeError(`targetHeightM must be 0 or more, found ${targetHeightM}`);
  if (!(reachM > 0)) throw new RangeError(`reachM must be over 0, found ${reachM}`);
  const place = placeOnGrid(grid, position);
  const eyeRow = onLine(place.row);
  const eyeColumn = onLine(place.column);
  const groundM = interpolate(grid, eyeRow, eyeColumn);
  if (Number.isNaN(groundM)) {
    return { viewshed: null, why: "the site lies outside the elevation grid or on a void" };
  }
  const eyeM = groundM + eyeHeightM;
  const reachCells = reachM / grid.cellSizeM;
  const row0 = Math.max(0, Math.floor(eyeRow - reachCells));
  const column0 = Math.max(0, Math.floor(eyeColumn - reachCells));
  const row1 = Math.min(grid.rows - 1, Math.ceil(eyeRow + reachCells));
  const column1 = Math.min(grid.columns - 1, Math.ceil(eyeColumn + reachCells));
  const rows = row1 - row0 + 1;
  const columns = column1 - column0 + 1;

  const sight = new Uint8Array(rows * columns).fill(SIGHT.beyond);
  const overEyeM = new Float64Array(rows * columns);
  const drop = dropPerM2(rules) * grid.cellSizeM * grid.cellSizeM;
  let unknownCells = 0;
  let hasVoid = false;
  for (let row = 0; row < rows; row++) {
    const south = row0 + row - eyeRow;
    const from = (row0 + row) * grid.columns + column0;
    for (let column = 0; column < columns; column++) {
      const east = column0 + column - eyeColumn;
      const cells2 = south * south + east * east;
      const overM = grid.heightsM[from + column]! - eyeM - drop * cells2;
      const at = row * columns + column;
      overEyeM[at] = overM;
      if (Number.isNaN(overM)) hasVoid = true;
      if (cells2 <= reachCells * reachCells) sight[at] = Number.isNaN(overM) ? SIGHT.unknown : SIGHT.visible;
    }
  }
  const window: SightWindow = {
    rows,
    columns,
    overEyeM,
    eyeRow: eyeRow - row0,
    eyeColumn: eyeColumn - column0,
    cellSizeM: grid.cellSizeM,
  };
  sightSweep(window, targetHeightM, reachM, "open", sight);
  if (hasVoid) sightSweep(window, targetHeightM, reachM, "closed", sight);

  let visibleCells = 0;
  let hiddenCells = 0;
  for (const mark of sight) {
    if (mark === SIGHT.visible) visibleCells++;
    else if (mark === SIGHT.hidden) hiddenCells++;
    else if (mark === SIGHT.unknown) unknownCells++;
  }
  return {
    viewshed: {
      row0,
      column0,
      rows,
      columns,
      sight,
      westM: grid.westM + column0 * grid.cellSizeM,
      northM: grid.northM - row0 * grid.cellSizeM,
      cellSizeM: grid.cellSizeM,
      eye: { eastingM: place.eastingM, northingM: place.northingM, elevationM: eyeM },
      reachM,
      visibleCells,
      hiddenCells,
      unknownCells,
      isCutByGrid:
        eyeRow - reachCells < 0 ||
        eyeColumn - reachCells < 0 ||
        eyeRow + reachCells > grid.rows - 1 ||
        eyeColumn + reachCells > grid.columns - 1,
    },
    why: null,
  };
}

function onLine(place: number): number {
  const nearest = Math.round(place);
  return Math.abs(place - nearest) < ON_LINE_CELLS ? nearest : place;
}
