import mgrs from "mgrs";
import { checkedPosition, type Position } from "./position.ts";
import { utmZoneOf } from "./utm.ts";

const GRID_TEXT = /^(\d{1,2})\s*([C-HJ-NP-X])\s*([A-HJ-NP-Z])([A-HJ-NP-V])\s*(\d{2,10}|\d{1,5}\s+\d{1,5})$/;
const EDGE_DEG = 0.5; // a square of the last zone or band may reach this far over its edge

/**
 * Military grid reference of a place to 1 m: zone and band, square, easting, northing; digits cut off, not rounded.
 *
 * @throws {RangeError} from 84 N and below 80 S
 * @example gridText({ lat: -45.0312, lon: 168.6626 }) // "59G LL 15877 10925"
 */
export function gridText(position: Position): string {
  utmZoneOf(position);
  const lon = position.lon + 180 >= 360 ? -180 : position.lon; // at 180 the library names a zone 61
  const grid = mgrs.forward([lon, position.lat], 5);
  const digits = grid.slice(-10);
  return `${grid.slice(0, -12)} ${grid.slice(-12, -10)} ${digits.slice(0, 5)} ${digits.slice(5)}`;
}

/**
 * The middle of the square that a grid reference names: 1 to 5 digits each way, spaces free, capitals or not.
 *
 * @throws {RangeError} when the text is no grid reference, or names a square that its zone and band do not have
 */
export function parseGridText(text: string): Position {
  const parts = GRID_TEXT.exec(text.trim().toUpperCase());
  const [, zone = "", band = "", column = "", row = "", digits = ""] = parts ?? [];
  const zoneNumber = Number(zone);
  const [easting = "", northing] = digits.split(/\s+/);
  const isEven = northing === undefined ? easting.length % 2 === 0 : easting.length === northing.length;
  if (!parts || zoneNumber < 1 || zoneNumber > 60 || !isEven) {
    throw new RangeError(
      `expected a grid reference such as "59G LL 15877 10925", found ${JSON.stringify(text)}`,
    );
  }
  const position = middleOf(`${zoneNumber}${band}${column}${row}${easting}${northing ?? ""}`, text);
  if (!belongsTo(position, `${zoneNumber}${band}`)) {
    throw new RangeError(
      `square ${column}${row} does not lie in ${zone}${band}, found ${JSON.stringify(text)}`,
    );
  }
  return position;
}

function middleOf(compact: string, text: string): Position {
  try {
    const [lon, lat] = mgrs.toPoint(compact);
    return checkedPosition({ lat, lon: eastOfDateLine(lon) });
  } catch (cause) {
    throw new RangeError(`no such square in its zone, found ${JSON.stringify(text)}`, { cause });
  }
}

function belongsTo(position: Position, zoneAndBand: string): boolean {
  const steps = [0, -EDGE_DEG, EDGE_DEG];
  return steps.some((latStep) =>
    steps.some((lonStep) => {
      const lat = Math.min(83.999, Math.max(-80, position.lat + latStep));
      const lon = eastOfDateLine(position.lon + lonStep);
      return gridText({ lat, lon }).startsWith(`${zoneAndBand} `);
    }),
  );
}

function eastOfDateLine(lon: number): number {
  return ((lon + 540) % 360) - 180;
}
