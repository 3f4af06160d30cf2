import { type Check, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

const KMH_PER_MPS = 3.6;
const WARMEST_C = 10; // no wind chill is defined above
const WALKING_PACE_KMH = 5; // the index compares with a walk of about this pace; below it another formula holds

/**
 * Wind chill index on the Celsius scale: how cold bare skin feels, by air temperature and 10 m wind. Above 10 C the air
 * temperature itself. Does not cover sun, wet clothes or sitting still for hours.
 *
 * @throws {RangeError} when the temperature is no number or the wind is below 0
 * @source Environment Canada 2001 wind chill program, chart and formula; the part below 5 km/h from memory, unchecked (it
 *   meets the other at 5 km/h)
 * @example windChillC(-10, 5.5556) // -17.9, the chart says -18 at 20 km/h
 */
export function windChillC(tempC: number, windSpeedMps: number): number {
  if (!Number.isFinite(tempC)) throw new RangeError(`tempC must be a finite number, found ${tempC}`);
  if (!(windSpeedMps >= 0 && Number.isFinite(windSpeedMps))) {
    throw new RangeError(`windSpeedMps must be 0 or more, found ${windSpeedMps}`);
  }
  const windKmh = windSpeedMps * KMH_PER_MPS;
  if (tempC > WARMEST_C) return tempC;
  if (windKmh < WALKING_PACE_KMH) return tempC + ((-1.59 + 0.1345 * tempC) / WALKING_PACE_KMH) * windKmh;
  return 13.12 + 0.6215 * tempC - 11.37 * windKmh ** 0.16 + 0.3965 * tempC * windKmh ** 0.16;
}

/** C29: how cold a sit is. Unknown temperature or wind is NOT CHECKED. */
export function windChill(
  facts: { subject: string; tempC: number | null; windSpeedMps: number | null },
  limits: Pick<SafetyLimits, "windChillCautionC" | "windChillStopC">,
): Check {
  const { subject, tempC, windSpeedMps } = facts;
  const inputs = { tempC, windSpeedMps };
  if (tempC === null || windSpeedMps === null) {
    const unknown = tempC === null ? "temperature" : "wind";
    return {
      id: "C29",
      result: "NOT CHECKED",
      text: `Wind chill not known: no ${unknown}.`,
      subject,
      inputs,
    };
  }
  const chillC = windChillC(tempC, windSpeedMps);
  const result =
    chillC <= limits.windChillStopC ? "STOP" : chillC <= limits.windChillCautionC ? "CAUTION" : "OK";
  const tail = { OK: "", CAUTION: ": carry the warm layer up by line", STOP: ": frostbite, do not sit" }[
    result
  ];
  const text = `Air ${figure(tempC)} °C, feels like ${figure(chillC)} in the wind${tail}.`;
  return {
    id: "C29",
    result,
    text,
    subject,
    inputs: { ...inputs, windChillC: Math.round(chillC * 10) / 10 },
  };
}

/** C29, second part: freezing rain in the forecast of a sit is a STOP for climbing. */
export function freezingRain(facts: { subject: string; freezingRain: boolean | null }): Check {
  const { subject, freezingRain: isForecast } = facts;
  const inputs = { freezingRain: isForecast };
  if (isForecast === null) {
    return {
      id: "C29",
      result: "NOT CHECKED",
      text: "Freezing rain is not in the forecast given.",
      subject,
      inputs,
    };
  }
  return isForecast
    ? { id: "C29", result: "STOP", text: "Freezing rain forecast: do not climb.", subject, inputs }
    : { id: "C29", result: "OK", text: "No freezing rain forecast.", subject, inputs };
}
