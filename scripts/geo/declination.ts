import magvar from "magvar";
import { signedDifferenceDeg } from "./bearings.ts";
import { checkedPosition, type Position } from "./position.ts";

/** Angle from true north to magnetic north, east positive, and its change a year; null with a sentence in `why`. */
export interface MagneticDeclination {
  declinationDeg: number | null;
  yearlyChangeDeg: number | null;
  model: "WMM2025";
  why: Record<string, string>;
}

const VALID_FROM_YEAR = 2025; // World Magnetic Model 2025
const VALID_UNTIL_YEAR = 2030;
const BLACKOUT_NT = 2000; // horizontal field under which the model's publisher calls a compass unusable

/**
 * Magnetic declination at a place and height on a civil date, to 0.01 degree, by the World Magnetic Model 2025. The
 * model errs by about 0.3 to 1 degree from local rock and the field's own noise; iron near the compass is not covered.
 *
 * @param heightM     above mean sea level, -1000 to 850000
 * @param localDate   "YYYY-MM-DD"; before 2025 or from 2030 on the result is null with its reason
 * @returns           declination -180 to 180 and mean change a year, both null where the model does not hold
 * @source NOAA/NCEI and BGS, The US/UK World Magnetic Model for 2025-2030
 */
export function magneticDeclination(
  position: Position,
  heightM: number,
  localDate: string,
): MagneticDeclination {
  checkedPosition(position);
  if (!(heightM >= -1000 && heightM <= 850_000)) {
    throw new RangeError(`heightM must be -1000 to 850000, found ${heightM}`);
  }
  const year = decimalYear(localDate);
  if (year < VALID_FROM_YEAR || year >= VALID_UNTIL_YEAR) {
    return unknown(`the magnetic model WMM2025 holds from 2025 to the end of 2029, not on ${localDate}`);
  }
  const field = fieldAt(position, heightM, year);
  if (field.h < BLACKOUT_NT)
    return unknown("too near the magnetic pole: a compass can not be relied on here");
  const before = fieldAt(position, heightM, Math.max(VALID_FROM_YEAR, year - 0.5));
  const after = fieldAt(position, heightM, Math.min(VALID_UNTIL_YEAR - 1e-6, year + 0.5));
  const yearlyChangeDeg =
    signedDifferenceDeg(before.declinationDeg, after.declinationDeg) / (after.year - before.year);
  return {
    declinationDeg: toHundredths(field.declinationDeg),
    yearlyChangeDeg: toHundredths(yearlyChangeDeg),
    model: "WMM2025",
    why: {},
  };
}

function fieldAt({ lat, lon }: Position, heightM: number, year: number) {
  const { x, y, h } = magvar.calculateMagneticField(year, lat, lon, heightM / 1000);
  // From the components: the library's own angle is already cut to 0.01 degree, too coarse for a change a year.
  return { declinationDeg: (Math.atan2(y, x) * 180) / Math.PI, h, year };
}

function decimalYear(localDate: string): number {
  const start = Date.parse(`${localDate}T00:00:00Z`);
  const isDate = Number.isFinite(start) && new Date(start).toISOString().startsWith(localDate);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(localDate) || !isDate) {
    throw new RangeError(`localDate must be a real date YYYY-MM-DD, found ${JSON.stringify(localDate)}`);
  }
  const year = Number(localDate.slice(0, 4));
  const newYear = Date.UTC(year, 0, 1);
  return year + (start - newYear) / (Date.UTC(year + 1, 0, 1) - newYear);
}

function unknown(reason: string): MagneticDeclination {
  return {
    declinationDeg: null,
    yearlyChangeDeg: null,
    model: "WMM2025",
    why: { declinationDeg: reason, yearlyChangeDeg: reason },
  };
}

function toHundredths(valueDeg: number): number {
  return Math.round(valueDeg * 100) / 100 + 0;
}
