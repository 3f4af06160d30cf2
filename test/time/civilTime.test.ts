import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  addDays,
  civilAt,
  clockChangeAt,
  dayOfYear,
  daysBetween,
  eachDay,
  endOfDay,
  isLocalDate,
  isoInZone,
  isTimezone,
  noonOf,
  resolveClock,
  startOfDay,
  weekday,
} from "../../scripts/time/civilTime.ts";

// Clock changes: IANA time zone database, 2025 edition.
describe("civil days", () => {
  test.each([
    { zone: "Pacific/Auckland", day: "2026-04-05", start: "2026-04-05T00:00:00+13:00", hours: 25 },
    { zone: "Pacific/Auckland", day: "2026-09-27", start: "2026-09-27T00:00:00+12:00", hours: 23 },
    { zone: "America/Denver", day: "2026-03-08", start: "2026-03-08T00:00:00-07:00", hours: 23 },
    { zone: "America/Denver", day: "2026-11-01", start: "2026-11-01T00:00:00-06:00", hours: 25 },
    { zone: "Australia/Lord_Howe", day: "2026-04-05", start: "2026-04-05T00:00:00+11:00", hours: 24.5 },
    { zone: "Australia/Lord_Howe", day: "2026-10-04", start: "2026-10-04T00:00:00+10:30", hours: 23.5 },
    { zone: "Pacific/Kiritimati", day: "2026-03-20", start: "2026-03-20T00:00:00+14:00", hours: 24 },
    { zone: "Pacific/Tongatapu", day: "2026-06-21", start: "2026-06-21T00:00:00+13:00", hours: 24 },
    { zone: "Pacific/Niue", day: "2026-06-21", start: "2026-06-21T00:00:00-11:00", hours: 24 },
    { zone: "America/Santiago", day: "2026-09-06", start: "2026-09-06T01:00:00-03:00", hours: 23 },
    { zone: "Pacific/Apia", day: "2011-12-30", start: "2011-12-31T00:00:00+14:00", hours: 0 },
    { zone: "UTC", day: "2026-01-01", start: "2026-01-01T00:00:00+00:00", hours: 24 },
  ])("$day in $zone lasts $hours hours", ({ zone, day, start, hours }) => {
    const startsAt = startOfDay(day, zone);
    expect(isoInZone(startsAt, zone)).toBe(start);
    expect((endOfDay(day, zone).getTime() - startsAt.getTime()) / 3_600_000).toBe(hours);
  });

  test.each([
    { zone: "Pacific/Auckland", day: "2026-04-05", at: "2026-04-05T02:00:00+12:00" },
    { zone: "Pacific/Auckland", day: "2026-09-27", at: "2026-09-27T03:00:00+13:00" },
    { zone: "Australia/Lord_Howe", day: "2026-04-05", at: "2026-04-05T01:30:00+10:30" },
    { zone: "America/Santiago", day: "2026-09-06", at: "2026-09-06T01:00:00-03:00" },
    { zone: "America/Santiago", day: "2026-04-04", at: "2026-04-04T23:00:00-04:00" },
  ])("the clock changes on $day in $zone at $at", ({ zone, day, at }) =>
    expect(isoInZone(clockChangeAt(day, zone)!, zone)).toBe(at),
  );

  test.each([
    { zone: "Pacific/Auckland", day: "2026-04-04" },
    { zone: "Pacific/Auckland", day: "2026-04-06" },
    { zone: "America/Santiago", day: "2026-09-05" },
    { zone: "America/Santiago", day: "2026-04-05" },
    { zone: "Pacific/Kiritimati", day: "2026-04-05" },
    { zone: "UTC", day: "2026-04-05" },
  ])("no clock changes on $day in $zone", ({ zone, day }) => expect(clockChangeAt(day, zone)).toBeNull());

  test("noon of Kiritimati falls on the UTC day before", () => {
    expect(noonOf("2026-03-20", "Pacific/Kiritimati").toISOString()).toBe("2026-03-19T22:00:00.000Z");
  });
});

describe("clock readings", () => {
  test("an ordinary reading is one instant", () => {
    expect(resolveClock("2026-04-04", "06:31", "Pacific/Auckland")).toEqual({
      kind: "one",
      at: new Date("2026-04-03T17:31:00Z"),
    });
  });

  test.each([
    { zone: "Pacific/Auckland", day: "2026-09-27", clock: "02:00" },
    { zone: "Pacific/Auckland", day: "2026-09-27", clock: "02:59" },
    { zone: "Australia/Lord_Howe", day: "2026-10-04", clock: "02:15" },
    { zone: "America/Santiago", day: "2026-09-06", clock: "00:30" },
    { zone: "Pacific/Apia", day: "2011-12-30", clock: "12:00" },
  ])("$clock on $day does not happen in $zone", ({ zone, day, clock }) =>
    expect(resolveClock(day, clock, zone)).toEqual({ kind: "gap" }),
  );

  test.each([
    { zone: "Pacific/Auckland", day: "2026-04-05", clock: "02:30", offsets: ["+13:00", "+12:00"] },
    { zone: "America/New_York", day: "2026-11-01", clock: "01:30", offsets: ["-04:00", "-05:00"] },
    { zone: "Australia/Lord_Howe", day: "2026-04-05", clock: "01:45", offsets: ["+11:00", "+10:30"] },
  ])("$clock on $day happens twice in $zone", ({ zone, day, clock, offsets }) => {
    const found = resolveClock(day, clock, zone);
    if (found.kind !== "repeated") throw new Error(`expected a repeated reading, found ${found.kind}`);
    expect([found.first, found.second].map((at) => civilAt(at, zone).utcOffset)).toEqual(offsets);
    expect([found.first, found.second].map((at) => civilAt(at, zone).clock)).toEqual([clock, clock]);
    expect(found.first.getTime()).toBeLessThan(found.second.getTime());
  });

  test.each(["24:00", "6:30", "06:60", "0630", ""])("%j is no clock reading", (clock) =>
    expect(() => resolveClock("2026-04-04", clock, "UTC")).toThrow("clock must be HH:MM"),
  );

  test("the clock is cut to the minute, the ISO text is rounded to the second", () => {
    const at = new Date("2026-04-03T17:31:59.600Z");
    expect(civilAt(at, "Pacific/Auckland")).toEqual({
      localDate: "2026-04-04",
      clock: "06:31",
      utcOffset: "+13:00",
      utcOffsetMin: 780,
    });
    expect(isoInZone(at, "Pacific/Auckland")).toBe("2026-04-04T06:32:00+13:00");
    expect(isoInZone(new Date("2026-04-03T17:31:12.499Z"), "Pacific/Auckland")).toBe(
      "2026-04-04T06:31:12+13:00",
    );
    expect(civilAt(at, "Asia/Kathmandu").utcOffset).toBe("+05:45");
    expect(civilAt(at, "Pacific/Chatham").utcOffsetMin).toBe(825);
  });

  test("every instant is read back from its date and clock", () => {
    const zones = [
      "Pacific/Auckland",
      "America/Denver",
      "Australia/Lord_Howe",
      "Pacific/Kiritimati",
      "America/Santiago",
    ];
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(2025, 0, 1) / 60_000, max: Date.UTC(2029, 0, 1) / 60_000 }),
        fc.constantFrom(...zones),
        (minute, zone) => {
          const at = new Date(minute * 60_000);
          const { localDate, clock } = civilAt(at, zone);
          const back = resolveClock(localDate, clock, zone);
          const instants =
            back.kind === "one" ? [back.at] : back.kind === "repeated" ? [back.first, back.second] : [];
          expect(instants.map(Number)).toContain(at.getTime());
          expect(startOfDay(localDate, zone) <= at && at < endOfDay(localDate, zone)).toBe(true);
          expect(new Date(isoInZone(at, zone))).toEqual(at);
        },
      ),
      { seed: 45, numRuns: 300 },
    );
  });
});

describe("the calendar", () => {
  // Meeus, Astronomical Algorithms (1998), examples 7.f, 7.g and 7.c.
  test("Meeus's days of the year and days between", () => {
    expect(dayOfYear("1978-11-14")).toBe(318);
    expect(dayOfYear("1988-04-22")).toBe(113);
    expect(daysBetween("1910-04-20", "1986-02-09")).toBe(27689);
    expect(daysBetween("1986-02-09", "1910-04-20")).toBe(-27689);
  });

  // Meeus, example 7.e: 30 June 1954 was a Wednesday.
  test("Meeus's day of the week", () => {
    expect(weekday("1954-06-30")).toBe("wed");
    expect(weekday("2026-04-05")).toBe("sun");
    expect(weekday("2026-04-06")).toBe("mon");
  });

  test("days add over months, years and leap days", () => {
    expect(addDays("2028-02-28", 1)).toBe("2028-02-29");
    expect(addDays("2026-02-28", 1)).toBe("2026-03-01");
    expect(addDays("2026-01-01", -1)).toBe("2025-12-31");
    expect(eachDay("2026-02-27", "2026-03-01")).toEqual(["2026-02-27", "2026-02-28", "2026-03-01"]);
    expect(eachDay("2026-01-01", "2026-12-31")).toHaveLength(365);
    expect(() => eachDay("2026-03-02", "2026-03-01")).toThrow("found 2026-03-02 to 2026-03-01");
  });

  test.each([
    { text: "2026-02-28", real: true },
    { text: "2026-02-29", real: false },
    { text: "2028-02-29", real: true },
    { text: "2026-13-01", real: false },
    { text: "2026-1-1", real: false },
    { text: "20260101", real: false },
    { text: "2026-01-01T00:00", real: false },
  ])("$text is a date: $real", ({ text, real }) => expect(isLocalDate(text)).toBe(real));

  test.each([
    { text: "Pacific/Auckland", real: true },
    { text: "UTC", real: true },
    { text: "pacific/auckland", real: false },
    { text: "+13:00", real: false },
    { text: "Mars/Olympus", real: false },
    { text: "", real: false },
  ])("$text is a zone: $real", ({ text, real }) => expect(isTimezone(text)).toBe(real));

  test("what is no date, zone or instant is refused with its value", () => {
    expect(() => startOfDay("2026-02-30", "UTC")).toThrow('found "2026-02-30"');
    expect(() => startOfDay("2026-02-03", "Mars/Olympus")).toThrow('found "Mars/Olympus"');
    expect(() => civilAt(new Date(Number.NaN), "UTC")).toThrow(RangeError);
    expect(() => isoInZone(new Date(Number.NaN), "UTC")).toThrow(RangeError);
    expect(() => addDays("2026-02-03", 0.5)).toThrow("found 0.5");
  });
});
