import { normalizeDeg } from "../../geo/bearings.ts";

/** A bearing as read out: three digits, whole degrees, 360 written 000. */
export function bearingText(bearingDeg: number): string {
  return String(Math.round(normalizeDeg(bearingDeg)) % 360).padStart(3, "0");
}

/**
 * The two ends of a barred sector as printed, rounded outward so that the printed sector holds the whole one.
 *
 * @example barredSpanText(40.2, 84.1) // "040 to 085"
 */
export function barredSpanText(fromDeg: number, toDeg: number): string {
  return `${bearingText(Math.floor(fromDeg))} to ${bearingText(Math.ceil(toDeg))}`;
}

/**
 * How to turn a true bearing into one on a compass, for the day the declination was worked out.
 *
 * @param declinationDeg  east positive
 * @example compassSentence(25.27) // "Compass = true bearing minus 25.3 degrees."
 */
export function compassSentence(declinationDeg: number): string {
  const rounded = Math.round(Math.abs(declinationDeg) * 10) / 10;
  if (rounded === 0) return "Compass and true bearing are the same here.";
  return `Compass = true bearing ${declinationDeg > 0 ? "minus" : "plus"} ${rounded} ${rounded === 1 ? "degree" : "degrees"}.`;
}
