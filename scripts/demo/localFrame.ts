import { normalizeDeg } from "../geo/bearings.ts";
import type { Position } from "../geo/position.ts";
import { fromUtm, gridConvergenceDeg, type UtmZone } from "../geo/utm.ts";
import { type LocalPoint, localPoints } from "./localPoints.ts";

/** Where the box of a demonstration area lies: the grid coordinates of its south-west corner. */
export interface BoxCorner {
  zone: UtmZone;
  eastingM: number;
  northingM: number;
}

/** Turns the local metres and grid bearings of a description into the positions and true bearings of content files. */
export interface LocalFrame {
  corner: BoxCorner;
  /** decimal degrees to 6 places, about 0.1 m */
  position(point: LocalPoint): Position;
  /** positions of points written as "x,y x,y" */
  positions(text: string): Position[];
  /** the one position of a point written as "x,y" */
  place(text: string): Position;
  /** true bearing, whole degrees 0 to 359, of a grid bearing at the middle of the box */
  trueDeg(gridDeg: number): number;
}

const BOX_MIDDLE: LocalPoint = { x: 2000, y: 2000 };

/** The frame of a box. Over 4 km the convergence changes by under 0.05 degrees, so one figure serves the whole box. */
export function localFrame(corner: BoxCorner): LocalFrame {
  const position = ({ x, y }: LocalPoint): Position => {
    const { lat, lon } = fromUtm(
      { eastingM: corner.eastingM + x, northingM: corner.northingM + y },
      corner.zone,
    );
    return { lat: toMillionths(lat), lon: toMillionths(lon) };
  };
  const convergenceDeg = gridConvergenceDeg(position(BOX_MIDDLE), corner.zone);
  return {
    corner,
    position,
    positions: (text) => localPoints(text).map(position),
    place: (text) => position(localPoints(text)[0]!),
    trueDeg: (gridDeg) => normalizeDeg(Math.round(gridDeg + convergenceDeg)),
  };
}

function toMillionths(degrees: number): number {
  return Math.round(degrees * 1e6) / 1e6;
}
