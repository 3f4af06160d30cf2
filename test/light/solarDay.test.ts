import { describe, expect, test } from "vitest";
import { daylight } from "../../scripts/light/daylight.ts";
import { solarDay, sunAngleTimes } from "../../scripts/light/solarDay.ts";
import { airlessSunAltitudeDeg } from "../../scripts/light/sunAndMoon.ts";
import { civilAt } from "../../scripts/time/civilTime.ts";
import { seededPlaceDays } from "../published/seededPlaces.ts";
import { PUBLISHED_SUN_DAYS, SUN_DAY_FIELDS } from "../published/sunDays.ts";

describe("the solar day", () => {
  test("below 55 degrees it is the civil day's own events", () => {
    const rows = PUBLISHED_SUN_DAYS.filter(({ position }) => Math.abs(position.lat) < 55);
    expect(rows.length).toBeGreaterThan(12);
    for (const { localDate, position, timezone } of rows) {
      const civil = daylight(localDate, position, timezone);
      const solar = solarDay(localDate, position, timezone);
      for (const field of SUN_DAY_FIELDS) expect(solar[field]).toEqual(civil[field]);
    }
  });

  test("Helsinki's midsummer evening ends after midnight, in the right order", () => {
    const day = solarDay("2026-06-21", { lat: 60.1699, lon: 24.9384 }, "Europe/Helsinki");
    expect(civilAt(day.lastLight!, "Europe/Helsinki").localDate).toBe("2026-06-22");
    expect(civilAt(day.firstLight!, "Europe/Helsinki").localDate).toBe("2026-06-21");
    expect(day.firstLight! < day.sunrise! && day.sunrise! < day.solarNoon).toBe(true);
    expect(day.solarNoon < day.sunset! && day.sunset! < day.lastLight!).toBe(true);
    expect(day.about).toEqual(["firstLight", "lastLight"]);
    expect(day.why.nauticalDusk).toBe("the sun does not sink to 12° below the horizon in the night after");
  });

  test("in polar night the sun's absence is the day's, not the night's", () => {
    const day = solarDay("2026-12-21", { lat: 69.6492, lon: 18.9553 }, "Europe/Oslo");
    expect(day.why.sunrise).toBe("the sun does not climb to the horizon on this day");
    expect(day.firstLight).not.toBeNull();
  });

  test("events lie in order around the solar noon, no more than 12 hours from it, at 500 places", () => {
    let events = 0;
    for (const { localDate, position, timezone } of seededPlaceDays()) {
      const day = solarDay(localDate, position, timezone);
      const times = SUN_DAY_FIELDS.flatMap((field) => day[field]?.getTime() ?? []);
      events += times.length;
      expect(times).toEqual(times.toSorted((a, b) => a - b));
      for (const ms of times)
        expect(Math.abs(ms - day.solarNoon.getTime())).toBeLessThanOrEqual(12 * 3_600_000);
      for (const field of SUN_DAY_FIELDS) expect(day[field] === null).toBe(field in day.why);
    }
    expect(events).toBeGreaterThan(3200);
  });
});

describe("a sun angle", () => {
  test("the sun stands at the angle at both instants", () => {
    const place = { lat: 57.4778, lon: -4.2247 };
    for (const sunDeg of [-18, -5, -3, 0, 8]) {
      const times = sunAngleTimes("2026-10-25", place, "Europe/London", sunDeg);
      expect(Math.abs(airlessSunAltitudeDeg(times.climbsAt!, place) - sunDeg)).toBeLessThan(1e-5); // 1 ms of the sun's way
      expect(Math.abs(airlessSunAltitudeDeg(times.sinksAt!, place) - sunDeg)).toBeLessThan(1e-5);
    }
  });

  test("the civil twilight angle gives first and last light", () => {
    const place = { lat: 57.4778, lon: -4.2247 };
    const day = solarDay("2026-10-25", place, "Europe/London");
    const times = sunAngleTimes("2026-10-25", place, "Europe/London", -6);
    expect(times).toMatchObject({
      climbsAt: day.firstLight,
      sinksAt: day.lastLight,
      isClimbAbout: false,
      why: {},
    });
  });

  test("an angle the sun does not reach is null on both ends with its reason", () => {
    const times = sunAngleTimes("2026-12-21", { lat: 57.4778, lon: -4.2247 }, "Europe/London", 20);
    expect(times.climbsAt).toBeNull();
    expect(times.why.sinksAt).toBe("the sun does not climb to 20° above the horizon on this day");
    expect(() => sunAngleTimes("2026-12-21", { lat: 57, lon: -4 }, "Europe/London", 91)).toThrow("found 91");
  });
});
