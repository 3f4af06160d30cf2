import { type MapScale, paperMm } from "./mapScale.ts";

/** One segment of a bar, from its left end at 0. */
export interface BarSegment {
  fromM: number;
  toM: number;
  fromMm: number;
  toMm: number;
}

/** A scale bar: segments of one length, a mark with its figure at each end of one, the first of them 0. */
export interface ScaleBar {
  unit: "m" | "km" | "yards" | "miles";
  segments: BarSegment[];
  marks: { text: string; atMm: number }[];
  lengthM: number;
  lengthMm: number;
  /** What the bar says, for a reader who does not see it. */
  title: string;
}

const YARD_M = 0.9144; // exact: international yard and pound agreement, 1959
const MILE_M = 1609.344; // 1760 yards
const COUNTS = [4, 5]; // segments of a bar; common practice, no source
const MILE_PARTS: readonly [number, string[]][] = [
  [1, ["0", "1", "2", "3", "4", "5"]],
  [0.5, ["0", "½", "1", "1½", "2", "2½"]],
  [0.25, ["0", "¼", "½", "¾", "1", "1¼"]],
  [0.125, ["0", "⅛", "¼", "⅜", "½", "⅝"]],
];

/**
 * The longest bar of 4 or 5 round segments (1, 2 or 5 times a power of ten) that fits a width, in metres, or in kilometres
 * when it is longer than 1 km. Segment lengths are exact; drawn to 0.01 mm a bar of 20 mm or more is right within 0.05 %.
 *
 * @throws {RangeError} when the width is not a number above 0, or too small for a bar of 4 m
 * @example metricBar(25000, 80).title // "Scale bar, 0 to 2 km in 4 parts"
 */
export function metricBar(scale: MapScale, widestMm: number): ScaleBar {
  const { part, count } = longestRound(1, scale, widestMm);
  const inKm = part * count > 1000;
  const figures = partFigures(inKm ? part / 1000 : part, count);
  return bar(inKm ? "km" : "m", part, figures, scale);
}

/**
 * The longest bar of 4 or 5 segments in miles (segments of an eighth, a quarter, a half or one mile); where half a mile
 * does not fit, in yards.
 *
 * @throws {RangeError} when the width is not a number above 0, or too small for a bar of 4 yards
 * @example imperialBar(25000, 80).title // "Scale bar, 0 to 1 mile in 4 parts"
 */
export function imperialBar(scale: MapScale, widestMm: number): ScaleBar {
  checkWidth(widestMm);
  const inMiles = MILE_PARTS.flatMap(([miles, figures]) => COUNTS.map((count) => ({ miles, figures, count })))
    .filter(({ miles, count }) => fits(miles * count * MILE_M, scale, widestMm))
    .sort((a, b) => b.miles * b.count - a.miles * a.count || a.count - b.count)[0];
  if (inMiles !== undefined) {
    return bar("miles", inMiles.miles * MILE_M, inMiles.figures.slice(0, inMiles.count + 1), scale);
  }
  const { part, count } = longestRound(YARD_M, scale, widestMm);
  return bar("yards", part * YARD_M, partFigures(part, count), scale);
}

function bar(unit: ScaleBar["unit"], partM: number, figures: string[], scale: MapScale): ScaleBar {
  const count = figures.length - 1;
  const lengthM = count * partM;
  const segments = Array.from({ length: count }, (_, place) => ({
    fromM: place * partM,
    toM: (place + 1) * partM,
    fromMm: paperMm(place * partM, scale),
    toMm: paperMm((place + 1) * partM, scale),
  }));
  return {
    unit,
    segments,
    marks: figures.map((text, place) => ({ text, atMm: paperMm(place * partM, scale) })),
    lengthM,
    lengthMm: paperMm(lengthM, scale),
    title: `Scale bar, 0 to ${figures.at(-1)} ${unit === "miles" && lengthM <= MILE_M ? "mile" : unit} in ${count} parts`,
  };
}

/** Length (in units) and count of the segments of the longest round bar; of two alike the one with fewer segments. */
function longestRound(unitM: number, scale: MapScale, widestMm: number): { part: number; count: number } {
  checkWidth(widestMm);
  const parts = [1, 10, 100, 1000, 10_000].flatMap((power) => [1, 2, 5].map((digit) => digit * power));
  const longest = parts
    .flatMap((part) => COUNTS.map((count) => ({ part, count })))
    .filter(({ part, count }) => fits(part * count * unitM, scale, widestMm))
    .sort((a, b) => b.part * b.count - a.part * a.count || a.count - b.count)[0];
  if (longest === undefined) throw new RangeError(`too small for a scale bar, found ${widestMm} mm`);
  return longest;
}

function fits(lengthM: number, scale: MapScale, widestMm: number): boolean {
  return paperMm(lengthM, scale) <= widestMm;
}

function partFigures(part: number, count: number): string[] {
  return Array.from({ length: count + 1 }, (_, place) => String(Math.round(place * part * 1000) / 1000));
}

function checkWidth(widestMm: number): void {
  if (!(widestMm > 0 && Number.isFinite(widestMm))) {
    throw new RangeError(`widestMm must be above 0, found ${widestMm}`);
  }
}
