/** Units that an area shows; all arithmetic is metric. */
export type Units = "metric" | "us";

// International foot 0.3048 m, yard 0.9144 m, mile 1609.344 m, inch 25.4 mm, exact by definition.
const FOOT_M = 0.3048;
const YARD_M = 0.9144;
const MILE_M = 1609.344;
const INCH_MM = 25.4;
const POUND_KG = 0.45359237; // avoirdupois pound, exact by definition

/** Elevation or climb, whole metres or feet. */
export function heightText(heightM: number, units: Units): string {
  return units === "us" ? `${whole(finite(heightM) / FOOT_M)} ft` : `${whole(finite(heightM))} m`;
}

/** Height of a platform, to 0.1 m or whole feet. */
export function platformText(heightM: number, units: Units): string {
  return units === "us" ? `${whole(finite(heightM) / FOOT_M)} ft` : `${trimmed(finite(heightM), 1)} m`;
}

/** A height next to its limit: 0.1 m or 0.1 ft. */
export function platformFinelyText(heightM: number, units: Units): string {
  return units === "us" ? `${trimmed(finite(heightM) / FOOT_M, 1)} ft` : `${trimmed(finite(heightM), 1)} m`;
}

/** A load, 0.1 kg or 0.1 lb. */
export function weightText(massKg: number, units: Units): string {
  return units === "us" ? `${trimmed(finite(massKg) / POUND_KG, 1)} lb` : `${trimmed(finite(massKg), 1)} kg`;
}

/** Distance in sight or shot, whole metres or yards. */
export function rangeText(distanceM: number, units: Units): string {
  return units === "us" ? `${whole(finite(distanceM) / YARD_M)} yd` : `${whole(finite(distanceM))} m`;
}

/** A stretch to walk: to 50 m (50 yd) under 1 km (half a mile), above that to 0.1 km (0.1 miles). */
export function walkDistanceText(distanceM: number, units: Units): string {
  if (units === "us") {
    return finite(distanceM) < MILE_M / 2
      ? `${whole(distanceM / YARD_M / 50) * 50} yd`
      : `${trimmed(distanceM / MILE_M, 1)} miles`;
  }
  return finite(distanceM) < 975 ? `${whole(distanceM / 50) * 50} m` : `${trimmed(distanceM / 1000, 1)} km`;
}

/** Trunk measures: whole millimetres or 0.1 inch. */
export function trunkText(lengthMm: number, units: Units): string {
  return units === "us" ? `${trimmed(finite(lengthMm) / INCH_MM, 1)} in` : `${whole(finite(lengthMm))} mm`;
}

/** Wind: m/s to the half under 10, whole above; mph whole. */
export function windSpeedText(speedMps: number, units: Units): string {
  const speed = finite(speedMps);
  if (units === "us") return `${whole((speed * 3600) / MILE_M)} mph`;
  return speed < 10 ? `${trimmed(Math.round(speed * 2) / 2, 1)} m/s` : `${whole(speed)} m/s`;
}

/** Speed of slope air: 0.1 m/s, or mph to 0.5, since whole miles an hour would hide it. */
export function airSpeedText(speedMps: number, units: Units): string {
  return units === "us"
    ? `${trimmed(Math.round(((finite(speedMps) * 3600) / MILE_M) * 2) / 2, 1)} mph`
    : `${trimmed(finite(speedMps), 1)} m/s`;
}

function whole(value: number): number {
  return Math.round(value) + 0; // + 0 turns -0 into 0
}

function trimmed(value: number, places: number): string {
  return String(Number(value.toFixed(places)) + 0);
}

function finite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`a measure must be a finite number, found ${value}`);
  return value;
}
