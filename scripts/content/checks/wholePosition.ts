import type { Position } from "../../geo/position.ts";
import type { Loose } from "../loose.ts";

/** A position with both its numbers, or null. */
export function wholePosition(position: Loose<Position> | undefined): Position | null {
  return position?.lat === undefined || position.lon === undefined
    ? null
    : { lat: position.lat, lon: position.lon };
}
