import { describe, expect, test } from "vitest";
import type { ForecastHour } from "../../../scripts/briefing/forecastSeries.ts";
import { holdingRows, leavesGap, windOfRows } from "../../../scripts/briefing/trips/holdingRows.ts";

const at = (clock: string, day = "05"): Date => new Date(`2026-11-${day}T${clock}:00Z`);

function hour(clock: string, windSpeedMps: number, day = "05"): ForecastHour {
  const unknown = {
    gustMps: null,
    cloudShare: null,
    tempC: null,
    rainMmPerH: null,
    thunder: null,
    freezingRain: null,
  };
  return {
    ...unknown,
    at: at(clock, day),
    localDate: `2026-11-${day}`,
    windFromDeg: 315,
    wind: "from",
    windSpeedMps,
    issuedAt: at("00:00"),
  };
}

const rows = (hours: ForecastHour[], from: Date, to: Date) => holdingRows(hours, from, to, "UTC");

describe("the rows of a forecast that hold in a session", () => {
  test("a row holds until the next of its day", () => {
    const found = rows([hour("05:00", 1), hour("09:00", 2), hour("13:00", 3)], at("07:00"), at("10:00"));
    expect(found.map(({ hour: row, until }) => [row.windSpeedMps, until])).toEqual([
      [1, at("09:00")],
      [2, at("13:00")],
    ]);
  });

  test("a row that begins as the session ends is not in it, one that ends as it begins neither", () => {
    expect(
      rows([hour("05:00", 1), hour("07:00", 2), hour("10:00", 3)], at("07:00"), at("10:00")),
    ).toHaveLength(1);
  });

  test("the last row of a day ends with the day, whatever the next day says", () => {
    const hours = [hour("20:00", 1), hour("06:00", 2, "06")];
    expect(rows(hours, at("03:00", "06"), at("05:00", "06"))).toEqual([]);
    expect(rows(hours, at("23:00"), at("07:00", "06"))).toHaveLength(2);
  });

  test("before the first row of a day nothing is known", () => {
    const found = rows([hour("12:00", 3)], at("07:00"), at("13:00"));
    expect(leavesGap(found, at("07:00"), at("13:00"))).toBe(true);
    expect(
      windOfRows(found, at("07:00"), at("13:00"), () => false).map((wind) => [wind.at, wind.windSpeedMps]),
    ).toEqual([
      [at("07:00"), null],
      [at("12:00"), 3],
    ]);
  });

  test("the time after the last day of a forecast is not known", () => {
    const found = rows([hour("20:00", 1)], at("22:00"), at("02:00", "06"));
    expect(windOfRows(found, at("22:00"), at("02:00", "06"), () => false).at(-1)).toEqual({
      at: at("00:00", "06"),
      windFromDeg: null,
      windSpeedMps: null,
    });
  });

  test("of two rows for the very same time the last is the wind, and both are weather", () => {
    const found = rows([hour("07:00", 1), hour("07:00", 9)], at("07:00"), at("09:00"));
    expect(found).toHaveLength(2);
    expect(windOfRows(found, at("07:00"), at("09:00"), () => false).map((wind) => wind.windSpeedMps)).toEqual(
      [9],
    );
  });
});
