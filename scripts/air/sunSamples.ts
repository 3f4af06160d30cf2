import type { ModelConstants } from "./modelConstants.ts";
import { airMass, clearBeamWm2, clearDiffuseWm2, clearGlobalWm2 } from "./radiation.ts";
import type { SlopeSite, SunTable } from "./slopeSite.ts";

const RADIAN = Math.PI / 180;
const MINUTE_MS = 60_000;
const NO_SUN_DEG = -90;
/** A moment this near to a row of the sun table is taken as on it: there may be no row after the last. */
const ON_ROW = 1e-9;

/**
 * What all members of the ensemble share of the sun at a row of moments, ten numbers a moment: the sun's direction
 * (east, north, up), its height over the skyline in degrees (-90 while it is under the flat horizon), clear-sky beam
 * for the three kinds of air, clear-sky sky light for the three. All others 0 while the sun is down.
 */
export type SunSamples = Float64Array;

/** Numbers a moment, and where each begins. */
export const SUN = {
  stride: 10,
  east: 0,
  north: 1,
  up: 2,
  clearanceDeg: 3,
  beamWm2: 4,
  diffuseWm2: 7,
} as const;

/** Place and skyline of the samples. */
export interface SunSampling {
  sun: SunTable;
  horizonDeg: ArrayLike<number> | null;
  /** Lowest and highest angle of the skyline; 0 without one. */
  skylineRangeDeg: readonly [number, number];
  /** Share of the way through the air at sea level that is left at the site, both to the power `airMassExponent`. */
  pathShare: number;
  /** Logarithms for the usual air, for very clear air, for hazy air. */
  logTransmittances: readonly [number, number, number];
  constants: ModelConstants;
}

export function emptySunSamples(count: number): SunSamples {
  return new Float64Array(count * SUN.stride);
}

/** The sampling of a site; a valley floor is taken without its skyline. */
export function sunSampling(site: SlopeSite, sun: SunTable, constants: ModelConstants): SunSampling {
  const horizonDeg = site.landform === "floor" ? null : site.horizonDeg;
  if (horizonDeg && horizonDeg.length !== 360) {
    throw new RangeError(`horizonDeg must have 360 bearings, found ${horizonDeg.length}`);
  }
  let lowestDeg = horizonDeg ? Number.POSITIVE_INFINITY : 0;
  let highestDeg = horizonDeg ? Number.NEGATIVE_INFINITY : 0;
  for (let bearing = 0; horizonDeg && bearing < 360; bearing++) {
    const angleDeg = horizonDeg[bearing] as number;
    if (!Number.isFinite(angleDeg)) {
      throw new RangeError(`horizonDeg must be a finite angle, found ${angleDeg} at bearing ${bearing}`);
    }
    lowestDeg = Math.min(lowestDeg, angleDeg);
    highestDeg = Math.max(highestDeg, angleDeg);
  }
  const { clearTransmittance, clearTransmittanceHigh, clearTransmittanceLow } = constants;
  const logTransmittances = [
    Math.log(clearTransmittance),
    Math.log(clearTransmittanceHigh),
    Math.log(clearTransmittanceLow),
  ] as const;
  const skylineRangeDeg = [lowestDeg, highestDeg] as const;
  const pathShare = Math.exp((-constants.airMassExponent * site.elevationM) / constants.airScaleHeightM);
  return { sun, horizonDeg, skylineRangeDeg, pathShare, logTransmittances, constants };
}

/**
 * Fills one row of samples with the sun at a moment, between two rows of the sun table by straight lines (error
 * under 0.004 deg at 5 min).
 *
 * @returns whether the sun is up
 */
export function fillSunSample(
  samples: SunSamples,
  index: number,
  atMs: number,
  sunFactor: number,
  sampling: SunSampling,
): boolean {
  const { constants } = sampling;
  const altitudeDeg = altitudeDegAt(atMs, sampling);
  const first = index * SUN.stride;
  if (!(altitudeDeg > 0)) {
    samples.fill(0, first, first + SUN.stride);
    samples[first + SUN.clearanceDeg] = NO_SUN_DEG;
    return false;
  }
  const azimuthDeg = azimuthDegAt(atMs, sampling);
  const row = tableRowAt(atMs, sampling.sun);
  const from = row === null ? 0 : row * SKY.stride;
  const sky = row === null ? skyRow(ONE_ROW, 0, altitudeDeg, azimuthDeg, constants) : skyOfTable(sampling);
  const sinAltitude = sky[from + SKY.up] as number;
  samples[first + SUN.east] = sky[from + SKY.east] as number;
  samples[first + SUN.north] = sky[from + SKY.north] as number;
  samples[first + SUN.up] = sinAltitude;
  samples[first + SUN.clearanceDeg] = altitudeDeg - skylineDeg(sampling.horizonDeg, azimuthDeg);
  const path = (sky[from + SKY.path] as number) * sampling.pathShare;
  const global = (sky[from + SKY.globalWm2] as number) * sunFactor;
  for (let air = 0; air < 3; air++) {
    const beam = clearBeamWm2(path, sunFactor, sampling.logTransmittances[air] as number, constants);
    samples[first + SUN.beamWm2 + air] = beam;
    samples[first + SUN.diffuseWm2 + air] = clearDiffuseWm2(global, beam, sinAltitude, constants);
  }
  return true;
}

/** What the sun's place alone decides, five numbers a row: its direction, its way through the air at sea level, flat global light. */
const SKY = { stride: 5, east: 0, north: 1, up: 2, path: 3, globalWm2: 4 } as const;
const ONE_ROW = new Float64Array(SKY.stride);

/** Worked out once for a sun table: all sites of an area stand under the same sun. */
const skies = new WeakMap<SunTable, { constants: ModelConstants; rows: Float64Array }>();

function skyOfTable({ sun, constants }: SunSampling): Float64Array {
  const known = skies.get(sun);
  if (known?.constants === constants) return known.rows;
  const rows = new Float64Array(sun.altitudeDeg.length * SKY.stride);
  for (let row = 0; row < sun.altitudeDeg.length; row++) {
    const altitudeDeg = sun.altitudeDeg[row] as number;
    if (altitudeDeg > 0) skyRow(rows, row, altitudeDeg, sun.azimuthDeg[row] as number, constants);
  }
  skies.set(sun, { constants, rows });
  return rows;
}

function skyRow(
  rows: Float64Array,
  row: number,
  altitudeDeg: number,
  azimuthDeg: number,
  constants: ModelConstants,
): Float64Array {
  const at = row * SKY.stride;
  const sinAltitude = Math.sin(altitudeDeg * RADIAN);
  const cosAltitude = Math.cos(altitudeDeg * RADIAN);
  rows[at + SKY.east] = cosAltitude * Math.sin(azimuthDeg * RADIAN);
  rows[at + SKY.north] = cosAltitude * Math.cos(azimuthDeg * RADIAN);
  rows[at + SKY.up] = sinAltitude;
  rows[at + SKY.path] = Math.exp(constants.airMassExponent * Math.log(airMass(altitudeDeg, 0, constants)));
  rows[at + SKY.globalWm2] = clearGlobalWm2(sinAltitude, 1, constants);
  return rows;
}

/** The row of the sun table that a moment falls on; null between two rows. */
function tableRowAt(atMs: number, sun: SunTable): number | null {
  const place = (atMs - sun.startsAt.getTime()) / (sun.stepMin * MINUTE_MS);
  const row = Math.floor(place);
  return place - row > ON_ROW ? null : row;
}

/** Height of the sun over the skyline at a moment, as the samples hold it: -90 while it is under the flat horizon. */
export function clearanceDegAt(atMs: number, sampling: SunSampling): number {
  const altitudeDeg = altitudeDegAt(atMs, sampling);
  return altitudeDeg > 0
    ? altitudeDeg - skylineDeg(sampling.horizonDeg, azimuthDegAt(atMs, sampling))
    : NO_SUN_DEG;
}

/** Height of the sun over the flat horizon, between the rows of the sun table by straight lines. */
export function altitudeDegAt(atMs: number, { sun }: SunSampling): number {
  const place = (atMs - sun.startsAt.getTime()) / (sun.stepMin * MINUTE_MS);
  const row = Math.floor(place);
  const share = place - row;
  const here = sun.altitudeDeg[row] as number;
  return share > ON_ROW ? here + share * ((sun.altitudeDeg[row + 1] as number) - here) : here;
}

/** Not brought into 0 to 360. */
function azimuthDegAt(atMs: number, { sun }: SunSampling): number {
  const place = (atMs - sun.startsAt.getTime()) / (sun.stepMin * MINUTE_MS);
  const row = Math.floor(place);
  const share = place - row;
  const here = sun.azimuthDeg[row] as number;
  if (share <= ON_ROW) return here;
  const turn = (sun.azimuthDeg[row + 1] as number) - here;
  return here + share * (turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn);
}

function skylineDeg(horizonDeg: ArrayLike<number> | null, azimuthDeg: number): number {
  if (!horizonDeg) return 0;
  const bearing = ((azimuthDeg % 360) + 360) % 360;
  const whole = Math.floor(bearing);
  const here = horizonDeg[whole % 360] as number;
  const next = horizonDeg[(whole + 1) % 360] as number;
  return here + (bearing - whole) * (next - here);
}
