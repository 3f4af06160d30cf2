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
const SUN_PARALLAX_DEG = 8.794 / 3600; // Meeus, Astronomical Algorithms (1998), chapter 40
const SUN_RADIUS_AT_1_AU_DEG = 959.63 / 3600; // same, chapter 55
const DAY_MS = 86_400_000;
const J2000_DAYS = 10_957.5; // 1 January 2000, 12:00, in days since 1970
const MOON_RADIUS_IN_EARTHS = 0.2725; // Meeus, Astronomical Algorithms (1998), chapter 55
const EARTH_RADIUS_KM = 6378.14; // equatorial

/**
 * Altitude and azimuth of the centre of the sun for an observer at height 0 in average air. Good to 0.02 degrees where
 * the sun is up; parallax (0.002 degrees) and the weather's share in refraction are left out.
 *
 * @throws {RangeError} when the instant or the position is none
 * @source Meeus, Astronomical Algorithms (1998), chapters 12, 13, 16 and 25 (`suncalc`)
 */
export function sunPosition(at: Date, position: Position): SunPosition {
  const { altitude, azimuth } = SunCalc.getPosition(checkedInstant(at), ...latLon(position));
  return { altitudeDeg: altitude, azimuthDeg: azimuth % 360 };
}

/**
 * Altitude of the centre of the sun without the bending of the air, seen from the ground: what twilight angles are
 * measured in.
 */
export function airlessSunAltitudeDeg(at: Date, position: Position): number {
  const fromEarthsCentreDeg = airlessAltitudeDeg(sunPosition(at, position).altitudeDeg);
  return fromEarthsCentreDeg - SUN_PARALLAX_DEG * Math.cos(fromEarthsCentreDeg * RAD);
}

/**
 * Height of the sun's upper edge over the line where it rises and sets, in degrees: 0 at sunrise and sunset. Level
 * horizon, observer at height 0, average air. The sun's true radius is used instead of the usual 16', which alone
 * moves sunrise by up to 15 s at latitude 65 in June.
 *
 * @source US Naval Observatory, Rise, Set, and Twilight Definitions
 */
export function sunEdgeDeg(at: Date, position: Position): number {
  return sunEdgeOverCentreDeg(at, airlessSunAltitudeDeg(at, position));
}

/** `sunEdgeDeg` where the airless altitude of the centre at that instant is known. */
export function sunEdgeOverCentreDeg(at: Date, centreDeg: number): number {
  return centreDeg + SUN_RADIUS_AT_1_AU_DEG / sunDistanceAu(at) + STANDARD_REFRACTION_DEG;
}

/**
 * Distance to the sun in astronomical units, to 0.0001.
 *
 * @source The Astronomical Almanac, low-precision formulas for the sun; Meeus (1998), chapter 25
 */
export function sunDistanceAu(at: Date): number {
  const daysSince2000 = checkedInstant(at).getTime() / DAY_MS - J2000_DAYS;
  const anomalyRad = (357.528 + 0.9856003 * daysSince2000) * RAD;
  return 1.00014 - 0.01671 * Math.cos(anomalyRad) - 0.00014 * Math.cos(2 * anomalyRad);
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
