import { describe, expect, test } from "vitest";
import { decimalDegreesText, degreesMinutesText } from "../../scripts/geo/coordinateText.ts";

describe("coordinate text", () => {
  test.each([
    {
      lat: -45.0312,
      lon: 168.6626,
      decimal: "-45.03120, 168.66260",
      minutes: "45° 01.872′ S, 168° 39.756′ E",
    },
    {
      lat: 36.19833,
      lon: -84.23083,
      decimal: "36.19833, -84.23083",
      minutes: "36° 11.900′ N, 084° 13.850′ W",
    },
    { lat: 0, lon: 0, decimal: "0.00000, 0.00000", minutes: "00° 00.000′ N, 000° 00.000′ E" },
    { lat: -1e-9, lon: -1e-9, decimal: "0.00000, 0.00000", minutes: "00° 00.000′ N, 000° 00.000′ E" },
  ])("$lat, $lon", ({ lat, lon, decimal, minutes }) => {
    expect(decimalDegreesText({ lat, lon })).toBe(decimal);
    expect(degreesMinutesText({ lat, lon })).toBe(minutes);
  });

  test("minutes that round up to 60 carry into the degrees", () => {
    expect(degreesMinutesText({ lat: 45.999999, lon: -179.9999999 })).toBe("46° 00.000′ N, 180° 00.000′ W");
  });

  test("a longitude off the Earth is refused", () => {
    expect(() => decimalDegreesText({ lat: 0, lon: 181 })).toThrow("lon must be -180 to 180, found 181");
  });
});
