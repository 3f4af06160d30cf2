import { describe, expect, test } from "vitest";
import { crossings, heightCurve } from "../../scripts/light/heightCurve.ts";

const HOUR_MS = 3_600_000;

/** A body that swings 10 degrees up and down about 0 once in 24 hours, highest at 6 h. */
const swing = (ms: number): number => 10 * Math.sin((ms / (24 * HOUR_MS)) * 2 * Math.PI);

describe("a body's height", () => {
  test("turns are found where the body is highest and lowest", () => {
    const { turns } = heightCurve(swing, 0, 24 * HOUR_MS);
    expect(turns.map(({ ms }) => Math.round(ms / 60_000))).toEqual([360, 1080]);
    expect(turns[0]!.heightDeg).toBeCloseTo(10, 6);
  });

  test("passages are found to the millisecond and told up from down", () => {
    const found = crossings(heightCurve(swing, 0, 24 * HOUR_MS), 5);
    expect(Math.abs(found[0]!.at.getTime() - 2 * HOUR_MS)).toBeLessThanOrEqual(1);
    expect(Math.abs(found[1]!.at.getTime() - 10 * HOUR_MS)).toBeLessThanOrEqual(1);
    expect(found.map(({ climbs }) => climbs)).toEqual([true, false]);
  });

  test("a peak over the height by a hair, between two steps, has both its passages", () => {
    const late = (ms: number): number => swing(ms + 7 * 60_000); // highest 7 minutes before a step
    const found = crossings(heightCurve(late, 0, 24 * HOUR_MS), 10 - 1e-5);
    expect(found).toHaveLength(2);
    expect(found[1]!.at.getTime() - found[0]!.at.getTime()).toBeLessThan(15 * 60_000);
    expect(crossings(heightCurve(late, 0, 24 * HOUR_MS), 10 + 1e-5)).toEqual([]);
  });

  test("wherever the stretch begins, the same passages are found", () => {
    for (let start = 0; start < 4; start += 0.37) {
      const found = crossings(heightCurve(swing, start * HOUR_MS, 30 * HOUR_MS), 9.9999);
      const inside = found.filter(({ at }) => at.getTime() >= 5 * HOUR_MS && at.getTime() <= 7 * HOUR_MS);
      expect(inside).toHaveLength(2);
    }
  });
});
