import { describe, expect, test } from "vitest";
import { checkText } from "../../../scripts/briefing/pages/checkText.ts";
import { larchValley } from "../../fixtures/packs/larchValley.ts";

function area(units: "metric" | "us", locale: string): ReturnType<typeof larchValley> {
  const larch = larchValley();
  Object.assign(larch.pack.area, { units, locale });
  return larch;
}

const trunk = {
  text: "Trunk 347 mm at 1.3 m, about 288 to 327 mm at 5.2 m; stand takes 200 to 500 mm.",
  inputs: {
    girthMm: 1090,
    measuredAtHeightM: 1.3,
    platformHeightM: 5.2,
    trunkMinMm: 200,
    trunkMaxMm: 500,
    diameterAtPlatformMinMm: 288.5,
    diameterAtPlatformMaxMm: 327.4,
  },
};

describe("the sentence of a check", () => {
  test("stays metric in a metric area", () => {
    expect(checkText(trunk, area("metric", "en-GB"))).toBe(trunk.text);
  });

  // by hand: 347 / 25.4 = 13.66, 1.3 / 0.3048 = 4.27, 327.4 / 25.4 = 12.89, 5.2 / 0.3048 = 17.06, 200 / 25.4 = 7.87
  test("gives trunks in inches and heights in feet in a US area", () => {
    expect(checkText(trunk, area("us", "en-US"))).toBe(
      "Trunk 13.7 in at 4.3 ft, about 11.3 in to 12.9 in at 17.1 ft; stand takes 7.9 in to 19.7 in.",
    );
  });

  // 12.96 m/s is 28.99 mph; by way of the rounded 47 km/h it would be 29.2, by way of 18 km/h 4.92 m/s would be 11.2
  test("works a wind out from the metres a second it was rounded from", () => {
    const wind = {
      text: "Mean 31 km/h, gusts 47: small trees sway.",
      inputs: { windSpeedMps: 8.49, windSpeedKmh: 30.6, gustMps: 12.96, gustKmh: 46.7 },
    };
    expect(checkText(wind, area("us", "en-US"))).toBe("Mean 19 mph, gusts 29 mph: small trees sway.");
  });

  // 3.3 C is 37.9 F; by way of the printed 3 it would be 37
  test("works a temperature out from the degrees it was rounded from", () => {
    const cold = {
      text: "Air 3 °C, feels like 3 in the wind.",
      inputs: { tempC: 3.3, windSpeedMps: 0, windSpeedKmh: 0, windChillC: 3.3 },
    };
    expect(checkText(cold, area("us", "en-US"))).toBe("Air 38 °F, feels like 38 °F in the wind.");
  });

  test("gives loads in pounds and leaves minutes alone", () => {
    const load = {
      text: "Load 118 kg; the stand carries 113 kg: too heavy.",
      inputs: { ratedLoadKg: 113.4, sumKg: 118 },
    };
    // 113 is no rounding of 113.4 to 0.1 kg: the printed figure stands
    expect(checkText(load, area("us", "en-US"))).toBe(
      "Load 260.1 lb; the stand carries 249.1 lb: too heavy.",
    );
    const walk = { text: "Dark on the way in 123 min, alone.", inputs: { darkInMin: 123 } };
    expect(checkText(walk, area("us", "en-US"))).toBe(walk.text);
  });

  test.each([
    ["en-US", "Replace by Feb 2028; Sep 30, 2027."],
    ["en-NZ", "Replace by Feb 2028; 30 Sep 2027."],
  ])("writes dates the way of %s", (locale, words) => {
    expect(checkText({ text: "Replace by 2028-02; 2027-09-30.", inputs: {} }, area("metric", locale))).toBe(
      words,
    );
  });
});
