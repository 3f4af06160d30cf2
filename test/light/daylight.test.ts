import { describe, expect, test } from "vitest";
import { daylight } from "../../scripts/light/daylight.ts";
import { airlessSunAltitudeDeg, sunPosition } from "../../scripts/light/sunAndMoon.ts";
import { civilAt, eachDay, endOfDay, isoInZone, startOfDay } from "../../scripts/time/civilTime.ts";
import { localClock } from "../published/localClock.ts";
import { PUBLISHED_SUN_DAYS, SUN_DAY_FIELDS } from "../published/sunDays.ts";
import { PUBLISHED_SUN_INSTANTS } from "../published/sunInstants.ts";

describe("published sun days", () => {
  test("the table holds 22 days", () => expect(PUBLISHED_SUN_DAYS).toHaveLength(22));

  // 6 s: twice the low-precision sun's 2.4 s a hundredth of a degree, and the table's own rounding.
  test.each(PUBLISHED_SUN_DAYS)("$id $place on $localDate", ({ localDate, timezone, position, events }) => {
    const ours = daylight(localDate, position, timezone);
    for (const field of SUN_DAY_FIELDS) {
      const published = events[field];
      if (published === null) {
        expect(ours[field], field).toBeNull();
        expect(ours.why[field], field).toMatch(/\w/);
        continue;
      }
      const errorS = (ours[field]!.getTime() - localClock(localDate, published, timezone).getTime()) / 1000;
      expect(Math.abs(errorS), field).toBeLessThan(6);
      expect(ours.why[field], field).toBeUndefined();
    }
  });

  test.each(PUBLISHED_SUN_DAYS)("$id: noon height, rise and set bearings and the clock's hours", (row) => {
    const { localDate, position, timezone } = row;
    const ours = daylight(localDate, position, timezone);
    expect(Math.abs(airlessSunAltitudeDeg(ours.solarNoon!, position) - row.noonAltitudeDeg)).toBeLessThan(
      0.02,
    );
    if (row.riseAzimuthDeg !== null) {
      expect(Math.abs(sunPosition(ours.sunrise!, position).azimuthDeg - row.riseAzimuthDeg)).toBeLessThan(
        0.2,
      );
    }
    if (row.setAzimuthDeg !== null) {
      expect(Math.abs(sunPosition(ours.sunset!, position).azimuthDeg - row.setAzimuthDeg)).toBeLessThan(0.2);
    }
    const hours =
      (endOfDay(localDate, timezone).getTime() - startOfDay(localDate, timezone).getTime()) / 3_600_000;
    expect(hours).toBe(row.clockHours);
    expect(ours.clockChangeAt !== null).toBe(row.clockHours !== 24);
  });

  test("the table of instants holds 18", () => expect(PUBLISHED_SUN_INSTANTS).toHaveLength(18));

  test.each(PUBLISHED_SUN_INSTANTS)("$id $field of $localDate", (row) => {
    const ours = daylight(row.localDate, { lat: row.lat, lon: row.lon }, row.timezone)[row.field];
    expect(Math.abs(ours!.getTime() - Date.parse(row.at)) / 1000).toBeLessThan(row.toleranceS);
  });
});

describe("the civil day", () => {
  test("an event before a clock change carries the old offset, one after it the new", () => {
    const place = { lat: 40, lon: 88 }; // invented: a place so far east of its zone that the sun rises at 1 o'clock
    const { sunrise, sunset, clockChangeAt, utcOffset, dayLengthMin } = daylight(
      "2026-03-29",
      place,
      "Europe/Berlin",
    );
    expect(isoInZone(clockChangeAt!, "Europe/Berlin")).toBe("2026-03-29T03:00:00+02:00");
    expect(isoInZone(sunrise!, "Europe/Berlin")).toMatch(/^2026-03-29T0[01]:\d\d:\d\d\+01:00$/);
    expect(civilAt(sunset!, "Europe/Berlin").utcOffset).toBe("+02:00");
    expect(utcOffset).toBe("+02:00");
    expect(dayLengthMin).toBeGreaterThan(740); // elapsed time, not the difference of the two clocks: an hour less
    expect(dayLengthMin).toBeLessThan(760);
  });

  test("on Oulu's midsummer the sun sets before it rises, so the date has no day length", () => {
    const day = daylight("2026-06-21", { lat: 65.0121, lon: 25.4651 }, "Europe/Helsinki");
    expect(day.sunset! < day.sunrise!).toBe(true);
    expect(day.dayLengthMin).toBeNull();
    expect(day.why.dayLengthMin).toBe("the sunset of this date comes before its sunrise");
    expect(day.why.firstLight).toBe("the sun does not sink to 6° below the horizon on this date");
  });

  test("polar night and polar day say on which side the sun stays", () => {
    const tromso = { lat: 69.6492, lon: 18.9553 };
    const night = daylight("2026-12-21", tromso, "Europe/Oslo");
    expect(night.why.sunrise).toBe("the sun does not climb to the horizon on this date");
    expect(night.why.dayLengthMin).toBe(night.why.sunrise);
    const day = daylight("2026-05-25", tromso, "Europe/Oslo");
    expect(day.why.sunset).toBe("the sun does not sink to the horizon on this date");
  });

  test("a date whose dusk falls past midnight names the date that has it", () => {
    const oulu = { lat: 65.0121, lon: 25.4651 };
    const days = eachDay("2026-06-01", "2026-06-30").map((date) => daylight(date, oulu, "Europe/Helsinki"));
    const without = days.filter((day) => day.sunset === null);
    expect(without).toHaveLength(1); // the sunset moves past midnight once, and so skips one date
    expect(without[0]!.why.sunset).toMatch(
      /^no sunset falls on this date: the nearest is at \d\d:\d\d on 2026-06-\d\d$/,
    );
    const named = without[0]!.why.sunset!.slice(-10);
    expect(days.find((day) => day.localDate === named)!.sunset).not.toBeNull();
  });

  test("at the poles nothing breaks: one side all day, and a sunrise once a year", () => {
    const dates = eachDay("2026-01-01", "2026-12-31");
    for (const lat of [90, -90]) {
      const days = dates.map((date) => daylight(date, { lat, lon: 0 }, "UTC"));
      expect(days.filter((day) => day.sunrise !== null)).toHaveLength(1);
      expect(days.filter((day) => day.sunset !== null)).toHaveLength(1);
    }
  });

  test("a grazing twilight is marked about, whether it happens or not", () => {
    const helsinki = daylight("2026-06-21", { lat: 60.1699, lon: 24.9384 }, "Europe/Helsinki");
    expect(helsinki.about).toEqual(["firstLight", "lastLight"]);
    const justNorth = daylight("2026-06-21", { lat: 60.7, lon: 24.9384 }, "Europe/Helsinki");
    expect(justNorth.firstLight).toBeNull();
    expect(justNorth.about).toEqual(["firstLight", "lastLight"]);
    expect(daylight("2026-03-21", { lat: 60.1699, lon: 24.9384 }, "Europe/Helsinki").about).toEqual([]);
  });

  test("first and last light follow the area's own angle", () => {
    const place = { lat: 40, lon: -105 };
    const civil = daylight("2026-10-10", place, "America/Denver");
    const nautical = daylight("2026-10-10", place, "America/Denver", -12);
    expect(nautical.firstLight).toEqual(civil.nauticalDawn);
    expect(nautical.lastLight).toEqual(civil.nauticalDusk);
  });

  test("a date that the clock skipped has no events and says so", () => {
    const day = daylight("2011-12-30", { lat: -13.83, lon: -171.76 }, "Pacific/Apia");
    expect(day.sunrise).toBeNull();
    expect(day.why.sunrise).toBe("the clock skipped this date");
    expect(day.solarNoon).toBeNull();
  });

  test("every null has its sentence, and nothing else has one", () => {
    for (const { localDate, position, timezone } of PUBLISHED_SUN_DAYS) {
      const { why, ...day } = daylight(localDate, position, timezone);
      const nulls = Object.entries(day).filter(([, value]) => value === null);
      expect(Object.keys(why).toSorted()).toEqual(nulls.map(([key]) => key).toSorted());
    }
  });

  test("events are in order wherever the whole day lies inside one date", () => {
    const day = daylight("2026-04-05", { lat: -45.0312, lon: 168.6626 }, "Pacific/Auckland");
    const order = SUN_DAY_FIELDS.map((field) => day[field]!.getTime());
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(day.dayLengthMin).toBe(681); // 07:07:17 to 18:28:16 in the published row: 680.98
  });

  test("an angle outside twilight, a place or a date that is none is refused with its value", () => {
    const place = { lat: 40, lon: -105 };
    expect(() => daylight("2026-10-10", place, "America/Denver", -20)).toThrow(
      "firstLightSunDeg must be -18 to 6, found -20",
    );
    expect(() => daylight("2026-02-30", place, "America/Denver")).toThrow("2026-02-30");
    expect(() => daylight("2026-10-10", { lat: 99, lon: 0 }, "America/Denver")).toThrow("found 99");
  });
});
