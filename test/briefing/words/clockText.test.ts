import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  aboutClock,
  clockText,
  instantOf,
  roundedInstant,
  utcOffsetText,
} from "../../../scripts/briefing/words/clockText.ts";

const VIENNA = "Europe/Vienna";
const at = (text: string): Date => new Date(text);

describe("a clock", () => {
  test.each([
    ["2026-10-14T05:27:29Z", VIENNA, "07:27"],
    ["2026-10-14T05:27:30Z", VIENNA, "07:28"],
    ["2026-10-14T21:59:45Z", VIENNA, "00:00"],
    ["2026-01-01T00:15:00Z", "Asia/Kathmandu", "06:00"],
    ["2026-04-04T16:38:00Z", "Pacific/Auckland", "04:38"],
  ])("%s in %s reads %s, to the nearest minute", (instant, timezone, clock) => {
    expect(clockText(at(instant), timezone)).toBe(clock);
  });

  // Clocks go back on 7 Nov 2027, 02:00 to 01:00, so 01:30 is shown twice (tz database, America/New_York).
  test("a reading that the clock shows twice that night carries its offset", () => {
    expect(clockText(at("2027-11-07T05:30:00Z"), "America/New_York")).toBe("01:30 (UTC-4)");
    expect(clockText(at("2027-11-07T06:30:00Z"), "America/New_York")).toBe("01:30 (UTC-5)");
    expect(clockText(at("2027-11-07T07:30:00Z"), "America/New_York")).toBe("02:30");
  });
});

describe("rounding", () => {
  test.each([
    ["2026-10-14T07:29:00Z", 15, "down", "about 09:15"],
    ["2026-10-14T07:15:00Z", 15, "down", "about 09:15"],
    ["2026-10-14T07:15:01Z", 15, "up", "about 09:30"],
    ["2026-10-14T04:51:00Z", 5, "up", "about 06:55"],
    ["2026-10-14T16:34:00Z", 5, "down", "about 18:30"],
  ] as const)("%s to %i min %s is %s", (instant, step, towards, text) => {
    expect(aboutClock(at(instant), step, towards, VIENNA)).toBe(text);
  });

  test("in a zone 45 min off, steps are those of its own clock", () => {
    expect(aboutClock(at("2026-10-14T00:07:00Z"), 30, "down", "Asia/Kathmandu")).toBe("about 05:30");
  });

  test("down is never later, up never earlier, and neither moves by a whole step", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1.7e12, max: 1.9e12 }), fc.constantFrom(1, 5, 15, 60), (ms, step) => {
        const down = Number(roundedInstant(new Date(ms), step, "down", "Pacific/Chatham"));
        const up = Number(roundedInstant(new Date(ms), step, "up", "Pacific/Chatham"));
        return down <= ms && ms <= up && ms - down < step * 60_000 && up - ms < step * 60_000;
      }),
      { seed: 6 },
    );
  });

  test.each([0, 7, 90, 2.5])("a step of %d min is refused", (step) => {
    expect(() => roundedInstant(at("2026-10-14T07:00:00Z"), step, "down", VIENNA)).toThrow(RangeError);
  });
});

test("an instant without an offset is refused, since it could be any", () => {
  expect(() => instantOf("2026-10-14T07:00:00")).toThrow(RangeError);
  expect(instantOf("2026-04-04T06:31:12+13:00")).toEqual(at("2026-04-03T17:31:12Z"));
});

test.each([
  ["+13:00", "UTC+13"],
  ["-04:00", "UTC-4"],
  ["+05:45", "UTC+5:45"],
])("offset %s is written %s", (offset, text) => {
  expect(utcOffsetText(offset)).toBe(text);
});
