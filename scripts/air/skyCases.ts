import type { ModelConstants } from "./modelConstants.ts";
import { clearCoolingWm2, cloudCoolingShare, cloudGlobalShare } from "./radiation.ts";
import type { AirWeather, WeatherRow } from "./slopeSite.ts";

/** One stretch of weather as the members see it: the cloud as given, with more and with less. */
export interface SkyCases {
  /** Epoch milliseconds from which the row holds. */
  fromMs: number;
  cloudShare: readonly [number, number, number];
  globalShare: readonly [number, number, number];
  coolingShare: readonly [number, number, number];
  /** Heat lost by flat ground to a clear sky. */
  clearCoolingWm2: number;
}

/**
 * The weather as rows in order of time; one constant weather gives one row. The first row holds before itself too.
 *
 * @throws {RangeError} no row, rows out of order, cloud or humidity out of 0 to 1, a temperature that is no number
 */
export function skyCases(weather: AirWeather | readonly WeatherRow[], constants: ModelConstants): SkyCases[] {
  const rows = isRows(weather) ? weather : [{ ...weather, at: new Date(0) }];
  if (rows.length === 0) throw new RangeError("weather must have at least one row, found none");
  let before = Number.NEGATIVE_INFINITY;
  return rows.map((row) => {
    const fromMs = row.at.getTime();
    if (!(fromMs > before))
      throw new RangeError(`weather rows must be in order of time, found ${row.at.toISOString()}`);
    before = fromMs;
    return casesOf(row, fromMs, constants);
  });
}

function isRows(weather: AirWeather | readonly WeatherRow[]): weather is readonly WeatherRow[] {
  return Array.isArray(weather);
}

function casesOf(weather: AirWeather, fromMs: number, constants: ModelConstants): SkyCases {
  const cloud = share("cloudShare", weather.cloudShare);
  const humidity = share("relativeHumidity", weather.relativeHumidity ?? constants.relativeHumidity);
  const tempC = weather.airTempC ?? constants.airTempC;
  if (!(tempC > -90 && tempC < 70)) throw new RangeError(`airTempC must be -90 to 70, found ${tempC}`);
  const cloudShare = [
    cloud,
    Math.min(1, cloud + constants.ensembleCloud),
    Math.max(0, cloud - constants.ensembleCloud),
  ] as const;
  const each = (f: (c: number, constants: ModelConstants) => number): [number, number, number] => [
    f(cloudShare[0], constants),
    f(cloudShare[1], constants),
    f(cloudShare[2], constants),
  ];
  return {
    fromMs,
    cloudShare,
    globalShare: each(cloudGlobalShare),
    coolingShare: each(cloudCoolingShare),
    clearCoolingWm2: clearCoolingWm2(tempC, humidity),
  };
}

function share(name: string, value: number): number {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be 0 to 1, found ${value}`);
  return value;
}
