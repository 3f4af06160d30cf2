/** A height that the sun passes: its centre through an angle, or its upper edge through the horizon. */
export type SunMark = { of: "centre"; sunDeg: number } | { of: "edge" };

/** One named passage of the sun, on its way up or down. */
export interface SunEvent {
  name: SunEventName;
  mark: SunMark;
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

const NAUTICAL_SUN_DEG = -12; // US Naval Observatory, Rise, Set, and Twilight Definitions
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
  const nautical: SunMark = { of: "centre", sunDeg: NAUTICAL_SUN_DEG };
  const light: SunMark = { of: "centre", sunDeg: firstLightSunDeg };
  const horizon: SunMark = { of: "edge" };
  return [
    { name: "nauticalDawn", mark: nautical, climbs: true, label: "nautical dawn" },
    { name: "firstLight", mark: light, climbs: true, label: "first light" },
    { name: "sunrise", mark: horizon, climbs: true, label: "sunrise" },
    { name: "sunset", mark: horizon, climbs: false, label: "sunset" },
    { name: "lastLight", mark: light, climbs: false, label: "last light" },
    { name: "nauticalDusk", mark: nautical, climbs: false, label: "nautical dusk" },
  ];
}

/** Why a height is never passed: the sun stays on one side of it. */
export function staysSentence(mark: SunMark, isAbove: boolean, stretch: string): string {
  const height = heightWords(mark);
  return isAbove
    ? `the sun does not sink to ${height} ${stretch}`
    : `the sun does not climb to ${height} ${stretch}`;
}

function heightWords(mark: SunMark): string {
  if (mark.of === "edge") return "the horizon";
  return `${Math.abs(mark.sunDeg)}° ${mark.sunDeg < 0 ? "below" : "above"} the horizon`;
}
