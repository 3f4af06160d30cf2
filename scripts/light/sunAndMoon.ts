import * as SunCalc from "suncalc";
import { checkedPosition, type Position } from "../geo/position.ts";

/** Where the sun stands: altitude as seen (bent by the air), azimuth clockwise from true north, both in degrees. */
export interface SunPosition {
  altitudeDeg: number;
  azimuthDeg: number;
}

const RAD = Math.PI / 180;
const HORIZON_REFRACTION_DEG = refractionDeg(0); // 0.484, as the library bends every body at or below the horizon
const STANDARD_REFRACTION_DEG = 34 / 60; // at rise and set, US Naval Observatory, Rise, Set, and Twilight Definitions
const MOON_RADIUS_IN_EARTHS = 0.2725; // Meeus, Astronomical Algorithms (1998), chapter 55
const EARTH_RADIUS_KM = 6378.14; // equatorial

/**
 * Altitude and azimuth of the centre of the sun for an observer at height 0 in average air. Good to 0.02 degrees;
 * parallax (0.002 degrees) and the weather's share in refraction are left out.
 *
 * @throws {RangeError} when the instant or the position is none
 * @source Meeus, Astronomical Algorithms (1998), chapters 12, 13, 16 and 25 (`suncalc`)
 */
export function sunPosition(at: Date, position: Position): SunPosition {
  const { altitude, azimuth } = SunCalc.getPosition(checkedInstant(at), ...latLon(position));
  return { altitudeDeg: altitude, azimuthDeg: azimuth % 360 };
}

/** Altitude of the centre of the sun without the bending of the air: what twilight angles are measured in. */
export function airlessSunAltitudeDeg(at: Date, position: Position): number {
  return airlessAltitudeDeg(sunPosition(at, position).altitudeDeg);
}

/** The instant the sun crosses the meridian nearest to an instant; within 12 h of it. Good to 4 s. */
export function solarNoonNear(at: Date, position: Position): Date {
  return SunCalc.getTimes(checkedInstant(at), ...latLon(position)).solarNoon;
}

/**
 * Height of the moon's upper edge over the line where it rises and sets, in degrees: 0 at moonrise and moonset, more
 * when the moon is up. Level horizon, observer at height 0, average air.
 *
 * @source US Naval Observatory, Rise, Set, and Twilight Definitions; Meeus, Astronomical Algorithms (1998), chapter 47
 */
export function moonEdgeDeg(at: Date, position: Position): number {
  const { altitude, distance } = SunCalc.getMoonPosition(checkedInstant(at), ...latLon(position));
  const radiusDeg = (MOON_RADIUS_IN_EARTHS * Math.asin(EARTH_RADIUS_KM / distance)) / RAD;
  return airlessAltitudeDeg(altitude) + radiusDeg + STANDARD_REFRACTION_DEG;
}

/**
 * Share of the moon's disc that is lit, 0 to 1, and where it is in its cycle: 0 new, 0.25 first quarter, 0.5 full,
 * 0.75 last quarter, below 1.
 *
 * @source Meeus, Astronomical Algorithms (1998), chapter 48
 */
export function moonLight(at: Date): { illuminated: number; cycle: number } {
  const { fraction, phase } = SunCalc.getMoonIllumination(checkedInstant(at));
  return { illuminated: fraction, cycle: phase % 1 };
}

/**
 * Undoes the library's own refraction: apparent altitude to airless altitude, in degrees, to 1e-9.
 *
 * @source Meeus, Astronomical Algorithms (1998), equation 16.4, held at its horizon value below the horizon
 */
export function airlessAltitudeDeg(apparentDeg: number): number {
  if (apparentDeg <= HORIZON_REFRACTION_DEG) return apparentDeg - HORIZON_REFRACTION_DEG;
  let airlessDeg = apparentDeg - HORIZON_REFRACTION_DEG;
  for (let round = 0; round < 40; round++) {
    const closer = apparentDeg - refractionDeg(airlessDeg);
    if (Math.abs(closer - airlessDeg) < 1e-10) return closer;
    airlessDeg = closer;
  }
  return airlessDeg;
}

function refractionDeg(airlessDeg: number): number {
  const altitudeRad = Math.max(0, airlessDeg) * RAD;
  return 0.0002967 / Math.tan(altitudeRad + 0.00312536 / (altitudeRad + 0.08901179)) / RAD;
}

function latLon(position: Position): [number, number] {
  const { lat, lon } = checkedPosition(position);
  return [lat, lon];
}

function checkedInstant(at: Date): Date {
  if (Number.isNaN(at.getTime()))
    throw new RangeError("the instant must be a valid Date, found an invalid one");
  return at;
}
