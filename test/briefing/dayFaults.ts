import type { PackDay, PackFile } from "../../scripts/content/schema/packSchema.ts";
import { civilAt, eachDay, noonOf } from "../../scripts/time/civilTime.ts";

const EVENTS = [
  "clockChangeAt",
  "nauticalDawn",
  "firstLight",
  "sunrise",
  "solarNoon",
  "sunset",
  "lastLight",
  "nauticalDusk",
] as const;

/** Faults in the almanac of a pack: which days there are, events outside their day, legal ends inside a minute. */
export function dayFaults(pack: PackFile, tripDays: readonly string[]): string[] {
  const ofYear = eachDay(`${pack.year}-01-01`, `${pack.year}-12-31`);
  const expected = [...new Set([...ofYear, ...tripDays])].sort();
  const found = pack.days.map((day) => day.localDate);
  const faults = found.join() === expected.join() ? [] : ["days: not every day of the year and of the trips"];
  return [...faults, ...pack.days.flatMap((day) => oneDay(day, pack.area.timezone))];
}

function oneDay(day: PackDay, timezone: string): string[] {
  const at = `days ${day.localDate}`;
  const faults: string[] = [];
  const events = [...EVENTS.map((key) => [key, day[key]] as const), ["moonrise", day.moon.rise] as const];
  for (const [key, text] of [...events, ["moonset", day.moon.set] as const]) {
    if (text !== null && !text.startsWith(`${day.localDate}T`)) faults.push(`${at} ${key}: ${text}`);
  }
  const noonOffset = civilAt(noonOf(day.localDate, timezone), timezone).utcOffset;
  if (day.utcOffset !== noonOffset) faults.push(`${at} utcOffset: ${day.utcOffset}, at noon ${noonOffset}`);
  if (day.sunrise !== null && day.sunset !== null && day.dayLengthMin !== null) {
    const minutes = (Date.parse(day.sunset) - Date.parse(day.sunrise)) / 60_000;
    // 0.1: the length has one decimal, and both events were cut to whole seconds
    if (Math.abs(minutes - day.dayLengthMin) > 0.1) faults.push(`${at} dayLengthMin: ${day.dayLengthMin}`);
  }
  const { start, end, startLayer, endLayer, status, ruleIds } = day.shootingLight;
  for (const text of [start, end]) {
    if (text !== null && text.slice(17, 19) !== "00") faults.push(`${at} shootingLight: ${text}`);
  }
  if ((start === null) !== (end === null)) faults.push(`${at} shootingLight: one end alone`);
  if (start !== null && end !== null && Date.parse(start) >= Date.parse(end))
    faults.push(`${at} shootingLight: ends before it starts`);
  if ((start === null) !== (startLayer === null) || (end === null) !== (endLayer === null))
    faults.push(`${at} shootingLight: an end without its layer`);
  if (status === "not entered" && ruleIds.length > 0) faults.push(`${at} shootingLight: rules not entered`);
  return faults;
}
