import type { Units } from "./measureText.ts";

/** Air temperature, whole degrees: "-1 °C" or "31 °F". */
export function tempText(tempC: number, units: Units): string {
  if (!Number.isFinite(tempC)) throw new RangeError(`tempC must be a finite number, found ${tempC}`);
  return units === "us" ? `${Math.round((tempC * 9) / 5 + 32) + 0} °F` : `${Math.round(tempC) + 0} °C`;
}
