import { type SunAnchors, type SunAnchorsOf, sunAnchors } from "../light/sunAnchors.ts";

/** Looks up the events that rules and sessions count from, each day and place computed once. */
export function sunAnchorsOf(timezone: string): SunAnchorsOf {
  const known = new Map<string, SunAnchors>();
  return (localDate, position) => {
    const key = `${localDate} ${position.lat} ${position.lon}`;
    let anchors = known.get(key);
    if (anchors === undefined) {
      anchors = sunAnchors(localDate, position, timezone);
      known.set(key, anchors);
    }
    return anchors;
  };
}
