import { describe, expect, test } from "vitest";
import { forecastAge } from "../../scripts/safety/factAge.ts";
import { sessionChecks } from "../../scripts/safety/sessionChecks.ts";
import { thunder } from "../../scripts/safety/thunder.ts";
import { freezingRain, windChill, windChillC } from "../../scripts/safety/windChill.ts";
import { windOnTree } from "../../scripts/safety/windOnTree.ts";
import { kmh, limits } from "./limits.ts";

// Environment Canada, Wind Chill Calculation Chart (2001 index), whole degrees. Half a degree of the tolerance is that
// rounding, the rest the chart's own (-24.5 is printed -24, -4.5 as -5).
const chart = [
  { windKmh: 5, row: [4, -2, -7, -13, -19, -24, -30, -36, -41, -47, -53, -58] },
  { windKmh: 10, row: [3, -3, -9, -15, -21, -27, -33, -39, -45, -51, -57, -63] },
  { windKmh: 20, row: [1, -5, -12, -18, -24, -30, -37, -43, -49, -56, -62, -68] },
  { windKmh: 30, row: [0, -6, -13, -20, -26, -33, -39, -46, -52, -59, -65, -72] },
  { windKmh: 40, row: [-1, -7, -14, -21, -27, -34, -41, -48, -54, -61, -68, -74] },
  { windKmh: 50, row: [-1, -8, -15, -22, -29, -35, -42, -49, -56, -63, -69, -76] },
  { windKmh: 60, row: [-2, -9, -16, -23, -30, -36, -43, -50, -57, -64, -71, -78] },
  { windKmh: 80, row: [-3, -10, -17, -24, -31, -38, -45, -52, -60, -67, -74, -81] },
].flatMap(({ windKmh, row }) => row.map((chillC, at) => ({ windKmh, tempC: 5 - 5 * at, chillC })));

describe("wind chill", () => {
  test.each(chart)("$tempC C in $windKmh km/h feels like $chillC", ({ tempC, windKmh, chillC }) => {
    expect(Math.abs(windChillC(tempC, kmh(windKmh)) - chillC)).toBeLessThanOrEqual(0.51);
  });

  test("every cell of the chart is compared", () => expect(chart.length).toBe(96));

  test("in a calm and above 10 C it is the air's own temperature, and it does not jump at walking pace", () => {
    expect(windChillC(-10, 0)).toBe(-10);
    expect(windChillC(10.1, 20)).toBe(10.1);
    for (const tempC of [-30, -10, 0, 10]) {
      expect(Math.abs(windChillC(tempC, kmh(4.999)) - windChillC(tempC, kmh(5.001)))).toBeLessThan(0.06);
    }
  });

  test("a wind below 0 or a temperature that is no number is refused", () => {
    expect(() => windChillC(0, -1)).toThrow(RangeError);
    expect(() => windChillC(Number.NaN, 1)).toThrow(RangeError);
  });
});

describe("C29, cold while sitting still", () => {
  const cold = (tempC: number | null, windSpeedMps: number | null) =>
    windChill({ subject: "morning", tempC, windSpeedMps }, limits);
  test.each([
    { tempC: -9.9, result: "OK" },
    { tempC: -10, result: "CAUTION" },
    { tempC: -26.9, result: "CAUTION" },
    { tempC: -27, result: "STOP" },
  ])("$tempC C in a calm is $result", ({ tempC, result }) => expect(cold(tempC, 0).result).toBe(result));

  test("wind makes -5 C a caution", () => {
    expect(cold(-5, kmh(20))).toMatchObject({
      result: "CAUTION",
      text: "Air -5 °C, feels like -12 in the wind: carry the warm layer up by line.",
    });
  });

  test("without temperature or wind it is not checked", () => {
    expect(cold(null, 2).text).toBe("Wind chill not known: no temperature.");
    expect(cold(2, null).result).toBe("NOT CHECKED");
  });

  test("freezing rain is a stop, unknown is not checked", () => {
    const rain = (forecast: boolean | null) =>
      freezingRain({ subject: "morning", freezingRain: forecast }).result;
    expect([true, false, null].map(rain)).toEqual(["STOP", "OK", "NOT CHECKED"]);
  });
});

describe("C10, wind on the tree", () => {
  const wind = (meanKmh: number | null, gustKmh: number | null) =>
    windOnTree(
      {
        subject: "m",
        windSpeedMps: meanKmh === null ? null : kmh(meanKmh),
        gustMps: gustKmh === null ? null : kmh(gustKmh),
      },
      limits,
    );
  test.each([
    { mean: 28.9, gust: 49.9, result: "OK" },
    { mean: 29, gust: 40, result: "CAUTION" },
    { mean: 38.9, gust: 49.9, result: "CAUTION" },
    { mean: 39, gust: 40, result: "STOP" },
    { mean: 11, gust: 50, result: "STOP" },
  ])("mean $mean, gusts $gust km/h is $result", ({ mean, gust, result }) =>
    expect(wind(mean, gust).result).toBe(result),
  );

  test("an unknown gust is not checked, a mean over the limit a stop without it", () => {
    expect(wind(30, null)).toMatchObject({ result: "NOT CHECKED", text: "Mean 30 km/h, gusts not known." });
    expect(wind(39, null).result).toBe("STOP");
    expect(wind(null, 20).result).toBe("NOT CHECKED");
    expect(wind(null, 55).result).toBe("STOP");
  });

  test("3 m/s with gusts of 5.6 reads as mean 11 km/h, gusts 20", () => {
    expect(windOnTree({ subject: "m", windSpeedMps: 3, gustMps: 5.6 }, limits).text).toBe(
      "Mean 11 km/h, gusts 20.",
    );
  });
});

test("C11: any thunder is a stop, unknown is not checked", () => {
  const heard = (forecast: boolean | null) => thunder({ subject: "evening", thunder: forecast }).result;
  expect([true, false, null].map(heard)).toEqual(["STOP", "OK", "NOT CHECKED"]);
});

describe("C26, age of a forecast", () => {
  const start = new Date("2026-11-06T10:00:00Z");
  const age = (issued: string | null, sessionStart: Date | null = start) =>
    forecastAge(
      {
        subject: "morning",
        timezone: "UTC",
        issuedAt: issued === null ? null : new Date(issued),
        sessionStart,
      },
      limits,
    );

  test("24 h before the session is not old, a minute more is", () => {
    expect(age("2026-11-05T10:00:00Z").result).toBe("OK");
    expect(age("2026-11-05T09:59:00Z")).toMatchObject({
      result: "CAUTION",
      text: "Old forecast, issued 24 h before the session.",
    });
  });

  test("no forecast or no session start is not checked", () => {
    expect(age(null)).toMatchObject({ result: "NOT CHECKED", text: "No forecast." });
    expect(age("2026-11-05T10:00:00Z", null).result).toBe("NOT CHECKED");
  });
});

describe("the weather of a session", () => {
  const hour = { windSpeedMps: 3, gustMps: 5, thunder: false, freezingRain: false, tempC: 4 };
  const facts = {
    session: "evening",
    timezone: "UTC",
    issuedAt: new Date("2026-11-06T06:00:00Z"),
    sessionStart: new Date("2026-11-06T15:00:00Z"),
  };
  const results = (weather: Parameters<typeof sessionChecks>[0]["weather"]) =>
    Object.fromEntries(
      sessionChecks({ ...facts, weather }, limits).map(({ id, result, text }) => [
        `${id} ${text.split(" ")[0]}`,
        result,
      ]),
    );

  test("the worst hour decides each check", () => {
    const checks = sessionChecks(
      { ...facts, weather: [hour, { ...hour, windSpeedMps: 8.5, thunder: true }, hour] },
      limits,
    );
    expect(checks.map(({ id, result }) => `${id} ${result}`)).toEqual([
      "C11 STOP",
      "C10 CAUTION",
      "C29 OK",
      "C29 OK",
      "C26 OK",
    ]);
    expect(checks[1]?.text).toBe("Mean 31 km/h, gusts 18: small trees sway; the default limit is 29 km/h.");
  });

  test("one hour without a gust leaves the wind not checked", () => {
    const [wind] = sessionChecks({ ...facts, weather: [hour, { ...hour, gustMps: null }] }, limits);
    expect(wind).toMatchObject({ id: "C10", result: "NOT CHECKED" });
  });

  test("without a forecast nothing is checked", () => {
    const checks = sessionChecks({ ...facts, issuedAt: null, weather: [] }, limits);
    expect(checks.map(({ result }) => result)).toEqual(Array(5).fill("NOT CHECKED"));
  });

  test("of windy hours the strongest is shown, of cold ones the coldest", () => {
    expect(results([hour])).toMatchObject({ "C10 Mean": "OK", "C11 No": "OK" });
    const checks = sessionChecks(
      { ...facts, weather: [hour, { ...hour, windSpeedMps: 5, tempC: -3 }, hour] },
      limits,
    );
    expect(checks.find(({ id }) => id === "C10")?.inputs.windSpeedMps).toBe(5);
    expect(checks.find(({ inputs }) => inputs.tempC !== undefined)?.inputs.tempC).toBe(-3);
  });
});
