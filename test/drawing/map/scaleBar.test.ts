import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { MapScale } from "../../../scripts/drawing/map/mapScale.ts";
import { imperialBar, metricBar, type ScaleBar } from "../../../scripts/drawing/map/scaleBar.ts";
import { mm } from "../../../scripts/drawing/svgText.ts";

const SCALES: readonly MapScale[] = [5000, 10000, 15000, 25000];
const UNIT_M = { m: 1, km: 1000, yards: 0.9144, miles: 1609.344 }; // yard and mile: agreement of 1959, exact

describe("the metric bar", () => {
  test.each([
    [5000, 80, "m", ["0", "100", "200", "300", "400"], 80],
    [10000, 80, "m", ["0", "200", "400", "600", "800"], 80],
    [15000, 80, "m", ["0", "200", "400", "600", "800", "1000"], 1000 / 15],
    [25000, 80, "km", ["0", "0.5", "1", "1.5", "2"], 80],
    [25000, 39.9, "m", ["0", "200", "400", "600", "800"], 32],
  ] as const)("at 1:%d within %d mm", (scale, widestMm, unit, figures, lengthMm) => {
    const bar = metricBar(scale, widestMm);
    expect(bar.unit).toBe(unit);
    expect(bar.marks.map(({ text }) => text)).toEqual(figures);
    expect(bar.lengthMm).toBeCloseTo(lengthMm, 9);
  });
});

describe("the bar in miles or yards", () => {
  // By hand: a mile at 1:25 000 is 1 609 344 / 25 000 = 64.37 mm; 400 yards at 1:5 000 are 365 760 / 5000 = 73.15 mm.
  test("is in miles where half a mile fits, else in yards", () => {
    const miles = imperialBar(25000, 80);
    expect(miles.marks.map(({ text }) => text)).toEqual(["0", "¼", "½", "¾", "1"]);
    expect(miles.lengthMm).toBeCloseTo(64.37376, 9);
    expect(miles.title).toBe("Scale bar, 0 to 1 mile in 4 parts");
    const yards = imperialBar(5000, 80);
    expect(yards.marks.map(({ text }) => text)).toEqual(["0", "100", "200", "300", "400"]);
    expect(yards.lengthMm).toBeCloseTo(73.152, 9);
    expect(yards.title).toBe("Scale bar, 0 to 400 yards in 4 parts");
    // Half a mile at 1:10 000 is 80.47 mm.
    expect(imperialBar(10000, 80.4).unit).toBe("yards");
    expect(imperialBar(10000, 80.5).unit).toBe("miles");
    expect(imperialBar(25000, 81).title).toBe("Scale bar, 0 to 1¼ miles in 5 parts");
  });
});

describe("every bar", () => {
  test("is as long as its last figure says within 0.5 % as drawn, begins at 0 and fits", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SCALES),
        fc.double({ min: 20, max: 180, noNaN: true }),
        fc.constantFrom(metricBar, imperialBar),
        (scale, widestMm, make) => {
          const bar = make(scale, widestMm);
          expect(bar.marks[0]).toEqual({ text: "0", atMm: 0 });
          expect(bar.lengthMm).toBeLessThanOrEqual(widestMm);
          expect(bar.lengthMm).toBeGreaterThan(widestMm / 2.001); // lengths at most double: 10 parts of a unit, then 20
          for (const { text, atMm } of bar.marks.slice(1)) {
            const saidMm = (figureValue(text) * UNIT_M[bar.unit] * 1000) / scale;
            expect(Math.abs(Number(mm(atMm)) / saidMm - 1)).toBeLessThan(0.005);
          }
          expectJoined(bar);
        },
      ),
    );
  });

  test("a width that holds none is refused", () => {
    for (const make of [metricBar, imperialBar]) {
      expect(() => make(25000, 0)).toThrow(/above 0/);
      expect(() => make(25000, Number.NaN)).toThrow(/above 0/);
      expect(() => make(25000, 0.1)).toThrow(/too small/);
    }
  });
});

function expectJoined(bar: ScaleBar): void {
  const { segments, marks } = bar;
  expect(segments.map(({ fromMm }) => fromMm)).toEqual(marks.slice(0, -1).map(({ atMm }) => atMm));
  expect(segments.map(({ toMm }) => toMm)).toEqual(marks.slice(1).map(({ atMm }) => atMm));
  expect(segments.at(-1)?.toM).toBe(bar.lengthM);
}

/** The value of "1½", "¾", "0.5" or "400". */
function figureValue(text: string): number {
  const parts: Record<string, number> = {
    "½": 1 / 2,
    "¼": 1 / 4,
    "¾": 3 / 4,
    "⅛": 1 / 8,
    "⅜": 3 / 8,
    "⅝": 5 / 8,
  };
  const part = parts[text.at(-1) ?? ""];
  return part === undefined ? Number(text) : Number(text.slice(0, -1)) + part;
}
