import { normalizeDeg, sectorWidthDeg } from "../geo/bearings.ts";

const RADIAN = Math.PI / 180;
const ANGLE_STEP_DEG = 1;
const ANGLES = 180 / ANGLE_STEP_DEG + 1;
const KAPPA_STEP = 0.05;

/** Density of a direction at an angle from the mean, per radian. @source Mardia and Jupp 2000, isotropic projected normal */
export function directionDensity(kappa: number, offRad: number): number {
  const along = kappa * Math.cos(offRad);
  const across = kappa * Math.sin(offRad);
  const ahead = Math.sqrt(2 * Math.PI) * along * normalShare(along) * Math.exp((-across * across) / 2);
  return Math.max(0, (Math.exp((-kappa * kappa) / 2) + ahead) / (2 * Math.PI));
}

/**
 * Share of a normal variable under x, 0 to 1, absolute error under 1e-14.
 *
 * @source Marsaglia 2004, Journal of Statistical Software 11(4), series for the middle; Lentz's continued fraction outside
 */
export function normalShare(x: number): number {
  if (x < -38) return 0;
  if (x > 38) return 1;
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  if (Math.abs(x) < 4) {
    let term = x;
    let sum = x;
    for (let i = 3; Math.abs(term) > 1e-17; i += 2) {
      term *= (x * x) / i;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  let fraction = 0;
  for (let i = 60; i > 0; i--) fraction = i / (Math.abs(x) + fraction);
  const tail = density / (Math.abs(x) + fraction);
  return x > 0 ? 1 - tail : tail;
}

/** For one steadiness, at each angle: the chance from 0 to it, then the density times the angle step. */
type AngleTable = Float64Array;

const tables: (AngleTable | undefined)[] = [];

/**
 * Chance that the drift goes into a sector that runs clockwise between two angles from the mean direction, 0 to 1.
 * From a table that fills itself as it is used; error under 2e-6.
 *
 * @param kappa steadiness, 0 to 12
 * @throws {RangeError} a kappa out of 0 to 12, an angle that is no number
 */
export function sectorChance(kappa: number, fromDeg: number, toDeg: number): number {
  return chanceOfWidth(kappa, normalizeDeg(fromDeg), sectorWidthDeg(fromDeg, toDeg));
}

/** The same for a sector given by its beginning and its width, 0 to 360. */
export function chanceOfWidth(kappa: number, fromDeg: number, widthDeg: number): number {
  if (!(kappa >= 0 && kappa <= 12)) throw new RangeError(`kappa must be 0 to 12, found ${kappa}`);
  if (widthDeg >= 360) return 1;
  const from = fromDeg > 180 ? fromDeg - 360 : fromDeg;
  const place = kappa / KAPPA_STEP;
  const middle = Math.max(1, Math.floor(place));
  const t = place - middle;
  // Cubic through four tables: the error of a straight line at this step would be 1e-4.
  const rows = fourTables(middle);
  const weights = [
    (-t * (t - 1) * (t - 2)) / 6,
    ((t + 1) * (t - 1) * (t - 2)) / 2,
    (-(t + 1) * t * (t - 2)) / 2,
    ((t + 1) * t * (t - 1)) / 6,
  ] as const;
  const chance = chanceTo(rows, weights, from + widthDeg) - chanceTo(rows, weights, from);
  return Math.min(1, Math.max(0, chance));
}

type FourTables = readonly [AngleTable, AngleTable, AngleTable, AngleTable];
type FourWeights = readonly [number, number, number, number];

/** Chance from the mean direction to an angle, odd in the angle; whole turns add 1. */
function chanceTo(rows: FourTables, weights: FourWeights, angleDeg: number): number {
  if (angleDeg > 180) return 1 + chanceTo(rows, weights, angleDeg - 360);
  if (angleDeg < 0) return -chanceTo(rows, weights, -angleDeg);
  const place = angleDeg / ANGLE_STEP_DEG;
  const i = Math.min(ANGLES - 2, Math.floor(place));
  const t = place - i;
  const u = 1 - t;
  const here = u * u * (1 + 2 * t);
  const next = t * t * (3 - 2 * t);
  const slopeHere = t * u * u;
  const slopeNext = -t * t * u;
  let chance = 0;
  for (let k = 0; k < 4; k++) {
    const table = rows[k] as AngleTable;
    chance +=
      (weights[k] as number) *
      ((table[2 * i] as number) * here +
        (table[2 * i + 2] as number) * next +
        (table[2 * i + 1] as number) * slopeHere +
        (table[2 * i + 3] as number) * slopeNext);
  }
  return chance;
}

const fours: (FourTables | undefined)[] = [];

function fourTables(middle: number): FourTables {
  const kept = fours[middle];
  if (kept !== undefined) return kept;
  const made = [tableOf(middle - 1), tableOf(middle), tableOf(middle + 1), tableOf(middle + 2)] as const;
  fours[middle] = made;
  return made;
}

function tableOf(kappaIndex: number): AngleTable {
  const table = tables[kappaIndex] ?? angleTable(kappaIndex * KAPPA_STEP);
  tables[kappaIndex] = table;
  return table;
}

function angleTable(kappa: number): AngleTable {
  const table = new Float64Array(2 * ANGLES);
  const stepRad = ANGLE_STEP_DEG * RADIAN;
  const panelRad = stepRad / 4;
  let sum = 0;
  let ahead = directionDensity(kappa, 0);
  for (let i = 0; i < ANGLES; i++) {
    const at = i * stepRad;
    table[2 * i] = sum;
    table[2 * i + 1] = ahead * stepRad;
    const d = (k: number): number => directionDensity(kappa, at + k * panelRad);
    const next = d(4);
    sum += (panelRad / 3) * (ahead + 4 * d(1) + 2 * d(2) + 4 * d(3) + next);
    ahead = next;
  }
  return table;
}
