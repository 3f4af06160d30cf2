import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { crossingBetween, type Knot, turnBetween } from "../../scripts/light/curveSearch.ts";

const HOUR_MS = 3_600_000;

/** The millisecond that halving alone finds, the plainest way to it. */
function halved(
  heightDegAt: (ms: number) => number,
  startMs: number,
  endMs: number,
  levelDeg: number,
): number {
  const startsAbove = heightDegAt(startMs) >= levelDeg;
  let [early, late] = [startMs, endMs];
  while (late - early > 1) {
    const middle = Math.floor((early + late) / 2);
    if (heightDegAt(middle) >= levelDeg === startsAbove) early = middle;
    else late = middle;
  }
  return late;
}

/** The same curve, with a count of how often it was looked at. */
function counted(heightDegAt: (ms: number) => number) {
  const curve = {
    looks: 0,
    at: (ms: number): number => {
      curve.looks++;
      return heightDegAt(ms);
    },
    knot: (ms: number): Knot => ({ ms, heightDeg: heightDegAt(ms) }),
  };
  return curve;
}

/** A body on its circle round the pole: latitude and declination in degrees, highest at `noonMs`. */
const circle =
  (latDeg: number, decDeg: number, noonMs: number) =>
  (ms: number): number => {
    const [lat, dec] = [(latDeg * Math.PI) / 180, (decDeg * Math.PI) / 180];
    const angle = ((ms - noonMs) / (24 * HOUR_MS)) * 2 * Math.PI;
    const sine = Math.sin(lat) * Math.sin(dec) + Math.cos(lat) * Math.cos(dec) * Math.cos(angle);
    return (Math.asin(Math.min(1, Math.max(-1, sine))) * 180) / Math.PI;
  };

const lat = fc.double({ min: -78, max: 78, noNaN: true });
const dec = fc.double({ min: -28, max: 28, noNaN: true });
const minuteOfDay = fc.double({ min: 0, max: 1440, noNaN: true });

describe("the search for a passage", () => {
  test("it ends on the same millisecond as plain halving, in a third of the looks", () => {
    let [looks, passages] = [0, 0];
    fc.assert(
      fc.property(
        lat,
        dec,
        minuteOfDay,
        fc.integer({ min: -12, max: 6 }),
        (latDeg, decDeg, noon, levelDeg) => {
          const curve = counted(circle(latDeg, decDeg, noon * 60_000));
          for (let ms = 0; ms < 24 * HOUR_MS; ms += HOUR_MS) {
            const [start, end] = [curve.knot(ms), curve.knot(ms + HOUR_MS)];
            if (start.heightDeg >= levelDeg === end.heightDeg >= levelDeg) continue;
            curve.looks = 0;
            const found = crossingBetween(curve.at, start, end, levelDeg);
            looks += curve.looks;
            passages++;
            expect(found).toBe(halved(circle(latDeg, decDeg, noon * 60_000), ms, ms + HOUR_MS, levelDeg));
          }
        },
      ),
      { seed: 6, numRuns: 1000 },
    );
    expect(passages).toBeGreaterThan(1000);
    expect(looks / passages).toBeLessThan(7.5); // halving an hour takes 22
  });

  test("a curve with a step or a flat part is halved down like any other", () => {
    const step = (ms: number): number => (ms < 1_234_567 ? -1e-9 : 50);
    expect(crossingBetween(step, { ms: 0, heightDeg: -1e-9 }, { ms: HOUR_MS, heightDeg: 50 }, 0)).toBe(
      1_234_567,
    );
    const flat = (ms: number): number => (ms < 2_000_000 ? -5 : 5);
    expect(crossingBetween(flat, { ms: 0, heightDeg: -5 }, { ms: HOUR_MS, heightDeg: 5 }, 0)).toBe(2_000_000);
  });
});

describe("the search for a turn", () => {
  test("the highest and the lowest point are found to a second, also straight overhead", () => {
    fc.assert(
      fc.property(lat, dec, minuteOfDay, fc.boolean(), (latDeg, decDeg, noon, isOverhead) => {
        const curve = circle(latDeg, isOverhead ? latDeg : decDeg, noon * 60_000);
        for (const [turnMs, sign] of [
          [noon * 60_000, 1],
          [noon * 60_000 + 12 * HOUR_MS, -1],
        ] as const) {
          const here = Math.round(turnMs + 0.37 * HOUR_MS);
          const knots = [here - HOUR_MS, here, here + HOUR_MS].map((ms) => ({ ms, heightDeg: curve(ms) }));
          const found = turnBetween(curve, knots[0]!, knots[1]!, knots[2]!, sign);
          expect(Math.abs(found.ms - turnMs)).toBeLessThanOrEqual(1000);
          expect(found.heightDeg).toBe(curve(found.ms));
        }
      }),
      { seed: 7, numRuns: 1000 },
    );
  });

  test("the usual turn takes few looks", () => {
    const curve = counted(circle(45, -20, 1_000_000));
    turnBetween(curve.at, curve.knot(-HOUR_MS), curve.knot(0), curve.knot(HOUR_MS), 1);
    expect(curve.looks).toBeLessThanOrEqual(6);
  });
});
