import { checkedPosition, type Position } from "./position.ts";

/**
 * Decimal degrees with 5 places (about 1 m) and signs, latitude first: what phones and rescue desks take.
 *
 * @example decimalDegreesText({ lat: -45.0312, lon: 168.6626 }) // "-45.03120, 168.66260"
 */
export function decimalDegreesText(position: Position): string {
  const { lat, lon } = checkedPosition(position);
  return `${fixed(lat, 5)}, ${fixed(lon, 5)}`;
}

/**
 * Degrees and decimal minutes with 3 places (about 2 m) and hemisphere letters, latitude first: what aircraft take.
 *
 * @example degreesMinutesText({ lat: -45.0312, lon: 168.6626 }) // "45° 01.872′ S, 168° 39.756′ E"
 */
export function degreesMinutesText(position: Position): string {
  const { lat, lon } = checkedPosition(position);
  return `${degreesMinutes(lat, 2, "N", "S")}, ${degreesMinutes(lon, 3, "E", "W")}`;
}

function degreesMinutes(angleDeg: number, degreeDigits: number, positive: string, negative: string): string {
  const thousandths = Math.round(Math.abs(angleDeg) * 60_000); // rounded whole, so that 59.9996 carries into the degrees
  const degrees = String(Math.floor(thousandths / 60_000)).padStart(degreeDigits, "0");
  const minutes = ((thousandths % 60_000) / 1000).toFixed(3).padStart(6, "0");
  return `${degrees}° ${minutes}′ ${angleDeg < 0 && thousandths > 0 ? negative : positive}`;
}

function fixed(value: number, places: number): string {
  const text = value.toFixed(places);
  return Number(text) === 0 ? (0).toFixed(places) : text;
}
