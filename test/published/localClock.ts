import { resolveClock } from "../../scripts/time/civilTime.ts";

/** The instant of a published local time "HH:MM:SS", which must happen exactly once that day. */
export function localClock(localDate: string, time: string, timezone: string): Date {
  const found = resolveClock(localDate, time.slice(0, 5), timezone);
  if (found.kind !== "one") throw new RangeError(`${time} on ${localDate} is not one instant in ${timezone}`);
  return new Date(found.at.getTime() + Number(time.slice(6)) * 1000);
}
