/** How unsteady the air is, from A (strong sun, little wind) to F (clear night, little wind). */
export type StabilityClass = "A" | "B" | "C" | "D" | "E" | "F";

/** A class, or two between which the published table leaves the air. */
export type StabilityBand = StabilityClass | "A-B" | "B-C" | "C-D";

/** What the table asks of the sky and the wind. */
export interface StabilityQuestion {
  /** wind at 10 m over open ground, m/s, not negative */
  windMps: number;
  /** share of the sky under cloud, 0 to 1 */
  cloudShare: number;
  /** from 1 h before sunset to 1 h after sunrise */
  isNight: boolean;
  /** height of the sun over a level horizon, 0 to 90 degrees; not asked by night */
  sunAltitudeDeg: number;
}

/** The class, or null and why. */
export type StabilityAnswer = { stability: StabilityBand; why: null } | { stability: null; why: string };

type Column = "strong" | "moderate" | "slight" | "cloudyNight" | "clearNight";

/** Winds under 2, under 3, under 5, up to 6 and over 6 m/s. Light wind by night is not defined in the table; F stands for it. */
const TABLE: Record<
  Column,
  readonly [StabilityBand, StabilityBand, StabilityBand, StabilityBand, StabilityBand]
> = {
  strong: ["A", "A-B", "B", "C", "C"],
  moderate: ["A-B", "B", "B-C", "C-D", "D"],
  slight: ["B", "C", "C", "D", "D"],
  cloudyNight: ["F", "E", "D", "D", "D"],
  clearNight: ["F", "F", "E", "D", "D"],
};

/**
 * Stability class of the air from wind, cloud, sun and night. Null with why for a figure that is unknown or out of its range.
 * Cloud is taken in eighths: 8 is overcast and neutral (D), 4 and more make a cloudy night, 5 to 7 weaken the sun by one column.
 * It knows open, level country: no trees, terrain or slope air. Cloud height is not asked, so low broken cloud by day may be
 * steadier than it says. The hours just beside the night are not told apart.
 *
 * @source Pasquill 1961, as tabulated in Vallero, Fundamentals of Air Pollution, table 19-3, and Turner 1970, AP-26.
 *   The sun's columns by altitude (over 60, over 35 deg) and the weakening by cloud: Turner 1970, from memory.
 */
export function stabilityClass(question: StabilityQuestion): StabilityAnswer {
  const { windMps, cloudShare, isNight, sunAltitudeDeg } = question;
  if (!(windMps >= 0 && windMps < Number.POSITIVE_INFINITY)) return unknown("the wind is not known");
  if (!(cloudShare >= 0 && cloudShare <= 1)) return unknown("the cloud is not known");
  const eighths = Math.round(cloudShare * 8);
  if (eighths === 8) return { stability: "D", why: null };
  if (isNight) return of(eighths >= 4 ? "cloudyNight" : "clearNight", windMps);
  if (!(sunAltitudeDeg >= 0 && sunAltitudeDeg <= 90)) return unknown("the height of the sun is not known");
  return of(sunColumn(sunAltitudeDeg, eighths >= 5), windMps);
}

const unknown = (why: string): StabilityAnswer => ({ stability: null, why });

const of = (column: Column, windMps: number): StabilityAnswer => ({
  stability: TABLE[column][windRow(windMps)],
  why: null,
});

function windRow(windMps: number): 0 | 1 | 2 | 3 | 4 {
  if (windMps < 2) return 0;
  if (windMps < 3) return 1;
  if (windMps < 5) return 2;
  return windMps <= 6 ? 3 : 4;
}

function sunColumn(sunAltitudeDeg: number, isBroken: boolean): Column {
  if (sunAltitudeDeg > 60) return isBroken ? "moderate" : "strong";
  return sunAltitudeDeg > 35 && !isBroken ? "moderate" : "slight";
}
