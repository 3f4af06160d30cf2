import { describe, expect, test } from "vitest";
import { forecastRows } from "../../scripts/demo/forecastRows.ts";

describe("a forecast day in short form", () => {
  const rows = forecastRows(
    "2027-11-07",
    "05 calm .8 46; 13 S 13 g25 1 57 thunder rain .2; 17 S 9 g18 .9 52",
  );

  test("holds a stated hour until the next, to 21:00", () => {
    expect(rows).toHaveLength(17);
    expect(rows.map(({ hour }) => hour)).toEqual(
      Array.from({ length: 17 }, (_, index) => `${String(index + 5).padStart(2, "0")}:00`),
    );
    expect(rows[7]).toMatchObject({ hour: "12:00", windFrom: "calm", windSpeed: 0, gust: 0, temp: 46 });
  });

  test("reads wind, gust, cloud, temperature, thunder and rain", () => {
    expect(rows[8]).toEqual({
      localDate: "2027-11-07",
      hour: "13:00",
      windFrom: "S",
      windSpeed: 13,
      gust: 25,
      cloudShare: 1,
      temp: 57,
      rain: 0.2,
      thunder: true,
      freezingRain: false,
    });
    expect(rows[12]).toMatchObject({ hour: "17:00", thunder: false, rain: 0 });
  });
});
