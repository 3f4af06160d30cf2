import { normalizeDeg, signedDifferenceDeg } from "../geo/bearings.ts";
import type { Position } from "../geo/position.ts";
import { fromUtm, toUtm } from "../geo/utm.ts";
import type { ElevationRaster } from "./elevationRaster.ts";

const WGS84_RADIUS_M = 6378137; // equatorial radius
const WGS84_ECCENTRICITY_SQUARED = 0.0066943799901413165;

/** Where a position lies in a raster: fractional row and column, 0 at the first cell's centre; also outside the raster. */
export function cellOfPosition(raster: ElevationRaster, position: Position): { row: number; column: number } {
  const { coordinates, westX, northY, stepX, stepY, columns } = raster;
  if (coordinates.kind === "utm") {
    const { eastingM, northingM } = toUtm(position, coordinates.zone);
    return { row: (northY - northingM) / stepY, column: (eastingM - westX) / stepX };
  }
  // Counted from the middle column, so that a raster across the 180th meridian is one piece.
  const middle = (columns - 1) / 2;
  const fromMiddleDeg = signedDifferenceDeg(westX + middle * stepX, position.lon);
  return { row: (northY - position.lat) / stepY, column: middle + fromMiddleDeg / stepX };
}

/** Position of a fractional row and column of a raster. */
export function positionOfCell(raster: ElevationRaster, row: number, column: number): Position {
  const x = raster.westX + column * raster.stepX;
  const y = raster.northY - row * raster.stepY;
  if (raster.coordinates.kind === "utm")
    return fromUtm({ eastingM: x, northingM: y }, raster.coordinates.zone);
  return { lat: y, lon: normalizeDeg(x + 180) - 180 };
}

/** Ground size of a cell, metres, at a position; on the ellipsoid for degrees, the grid's own for metres. */
export function groundCellM(raster: ElevationRaster, at: Position): { eastM: number; northM: number } {
  if (raster.coordinates.kind === "utm") return { eastM: raster.stepX, northM: raster.stepY };
  const latRad = (at.lat * Math.PI) / 180;
  const w = 1 - WGS84_ECCENTRICITY_SQUARED * Math.sin(latRad) ** 2;
  const radPerDeg = Math.PI / 180;
  return {
    eastM: (raster.stepX * radPerDeg * WGS84_RADIUS_M * Math.cos(latRad)) / Math.sqrt(w),
    northM: (raster.stepY * radPerDeg * WGS84_RADIUS_M * (1 - WGS84_ECCENTRICITY_SQUARED)) / w ** 1.5,
  };
}
