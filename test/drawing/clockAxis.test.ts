import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clockAxis } from "../../scripts/drawing/clockAxis.ts";
import { startOfDay } from "../../scripts/time/civilTime.ts";

const PLACE = { leftMm: 15, rightMm: 177, stepHours: 2 };

describe("the clock axis", () => {
  test("runs from 04 to 21 with a tick each 2 hours", () => {
    const axis = clockAxis("2026-10-14", "Europe/Vienna", PLACE, []);
    expect(axis.ticks.map((tick) => tick.label)).toEqual([
      "04",
      "06",
      "08",
      "10",
      "12",
      "14",
      "16",
      "18",
      "20",
    ]);
    expect(axis.from).toEqual(new Date("2026-10-14T02:00:00Z"));
    expect(axis.to).toEqual(new Date("2026-10-14T19:00:00Z"));
    expect(axis.x(axis.from)).toBe(15);
    expect(axis.x(axis.to)).toBe(177);
  });

  test("widens by whole hours until it holds what it must, never beyond the day", () => {
    const axis = clockAxis("2026-06-21", "Europe/Stockholm", PLACE, [
      new Date("2026-06-21T00:40:00Z"), // 02:40
      new Date("2026-06-21T20:10:00Z"), // 22:10
      new Date("2026-06-22T03:00:00Z"), // the next day
    ]);
    expect(axis.from).toEqual(new Date("2026-06-21T00:00:00Z"));
    expect(axis.to).toEqual(new Date("2026-06-21T21:00:00Z"));
  });

  test("a place gives its instant back within 0.2 mm", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 17 * 60 }), (minutes) => {
        const axis = clockAxis("2026-10-14", "Europe/Vienna", PLACE, []);
        const at = new Date(Number(axis.from) + minutes * 60_000);
        return Math.abs(axis.x(axis.at(axis.x(at))) - axis.x(at)) < 0.2;
      }),
      { seed: 5 },
    );
  });

  // Clocks go back 5 Apr 2026 at 03:00 to 02:00 in New Zealand (tz database): the day has 25 hours.
  test("when the clocks go back, an hour keeps its length and the change prints both readings", () => {
    const day = "2026-04-05";
    const dayStart = startOfDay(day, "Pacific/Auckland");
    const axis = clockAxis(day, "Pacific/Auckland", { ...PLACE, stepHours: 1 }, [dayStart]);
    const labels = axis.ticks.map((tick) => tick.label);
    expect(labels.slice(0, 6)).toEqual(["00", "01", "02", "03/02", "03", "04"]);
    const gaps = axis.ticks.slice(1).map((tick, i) => tick.x - axis.ticks[i]!.x);
    for (const gap of gaps) expect(gap).toBeCloseTo(gaps[0]!, 9);
    expect(Number(axis.to) - Number(axis.from)).toBe(22 * 3_600_000); // 21:00 is the 22nd hour of that day
  });

  // Clocks go forward 27 Sep 2026 at 02:00 to 03:00 in New Zealand.
  test("when the clocks go forward, the change prints both readings and no hour is missing its place", () => {
    const day = "2026-09-27";
    const axis = clockAxis(day, "Pacific/Auckland", { ...PLACE, stepHours: 1 }, [
      startOfDay(day, "Pacific/Auckland"),
    ]);
    expect(axis.ticks.map((tick) => tick.label).slice(0, 5)).toEqual(["00", "01", "02/03", "04", "05"]);
  });

  test("an axis without width is refused", () => {
    expect(() => clockAxis("2026-10-14", "UTC", { leftMm: 10, rightMm: 10, stepHours: 2 }, [])).toThrow(
      RangeError,
    );
  });
});
