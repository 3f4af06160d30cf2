import { describe, expect, test } from "vitest";
import { forecastHours, weatherOfDay } from "../../scripts/briefing/forecastSeries.ts";
import type { TripContent } from "../../scripts/content/areaContent.ts";
import { smallContent } from "./smallArea.ts";

const ZONE = "America/New_York";
const row = (more: Record<string, unknown>) => ({
  ...{ localDate: "2026-10-14", windFrom: 225, windSpeed: 10, gust: 20, cloudShare: 0.5, temp: 50 },
  ...more,
});
const tripWith = (
  rows: Record<string, unknown>[],
  units = { speed: "mph", temp: "F", rain: "in" },
): TripContent =>
  smallContent({
    trips: [
      {
        from: "2026-10-14",
        to: "2026-11-01",
        forecast: { source: "x", issuedAt: "2026-10-13T17:00:00-04:00", units, rows },
      },
    ],
  }).trips[0]!;
const hoursOf = (...rows: Record<string, unknown>[]) => forecastHours(tripWith(rows), ZONE, () => null);

describe("a forecast in metric units", () => {
  // 1 mile = 1609.344 m, 1 nautical mile = 1852 m, exact by definition.
  test.each([
    ["mps", 10, 10],
    ["kmh", 36, 10],
    ["mph", 10, 4.4704],
    ["kn", 10, (10 * 1852) / 3600],
  ])("%s", (speed, written, expected) => {
    const trip = tripWith([row({ hour: "06:00", windSpeed: written, gust: written })], {
      speed,
      temp: "C",
      rain: "mm",
    });
    const [hour] = forecastHours(trip, ZONE, () => null);
    expect(hour!.windSpeedMps).toBeCloseTo(expected, 4);
    expect(hour!.gustMps).toBeCloseTo(expected, 4);
  });

  test.each([
    [32, 0],
    [50, 10],
    [-40, -40],
    [140, 60],
  ])("%d F is %d C", (temp, expected) => {
    expect(hoursOf(row({ hour: "06:00", temp }))[0]!.tempC).toBeCloseTo(expected, 10);
  });

  test("an inch of rain is 25.4 mm, and Celsius and millimetres stay", () => {
    expect(hoursOf(row({ hour: "06:00", rain: 0.5 }))[0]!.rainMmPerH).toBeCloseTo(12.7, 10);
    const metric = tripWith([row({ hour: "06:00", rain: 2, temp: 7 })], {
      speed: "mps",
      temp: "C",
      rain: "mm",
    });
    const [hour] = forecastHours(metric, ZONE, () => null);
    expect([hour!.rainMmPerH, hour!.tempC]).toEqual([2, 7]);
  });

  test.each([
    ["calm", { wind: "calm", windFromDeg: null, windSpeedMps: 0 }],
    ["variable", { wind: "variable", windFromDeg: null }],
    [null, { wind: "not known", windFromDeg: null }],
    ["NNW", { wind: "from", windFromDeg: 337.5 }],
    [360, { wind: "from", windFromDeg: 0 }],
    [0, { wind: "from", windFromDeg: 0 }],
  ])("wind from %s", (windFrom, expected) => {
    expect(hoursOf(row({ hour: "06:00", windFrom }))[0]).toMatchObject(expected);
  });

  test("what is not known stays not known, never nought", () => {
    const unknown = { windSpeed: null, gust: null, cloudShare: null, temp: null };
    expect(hoursOf(row({ hour: "06:00", ...unknown }))[0]).toMatchObject({
      ...{ windSpeedMps: null, gustMps: null, cloudShare: null, tempC: null },
      ...{ rainMmPerH: null, thunder: null, freezingRain: null },
    });
  });
});

describe("when a row of a forecast begins", () => {
  test("rows stand in order of time, whatever their order in the file", () => {
    const hours = hoursOf(
      row({ hour: "15:00" }),
      row({ hour: "06:00" }),
      row({ localDate: "2026-10-13", hour: "23:00" }),
    );
    expect(hours.map((hour) => hour.at.toISOString())).toEqual([
      ...["2026-10-14T03:00:00.000Z", "2026-10-14T10:00:00.000Z", "2026-10-14T19:00:00.000Z"],
    ]);
  });

  test("an hour that comes twice is the first of the two", () => {
    expect(hoursOf(row({ localDate: "2026-11-01", hour: "01:30" }))[0]!.at.toISOString()).toBe(
      "2026-11-01T05:30:00.000Z",
    );
  });

  test("an hour that the clock skips has no row", () => {
    expect(hoursOf(row({ localDate: "2027-03-14", hour: "02:30" }))).toEqual([]);
  });

  test("a row of a session begins with it, and is left out where there is no such session", () => {
    const morning = new Date("2026-10-14T11:17:22Z");
    const trip = tripWith([row({ session: "morning" }), row({ session: "never" })]);
    const hours = forecastHours(trip, ZONE, (_, session) => (session === "morning" ? morning : null));
    expect(hours.map((hour) => hour.at)).toEqual([morning]);
  });

  // The evening begins at 15:00 by default: a forecast by the hour and a row for the evening then begin together.
  test("where a row of an hour and a row of a session begin together the one of the session holds", () => {
    const start = new Date("2026-10-14T19:00:00Z");
    const rows = [row({ session: "evening", cloudShare: 0.2 }), row({ hour: "15:00", cloudShare: 0.9 })];
    for (const written of [rows, rows.toReversed()]) {
      const hours = forecastHours(tripWith(written), ZONE, () => start);
      expect(hours.map(({ at, cloudShare }) => [at, cloudShare])).toEqual([[start, 0.2]]);
    }
  });

  test("a row may be newer than its forecast", () => {
    const [old, fresh] = hoursOf(
      row({ hour: "06:00" }),
      row({ hour: "07:00", issuedAt: "2026-10-14T05:00:00-04:00" }),
    );
    expect(old!.issuedAt.toISOString()).toBe("2026-10-13T21:00:00.000Z");
    expect(fresh!.issuedAt.toISOString()).toBe("2026-10-14T09:00:00.000Z");
  });

  test("a trip without a forecast has no hours", () => {
    const [trip] = smallContent({ trips: [{ from: "2026-10-14", to: "2026-10-14" }] }).trips;
    expect(forecastHours(trip!, ZONE, () => null)).toEqual([]);
  });
});

describe("the sky over the slope air of a day", () => {
  test("rows of that day alone, and only those that tell the cloud", () => {
    const hours = hoursOf(
      row({ hour: "06:00" }),
      row({ hour: "09:00", cloudShare: null }),
      row({ hour: "12:00", cloudShare: 0, temp: null }),
      row({ localDate: "2026-10-15", hour: "06:00" }),
    );
    const weather = weatherOfDay(hours, "2026-10-14");
    expect(weather.map(({ cloudShare, airTempC }) => [cloudShare, airTempC])).toEqual([
      [0.5, 10],
      [0, null],
    ]);
    expect(weatherOfDay(hours, "2026-10-16")).toEqual([]);
  });
});
