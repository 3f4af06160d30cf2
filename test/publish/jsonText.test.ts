import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jsonText } from "../../scripts/publish/jsonText.ts";

describe("the numbers of a pack as JSON text", () => {
  test("what fits on a line stands on a line; long lists of numbers fill lines", () => {
    const horizon = Array.from({ length: 60 }, (_, i) => i / 2);
    const text = jsonText({ a: { lat: 1.5, lon: -2 }, why: {}, none: [], horizon });
    expect(text.split("\n").slice(0, 5)).toEqual([
      "{",
      '  "a": { "lat": 1.5, "lon": -2 },',
      '  "why": {},',
      '  "none": [],',
      '  "horizon": [',
    ]);
    expect(text.split("\n").length).toBeLessThan(12);
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(112);
  });

  test("any value reads back as it was, keys in order, and ends with one newline", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (value) => {
        const text = jsonText(value);
        expect(text.endsWith("\n") && !text.endsWith("\n\n")).toBe(true);
        expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(value));
      }),
      { seed: 20260404, numRuns: 300 },
    );
  });

  test.each([
    [Number.NaN, "must be finite, found NaN"],
    [[1, Number.POSITIVE_INFINITY], "must be finite, found Infinity"],
    [{ a: { b: undefined } }, "must be defined"],
  ])("%j is refused, since JSON would turn it into null or drop it", (value, words) => {
    expect(() => jsonText(value)).toThrow(words);
  });
});
