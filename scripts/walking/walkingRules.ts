/** Constants of Tobler's walking speed, as in data/model.json. */
export interface ToblerConstants {
  toblerSpeedKmh: number;
  toblerSlopeFactor: number;
  /** The slope, rise over run, on which one walks fastest; negative = downhill. */
  toblerBestSlope: number;
}

/**
 * Walking speed over the map on a path, km/h, for a slope as rise over run (uphill positive). Fastest a little downhill.
 * Does not cover rests, load, dark, scrub or snow.
 *
 * @throws {RangeError} when the slope is not a finite number
 * @source Tobler 1993, Three presentations on geographical analysis and modeling, NCGIA technical report 93-1
 * @example toblerSpeedKmh(0, { toblerSpeedKmh: 6, toblerSlopeFactor: 3.5, toblerBestSlope: -0.05 }) // 5.0367
 */
export function toblerSpeedKmh(slope: number, constants: ToblerConstants): number {
  if (!Number.isFinite(slope)) throw new RangeError(`slope must be a finite number, found ${slope}`);
  const awayFromBest = Math.abs(slope - constants.toblerBestSlope);
  return constants.toblerSpeedKmh * Math.exp(-constants.toblerSlopeFactor * awayFromBest);
}

const NAISMITH_M_PER_MIN = 5000 / 60; // Naismith 1892, metric restatement
const NAISMITH_CLIMB_M_PER_MIN = 600 / 60; // same
const LANGMUIR_MIN_PER_M = 10 / 300; // Langmuir 1984
const LANGMUIR_GENTLE_DEG = 5; // same
const LANGMUIR_STEEP_DEG = 12; // same

/**
 * Minutes by the walkers' rule of thumb: 1 h for each 5 km on the map and 1 h for each 600 m of climb. Fit walkers on
 * paths, without rests.
 *
 * @throws {RangeError} when a length is negative or not a number
 * @source Naismith 1892, Scottish Mountaineering Club Journal 2:136, metric restatement
 * @example naismithMin(12_000, 600) // 204
 */
export function naismithMin(horizontalM: number, climbM: number): number {
  checkLength("horizontalM", horizontalM);
  checkLength("climbM", climbM);
  return horizontalM / NAISMITH_M_PER_MIN + climbM / NAISMITH_CLIMB_M_PER_MIN;
}

/**
 * Minutes that going downhill adds to Naismith's rule: less on slopes of 5 to 12 degrees, more on steeper ones, none
 * below 5 degrees or uphill.
 *
 * @param riseM   negative downhill
 * @throws {RangeError} when a value is not a number, or the run is negative
 * @source Langmuir 1984, Mountaincraft and Leadership
 * @example langmuirMin(-300, 2000) // -10
 */
export function langmuirMin(riseM: number, horizontalM: number): number {
  checkLength("horizontalM", horizontalM);
  if (!Number.isFinite(riseM)) throw new RangeError(`riseM must be a finite number, found ${riseM}`);
  const fallM = -riseM;
  const fallDeg = (Math.atan2(fallM, horizontalM) * 180) / Math.PI;
  if (fallM <= 0 || fallDeg < LANGMUIR_GENTLE_DEG) return 0;
  return (fallDeg <= LANGMUIR_STEEP_DEG ? -1 : 1) * fallM * LANGMUIR_MIN_PER_M;
}

function checkLength(name: string, lengthM: number): void {
  if (!(lengthM >= 0 && Number.isFinite(lengthM))) {
    throw new RangeError(`${name} must be 0 or more, found ${lengthM}`);
  }
}
