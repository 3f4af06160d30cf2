import { normalizeDeg, signedDifferenceDeg } from "../../geo/bearings.ts";

/**
 * The three norths of a sheet. Each angle is east positive: `declinationDeg` from true to magnetic north,
 * `convergenceDeg` from true to grid north, `gridMagneticDeg` from grid to magnetic north (-180 < x <= 180).
 */
export interface ThreeNorths {
  convergenceDeg: number;
  declinationDeg: number | null;
  gridMagneticDeg: number | null;
}

/** What the north diagram says in words: `short` beside it, `words` for the map to the compass, `back` the other way. */
export interface NorthSentences {
  short: string;
  words: string;
  back: string;
}

/**
 * The angles between the norths of a sheet. Grid-magnetic angle = declination - convergence; null when the declination is
 * not known. Iron, local rock and the change since the declination's date are not covered.
 *
 * @param declinationDeg  east positive, -180 to 180; null when not known
 * @param convergenceDeg  positive when grid north lies east of true north, as gridConvergenceDeg gives it
 * @throws {RangeError}   when an angle is not a finite number
 * @source definition: magnetic bearing = true bearing - declination, and true bearing = grid bearing + convergence
 */
export function threeNorths(declinationDeg: number | null, convergenceDeg: number): ThreeNorths {
  for (const angleDeg of [declinationDeg ?? 0, convergenceDeg]) {
    if (!Number.isFinite(angleDeg))
      throw new RangeError(`an angle must be a finite number, found ${angleDeg}`);
  }
  const gridMagneticDeg =
    declinationDeg === null ? null : signedDifferenceDeg(convergenceDeg, declinationDeg);
  return { convergenceDeg, declinationDeg, gridMagneticDeg };
}

/** The compass bearing of a grid bearing, 0 <= x < 360; null when the declination is not known. */
export function compassFromGridDeg(gridBearingDeg: number, norths: ThreeNorths): number | null {
  return norths.gridMagneticDeg === null ? null : normalizeDeg(gridBearingDeg - norths.gridMagneticDeg);
}

/** The grid bearing of a compass bearing, 0 <= x < 360; null when the declination is not known. */
export function gridFromCompassDeg(compassBearingDeg: number, norths: ThreeNorths): number | null {
  return norths.gridMagneticDeg === null ? null : normalizeDeg(compassBearingDeg + norths.gridMagneticDeg);
}

/**
 * The sentences of the north diagram, to 0.1 degree. An angle that rounds to 0 says that the two bearings are the same; a
 * declination that is not known says so and gives no figure.
 *
 * @example northSentences(threeNorths(5, 1.5)).short // "Compass = grid bearing minus 3.5 degrees."
 */
export function northSentences({ gridMagneticDeg }: ThreeNorths): NorthSentences {
  if (gridMagneticDeg === null) {
    const unknown = "Compass and grid bearing: difference not known.";
    return { short: unknown, words: unknown, back: unknown };
  }
  const sizeDeg = Math.round(Math.abs(gridMagneticDeg) * 10) / 10;
  if (sizeDeg === 0) {
    const same = "Compass and grid bearing are the same here.";
    return { short: same, words: same, back: same };
  }
  const isEast = gridMagneticDeg > 0;
  const angle = `${sizeDeg} ${sizeDeg === 1 ? "degree" : "degrees"}`;
  return {
    short: `Compass = grid bearing ${isEast ? "minus" : "plus"} ${angle}.`,
    words: `For a compass bearing, ${isEast ? "subtract" : "add"} ${angle} ${isEast ? "from" : "to"} the grid bearing.`,
    back: `For a grid bearing, ${isEast ? "add" : "subtract"} ${angle} ${isEast ? "to" : "from"} the compass bearing.`,
  };
}
