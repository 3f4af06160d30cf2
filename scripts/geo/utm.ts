import proj4 from "proj4";
import { normalizeDeg } from "./bearings.ts";
import { checkedPosition, type Position } from "./position.ts";

/** One of the 120 zones of the Universal Transverse Mercator grid on WGS 84: number 1 to 60 and hemisphere. */
export interface UtmZone {
  number: number;
  hemisphere: "N" | "S";
}

/** Grid coordinates in metres; easting 500,000 on the central meridian, northing 10,000,000 on the equator in the south. */
export interface UtmPosition {
  eastingM: number;
  northingM: number;
}

const WGS84_RADIUS_M = 6378137; // equatorial radius, WGS 84
const WGS84_FLATTENING = 1 / 298.257223563; // WGS 84
const STEP_DEG = 0.0005; // about 56 m: short enough for 1e-7 in scale, long enough to keep 8 digits

interface Converter {
  forward(lonLat: [number, number]): [number, number];
  inverse(eastNorth: [number, number]): [number, number];
}

const converters = new Map<string, Converter>();

/**
 * The zone a place belongs to, with the widened zones of south-west Norway (32V) and Svalbard (31X, 33X, 35X, 37X).
 *
 * @throws {RangeError} from 84 N and below 80 S, where the polar grid (UPS) begins, which is not covered
 * @source NGA.SIG.0012, The Universal Grids and the Transverse Mercator and Polar Stereographic Map Projections (2014), 7-8
 */
export function utmZoneOf(position: Position): UtmZone {
  const { lat, lon } = checkedPosition(position);
  if (lat < -80 || lat >= 84) {
    throw new RangeError(`UTM covers 80 S to 84 N (the polar grid is not covered), found lat ${lat}`);
  }
  const hemisphere = lat < 0 ? "S" : "N";
  if (lat >= 56 && lat < 64 && lon >= 3 && lon < 12) return { number: 32, hemisphere };
  if (lat >= 72 && lon >= 0 && lon < 42) {
    return { number: lon < 9 ? 31 : lon < 21 ? 33 : lon < 33 ? 35 : 37, hemisphere };
  }
  return { number: (Math.floor((lon + 180) / 6) % 60) + 1, hemisphere };
}

/**
 * Grid coordinates of a place in a zone, which may be the neighbour of its own (an area on a zone edge has one grid).
 *
 * @throws {RangeError} when the place lies more than 12 degrees of longitude from the zone's central meridian, or outside the grid
 */
export function toUtm(position: Position, zone: UtmZone): UtmPosition {
  const { lat, lon } = checkedPosition(position);
  const offMeridianDeg = Math.abs(normalizeDeg(lon - centralMeridianDeg(zone) + 180) - 180);
  if (offMeridianDeg > 12) {
    throw new RangeError(
      `lon must be within 12 degrees of zone ${zone.number}'s central meridian ${centralMeridianDeg(zone)}, found ${lon}`,
    );
  }
  const [eastingM, northingM] = converter(zone).forward([lon, lat]);
  return { eastingM: finite(eastingM), northingM: finite(northingM) };
}

/** The place of grid coordinates in a zone. Good to 1 mm inside the zone and its neighbours. */
export function fromUtm(utm: UtmPosition, zone: UtmZone): Position {
  const [lon, lat] = converter(zone).inverse([finite(utm.eastingM), finite(utm.northingM)]);
  return { lat: finite(lat), lon: finite(lon) };
}

/**
 * Grid convergence: bearing of grid north, -180 < x <= 180, positive when grid north lies east of true north.
 * A grid bearing plus the convergence is the true bearing.
 */
export function gridConvergenceDeg(position: Position, zone: UtmZone): number {
  const { eastM, northM } = stepNorth(position, zone);
  return (-Math.atan2(eastM, northM) * 180) / Math.PI;
}

/** Grid distance over ground distance at a place (0.9996 on the central meridian). The grid is conformal: all directions alike. */
export function pointScale(position: Position, zone: UtmZone): number {
  const { eastM, northM, degrees, midLat } = stepNorth(position, zone);
  const eccentricitySquared = WGS84_FLATTENING * (2 - WGS84_FLATTENING);
  const sinLat = Math.sin((midLat * Math.PI) / 180);
  const meridianRadiusM =
    (WGS84_RADIUS_M * (1 - eccentricitySquared)) / (1 - eccentricitySquared * sinLat * sinLat) ** 1.5;
  return Math.hypot(eastM, northM) / ((meridianRadiusM * degrees * Math.PI) / 180);
}

/** How far the grid moves over one short step along the meridian through a place. */
function stepNorth(position: Position, zone: UtmZone) {
  const { lat, lon } = checkedPosition(position);
  const midLat = Math.min(90 - STEP_DEG, Math.max(STEP_DEG - 90, lat));
  const south = toUtm({ lat: midLat - STEP_DEG, lon }, zone);
  const north = toUtm({ lat: midLat + STEP_DEG, lon }, zone);
  return {
    eastM: north.eastingM - south.eastingM,
    northM: north.northingM - south.northingM,
    degrees: 2 * STEP_DEG,
    midLat,
  };
}

function centralMeridianDeg(zone: UtmZone): number {
  checkZone(zone);
  return zone.number * 6 - 183;
}

// A converter is a constant of its zone and costs more to make than a thousand points to convert: kept once made.
function converter(zone: UtmZone): Converter {
  checkZone(zone);
  const definition = `+proj=utm +zone=${zone.number}${zone.hemisphere === "S" ? " +south" : ""} +datum=WGS84 +units=m`;
  const known = converters.get(definition);
  if (known) return known;
  const made = proj4(definition);
  converters.set(definition, made);
  return made;
}

function checkZone({ number }: UtmZone): void {
  if (!(Number.isInteger(number) && number >= 1 && number <= 60)) {
    throw new RangeError(`zone number must be 1 to 60, found ${number}`);
  }
}

function finite(value: number | undefined): number {
  if (value === undefined || !Number.isFinite(value))
    throw new RangeError(`outside the UTM grid, found ${value}`);
  return value;
}
