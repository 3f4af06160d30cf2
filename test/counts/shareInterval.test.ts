import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shareInterval } from "../../scripts/counts/shareInterval.ts";

const someOfMany = fc
  .integer({ min: 1, max: 5000 })
  .chain((all) => fc.tuple(fc.integer({ min: 0, max: all }), fc.constant(all)));

describe("the interval of a share", () => {
  test.each([
    // Newcombe 1998, Statistics in Medicine 17, 857, table I, Wilson's score interval; from memory, four digits
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
    // Wilson's formula evaluated apart, four digits
    [5, 10, 0.2366, 0.7634],
    [3, 12, 0.0889, 0.5323],
    [10, 10, 0.7225, 1],
  ])("%d of %d: %f to %f", (some, all, low, high) => {
    const found = shareInterval(some, all)!;
    expect(found.share).toBe(some / all);
    // half a digit of the printed values
    expect(Math.abs(found.low - low)).toBeLessThan(0.00006);
    expect(Math.abs(found.high - high)).toBeLessThan(0.00006);
  });

  test("holds the share, lies from 0 to 1, and mirrors when the others are counted", () => {
    fc.assert(
      fc.property(someOfMany, ([some, all]) => {
        const { share, low, high } = shareInterval(some, all)!;
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(share);
        expect(high).toBeGreaterThanOrEqual(share);
        expect(high).toBeLessThanOrEqual(1);
        const others = shareInterval(all - some, all)!;
        expect(others.low).toBeCloseTo(1 - high, 12);
        expect(others.high).toBeCloseTo(1 - low, 12);
      }),
      { seed: 21 },
    );
  });

  test("is narrower the more is counted", () => {
    const widths = [1, 5, 20, 100, 1000].map((times) => {
      const { low, high } = shareInterval(times, 4 * times)!;
      return high - low;
    });
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
  });

  test("is not known where nothing was counted, and refuses what is no count", () => {
    expect(shareInterval(0, 0)).toBeNull();
    for (const [some, all] of [
      [-1, 5],
      [6, 5],
      [1.5, 5],
      [Number.NaN, 5],
      [1, Number.POSITIVE_INFINITY],
    ]) {
      expect(() => shareInterval(some!, all!)).toThrow(RangeError);
    }
  });
});
