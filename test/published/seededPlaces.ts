import type { Position } from "../../scripts/geo/position.ts";
import { addDays } from "../../scripts/time/civilTime.ts";

export interface PlaceDay {
  place: string;
  position: Position;
  timezone: string;
  localDate: string;
}

/** Places with offsets and clock changes that have caught programs before, from 78 N to 72 S. */
const FIXED_PLACES: readonly (readonly [string, number, number, string])[] = [
  ["Denver", 39.7392, -104.9903, "America/Denver"],
  ["Inverness", 57.4778, -4.2247, "Europe/London"],
  ["Auckland", -36.877, 174.764, "Pacific/Auckland"],
  ["Queenstown", -45.0312, 168.6626, "Pacific/Auckland"],
  ["Chatham Islands", -43.9535, -176.5597, "Pacific/Chatham"],
  ["Tonga", -21.1394, -175.2018, "Pacific/Tongatapu"],
  ["Samoa", -13.83, -171.76, "Pacific/Apia"],
  ["Pago Pago", -14.28, -170.7, "Pacific/Pago_Pago"],
  ["Kiritimati", 1.8721, -157.4278, "Pacific/Kiritimati"],
  ["Honolulu", 21.3069, -157.8583, "Pacific/Honolulu"],
  ["Lord Howe Island", -31.5553, 159.0821, "Australia/Lord_Howe"],
  ["Kathmandu", 27.7172, 85.324, "Asia/Kathmandu"],
  ["Urumqi on Shanghai time", 43.8, 87.6, "Asia/Shanghai"],
  ["Santiago", -33.45, -70.67, "America/Santiago"],
  ["Ushuaia", -54.8019, -68.303, "America/Argentina/Ushuaia"],
  ["Fairbanks", 64.84, -147.72, "America/Anchorage"],
  ["Nome", 64.5, -165.41, "America/Nome"],
  ["Anchorage", 61.2181, -149.9003, "America/Anchorage"],
  ["Helsinki", 60.1699, 24.9384, "Europe/Helsinki"],
  ["Oulu", 65.0121, 25.4651, "Europe/Helsinki"],
  ["Tromsø", 69.6492, 18.9553, "Europe/Oslo"],
  ["Longyearbyen", 78.2232, 15.6267, "Arctic/Longyearbyen"],
  ["Rothera", -67.57, -68.13, "Antarctica/Rothera"],
  ["Troll", -72.01, 2.53, "Antarctica/Troll"],
];

/**
 * 500 places and dates of 2025 to 2029, the same every time: 220 at fixed places, 100 at 60 to 70 degrees north or
 * south, 180 anywhere below 60 degrees, these two on whole-hour zones up to two hours from their own sun.
 */
export function seededPlaceDays(seed = 20260404): PlaceDay[] {
  const random = generator(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const date = (): string => addDays("2025-01-01", Math.floor(between(0, 1826)));
  const days: PlaceDay[] = [];
  for (let i = 0; i < 500; i++) {
    if (i < 220) {
      const [place, lat, lon, timezone] = FIXED_PLACES[i % FIXED_PLACES.length]!;
      days.push({ place, position: { lat, lon }, timezone, localDate: date() });
      continue;
    }
    const lon = Math.round(between(-180, 180) * 1e4) / 1e4;
    const absLat = i < 320 ? between(60, 70) : Math.abs(between(-60, 60));
    const lat = Math.round(absLat * (random() < 0.5 ? -1 : 1) * 1e4) / 1e4;
    const timezone = wholeHourZone(Math.round(lon / 15 + between(-2, 2)));
    days.push({ place: `${lat}, ${lon}`, position: { lat, lon }, timezone, localDate: date() });
  }
  return days;
}

/** The zone a whole number of hours ahead of UTC; its name counts the other way. */
function wholeHourZone(hoursAhead: number): string {
  const hours = Math.min(14, Math.max(-12, hoursAhead));
  return hours === 0 ? "Etc/GMT" : `Etc/GMT${hours > 0 ? "-" : "+"}${Math.abs(hours)}`;
}

/** Lehmer's generator, multiplier 48271: small, and the same on every machine. */
function generator(seed: number): () => number {
  let state = seed % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
