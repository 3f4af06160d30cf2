import { isoInZone } from "../time/civilTime.ts";

/** An instant as pack.json writes it, in the zone of the area to the nearest second; null stays null. */
export function packInstant<T extends Date | null>(
  at: T,
  timezone: string,
): T extends Date ? string : string | null {
  return (at === null ? null : isoInZone(at, timezone)) as T extends Date ? string : string | null;
}
