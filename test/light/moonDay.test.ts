import { describe, expect, test } from "vitest";
import { isMoonUp, moonDay, moonIlluminatedShare } from "../../scripts/light/moonDay.ts";
import { eachDay } from "../../scripts/time/civilTime.ts";
import { localClock } from "../published/localClock.ts";
import { PUBLISHED_MOON_DAYS } from "../published/moonDays.ts";

describe("published moon days", () => {
  test("the table holds eleven days", () => expect(PUBLISHED_MOON_DAYS).toHaveLength(11));

  // 20 s: the worst of 1000 seeded events is 17 s, these are lower; the table itself is good to 0.4 s.
  test.each(PUBLISHED_MOON_DAYS)("$id $place on $localDate", ({ lat, lon, timezone, localDate, ...row }) => {
    const moon = moonDay(localDate, { lat, lon }, timezone);
    for (const name of ["rise", "set"] as const) {
      const published = row[name];
      if (published === null) {
        expect(moon[name]).toBeNull();
        expect(moon.why[name]).toBe("the moon stays above the horizon all day");
      } else {
        const errorS = (moon[name]!.getTime() - localClock(localDate, published, timezone).getTime()) / 1000;
        expect(Math.abs(errorS)).toBeLessThan(20);
      }
    }
    expect(Math.abs(moonIlluminatedShare(new Date(row.at)) - row.illuminated)).toBeLessThan(0.0005);
    expect(moon.phaseName).toBe(row.phaseName);
  });
});

describe("the moon of a civil day", () => {
  test("it is up from rise to set and down around them", () => {
    const place = { lat: 39.7392, lon: -104.9903 };
    const { rise } = moonDay("2026-11-01", place, "America/Denver");
    expect(isMoonUp(new Date(rise!.getTime() - 1000), place)).toBe(false);
    expect(isMoonUp(new Date(rise!.getTime() + 1000), place)).toBe(true);
  });

  test("about once a month a date has no moonrise, and names the date that has the nearest", () => {
    const place = { lat: 39.7392, lon: -104.9903 };
    const dates = eachDay("2026-01-01", "2026-12-31");
    const moons = dates.map((date) => moonDay(date, place, "America/Denver"));
    const without = moons.filter((moon) => moon.rise === null);
    expect(without.length).toBeGreaterThanOrEqual(12);
    expect(without.length).toBeLessThanOrEqual(14);
    for (const moon of without) {
      const [, named] = /^no moonrise falls on this date: the nearest is at \d\d:\d\d on (\S+)$/.exec(
        moon.why.rise!,
      )!;
      expect(moons[dates.indexOf(named!)]!.rise).not.toBeNull();
    }
  });

  test("in the far north the moon stays up for days and down for days", () => {
    const reasons = eachDay("2026-12-01", "2026-12-31").flatMap(
      (date) => moonDay(date, { lat: 78.2232, lon: 15.6267 }, "Arctic/Longyearbyen").why.rise ?? [],
    );
    expect(reasons).toContain("the moon stays above the horizon all day");
    expect(reasons).toContain("the moon stays below the horizon all day");
  });
});
