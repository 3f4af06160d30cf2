import { describe, expect, test } from "vitest";
import { measuredLines, median } from "../../scripts/bench/measured.ts";

describe("a measured figure", () => {
  const year = { what: "A year", unit: "ms", goal: 50, how: "365 days" };

  test("it is told with its goal and whether it is met", () => {
    expect(measuredLines({ ...year, figure: 42.345 })).toEqual([
      "A year: 42.3 ms, goal at most 50 ms: met",
      "  365 days",
    ]);
  });

  test("a figure just over its goal is told as such, and no number at all does not meet a goal", () => {
    expect(measuredLines({ ...year, figure: 50.01 })[0]).toContain("NOT MET");
    expect(measuredLines({ ...year, figure: Number.NaN })[0]).toContain("NOT MET");
  });

  test("the median is the middle value, or midway between the two in the middle", () => {
    expect(median([3, 1, 100])).toBe(3);
    expect(median([4, 1, 2, 100])).toBe(3);
    expect(() => median([])).toThrow("median needs a value");
  });
});
