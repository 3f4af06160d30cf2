import type { Position } from "../geo/position.ts";
import { toUtm, type UtmZone } from "../geo/utm.ts";
import { type ElevationGrid, interpolate } from "./elevationGrid.ts";
import type { ElevationRaster } from "./elevationRaster.ts";
import { forEachGridCell, type GridShape } from "./forEachGridCell.ts";
import { groundCellM, positionOfCell } from "./rasterCoordinates.ts";

export interface MetricGridTarget {
  zone: UtmZone;
  centre: Position;
  /** Most cells along a side of the result. */
  sideMax: number;
  /** Keep only ground within this distance east, north, south and west of the centre; null keeps all. */
  keepWithinM: number | null;
}

type FilledRaster = {
  raster: ElevationRaster;
  filled: Uint8Array | null;
  voids: number;
  filledCells: number;
};

/**
 * Brings a raster to one square metric grid, north-up in a UTM zone. A raster in that zone with square cells is taken as it
 * is; any other is interpolated bilinearly to cells as long as the shorter side of its own, at multiples of the cell size.
 * Cells outside the raster, and those that lean on a void, are void; those that lean on a filled cell are marked filled.
 */
export function metricGrid(source: FilledRaster, target: MetricGridTarget): ElevationGrid {
  const { raster } = source;
  const own = raster.coordinates;
  const inZone =
    own.kind === "utm" &&
    own.zone.number === target.zone.number &&
    own.zone.hemisphere === target.zone.hemisphere;
  const isSquare = Math.abs(raster.stepX - raster.stepY) <= 1e-9 * raster.stepX;
  return inZone && isSquare ? asItIs(source, target) : resampled(source, target);
}

function asItIs(source: FilledRaster, target: MetricGridTarget): ElevationGrid {
  const { raster, filled } = source;
  const { rows, columns, stepX: cellSizeM, westX, northY } = raster;
  const { eastingM, northingM } = toUtm(target.centre, target.zone);
  const reach = target.keepWithinM ?? Number.POSITIVE_INFINITY;
  const first = (cell: number): number => Math.max(0, Math.ceil(cell));
  const row0 = first((northY - northingM - reach) / cellSizeM);
  const column0 = first((eastingM - reach - westX) / cellSizeM);
  const row1 = Math.min(rows - 1, Math.floor((northY - northingM + reach) / cellSizeM));
  const column1 = Math.min(columns - 1, Math.floor((eastingM + reach - westX) / cellSizeM));
  const cut = <T extends Float32Array | Uint8Array>(values: T): T => {
    if (row0 === 0 && column0 === 0 && row1 === rows - 1 && column1 === columns - 1) return values;
    const width = column1 - column0 + 1;
    const kept = new (values.constructor as { new (length: number): T })(width * (row1 - row0 + 1));
    for (let row = row0; row <= row1; row++) {
      const from = row * columns + column0;
      kept.set(values.subarray(from, from + width), (row - row0) * width);
    }
    return kept;
  };
  return {
    zone: target.zone,
    westM: westX + column0 * cellSizeM,
    northM: northY - row0 * cellSizeM,
    cellSizeM,
    rows: row1 - row0 + 1,
    columns: column1 - column0 + 1,
    heightsM: cut(raster.heightsM),
    filled: filled === null ? null : cut(filled),
    sourceCellM: { eastM: cellSizeM, northM: cellSizeM },
    source: { format: raster.format, voids: source.voids, filledCells: source.filledCells },
  };
}

function resampled(source: FilledRaster, target: MetricGridTarget): ElevationGrid {
  const { raster, filled } = source;
  const sourceCellM = groundCellM(raster, target.centre);
  const extent = extentM(raster, target);
  const shape = shapeOf(extent, Math.min(sourceCellM.eastM, sourceCellM.northM), target.sideMax);
  const { rows, columns } = shape;
  const heightsM = new Float32Array(rows * columns);
  const marked = filled === null ? null : new Uint8Array(heightsM.length);
  forEachGridCell(raster, target.zone, shape, (at, row, column) => {
    heightsM[at] = interpolate(raster, row, column);
    if (marked !== null && filled !== null && leansOn(filled, raster, row, column)) marked[at] = 1;
  });
  return {
    zone: target.zone,
    ...shape,
    heightsM,
    filled: marked,
    sourceCellM,
    source: { format: raster.format, voids: source.voids, filledCells: source.filledCells },
  };
}

interface Extent {
  westM: number;
  eastM: number;
  southM: number;
  northM: number;
}

/** What the outermost cell centres of the raster enclose in the zone, cut to what is kept. */
function extentM(raster: ElevationRaster, target: MetricGridTarget): Extent {
  const outline: Position[] = [];
  const steps = 64;
  for (let step = 0; step <= steps; step++) {
    const row = ((raster.rows - 1) * step) / steps;
    const column = ((raster.columns - 1) * step) / steps;
    outline.push(positionOfCell(raster, row, 0), positionOfCell(raster, row, raster.columns - 1));
    outline.push(positionOfCell(raster, 0, column), positionOfCell(raster, raster.rows - 1, column));
  }
  const points = outline.map((position) => toUtm(position, target.zone));
  const eastings = points.map((point) => point.eastingM);
  const northings = points.map((point) => point.northingM);
  const centre = toUtm(target.centre, target.zone);
  const reach = target.keepWithinM ?? Number.POSITIVE_INFINITY;
  return {
    westM: Math.max(Math.min(...eastings), centre.eastingM - reach),
    eastM: Math.min(Math.max(...eastings), centre.eastingM + reach),
    southM: Math.max(Math.min(...northings), centre.northingM - reach),
    northM: Math.min(Math.max(...northings), centre.northingM + reach),
  };
}

function shapeOf(extent: Extent, shorterSideM: number, sideMax: number): GridShape {
  const longestM = Math.max(extent.eastM - extent.westM, extent.northM - extent.southM);
  // To 0.1 m downward, so that the size can be printed as it is; coarser only where that would pass the limit.
  const wantedM = shorterSideM >= 1 ? Math.floor(shorterSideM * 10) / 10 : shorterSideM;
  const leastM = longestM / (sideMax - 1);
  const size = wantedM >= leastM ? wantedM : Math.ceil(leastM * 10) / 10;
  const westM = Math.ceil(extent.westM / size) * size;
  const northM = Math.floor(extent.northM / size) * size;
  return {
    westM,
    northM,
    cellSizeM: size,
    rows: Math.floor((northM - extent.southM) / size) + 1,
    columns: Math.floor((extent.eastM - westM) / size) + 1,
  };
}

function leansOn(marks: Uint8Array, raster: ElevationRaster, row: number, column: number): boolean {
  if (!(row >= 0 && row <= raster.rows - 1 && column >= 0 && column <= raster.columns - 1)) return false;
  const north = Math.floor(row) * raster.columns;
  const south = Math.ceil(row) * raster.columns;
  const west = Math.floor(column);
  const east = Math.ceil(column);
  return (
    marks[north + west] === 1 ||
    marks[north + east] === 1 ||
    marks[south + west] === 1 ||
    marks[south + east] === 1
  );
}
