import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { driveChanges } from "../../scripts/air/driveChanges.ts";
import { driveSeries, type SlopeAirQuestion } from "../../scripts/air/slopeAirDay.ts";
import { CLEAR_SKY } from "../../scripts/air/slopeSite.ts";
import { constants, OCTOBER_END, OCTOBER_START, octoberSun, planeSite } from "./planeSite.ts";

const MINUTE_MS = 60_000;

function question(asked: Pick<SlopeAirQuestion, "site" | "weather">): SlopeAirQuestion {
  return {
    ...asked,
    sun: octoberSun,
    dayStart: OCTOBER_START,
    dayEnd: OCTOBER_END,
    dayOfYear: 288,
    constants,
  };
}

const inSteps = (asked: SlopeAirQuestion, stepMin: number) => driveChanges(driveSeries(asked, stepMin));

describe("steps of five minutes", () => {
  test("a lone tree on the skyline shades the slope for its few minutes, wherever they lie in a step", () => {
    for (let bearing = 130; bearing <= 160; bearing++) {
      const horizonDeg = new Float64Array(360).fill(5);
      horizonDeg[bearing] = 60;
      const asked = question({ site: planeSite(135, { horizonDeg }), weather: CLEAR_SKY });
      const plain = inSteps(asked, 5)[0];
      // The end of the day before, then two spells with the shadow between them.
      expect(plain?.rise, `tree at ${bearing}`).toHaveLength(6);
      expect(plain).toEqual(inSteps(asked, 1)[0]);
    }
  });

  test("no change is missed or moved against steps of one minute, under any skyline and weather", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 35, noNaN: true }), { minLength: 360, maxLength: 360 }),
        fc.integer({ min: 0, max: 359 }),
        fc.double({ min: 0, max: 45, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 120 }),
        (skyline, aspectDeg, slopeDeg, clouds, everyMin) => {
          const asked = question({
            site: { ...planeSite(aspectDeg), slopeDeg, horizonDeg: Float64Array.from(skyline) },
            weather: clouds.map((cloudShare, i) => ({
              at: new Date(OCTOBER_START.getTime() + (i * everyMin + 7) * MINUTE_MS),
              cloudShare,
              airTempC: 8 + (i % 5),
              relativeHumidity: null,
            })),
          });
          expect(inSteps(asked, 5)).toEqual(inSteps(asked, 1));
        },
      ),
      { seed: 20260406, numRuns: 40 },
    );
  });
});
