/** One named passage of the sun through an angle, on its way up or down. */
export interface SunEvent {
  name: SunEventName;
  sunDeg: number;
  climbs: boolean;
  /** As in "the nearest ... is at". */
  label: string;
}

export type SunEventName =
  | "nauticalDawn"
  | "firstLight"
  | "sunrise"
  | "sunset"
  | "lastLight"
  | "nauticalDusk";

/** Centre of the sun when its upper edge is on a level horizon: 34' refraction and 16' radius. */
export const SUNRISE_SUN_DEG = -0.833; // US Naval Observatory, Rise, Set, and Twilight Definitions (50', as 0.833 degrees)
const NAUTICAL_SUN_DEG = -12; // same source
/** Ends of civil twilight, same source. */
export const CIVIL_SUN_DEG = -6;

/**
 * The six events of a day in order, with first and last light at the angle the area gives.
 *
 * @throws {RangeError} when the angle is not between -18 and 6 degrees
 */
export function sunEvents(firstLightSunDeg: number): SunEvent[] {
  if (!(firstLightSunDeg >= -18 && firstLightSunDeg <= 6)) {
    throw new RangeError(`firstLightSunDeg must be -18 to 6, found ${firstLightSunDeg}`);
  }
  return [
    { name: "nauticalDawn", sunDeg: NAUTICAL_SUN_DEG, climbs: true, label: "nautical dawn" },
    { name: "firstLight", sunDeg: firstLightSunDeg, climbs: true, label: "first light" },
    { name: "sunrise", sunDeg: SUNRISE_SUN_DEG, climbs: true, label: "sunrise" },
    { name: "sunset", sunDeg: SUNRISE_SUN_DEG, climbs: false, label: "sunset" },
    { name: "lastLight", sunDeg: firstLightSunDeg, climbs: false, label: "last light" },
    { name: "nauticalDusk", sunDeg: NAUTICAL_SUN_DEG, climbs: false, label: "nautical dusk" },
  ];
}

/** Why a height is never passed: the sun stays on one side of it. */
export function staysSentence(sunDeg: number, isAbove: boolean, stretch: string): string {
  const height = heightWords(sunDeg);
  return isAbove
    ? `the sun does not sink to ${height} ${stretch}`
    : `the sun does not climb to ${height} ${stretch}`;
}

function heightWords(sunDeg: number): string {
  if (sunDeg === SUNRISE_SUN_DEG) return "the horizon";
  if (sunDeg === 0) return "0° altitude";
  return `${Math.abs(sunDeg)}° ${sunDeg < 0 ? "below" : "above"} the horizon`;
}
