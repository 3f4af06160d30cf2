import { describe, expect, test } from "vitest";
import {
  airlessAltitudeDeg,
  airlessSunAltitudeDeg,
  moonLight,
  solarNoonNear,
  sunDistanceAu,
  sunPosition,
} from "../../scripts/light/sunAndMoon.ts";
import { almanacSun } from "../published/almanac.ts";
import { seededPlaceDays } from "../published/seededPlaces.ts";

const golden = { lat: 39.742476, lon: -105.1786 };
const spaInstant = new Date("2003-10-17T19:30:30Z");

describe("where the sun stands", () => {
  // Reda and Andreas 2003 (rev. 2008), NREL/TP-560-34302, table A5.1: zenith 50.11162, azimuth 194.34024. 0.02 degrees:
  // their thinner air bends 0.004 less, our sun is good to 0.01.
  test("the worked example of the Solar Position Algorithm", () => {
    const sun = sunPosition(spaInstant, golden);
    expect(Math.abs(90 - sun.altitudeDeg - 50.11162)).toBeLessThan(0.02);
    expect(Math.abs(sun.azimuthDeg - 194.34024)).toBeLessThan(0.02);
  });

  // Same table: 0.9965422974 AU; Meeus, Astronomical Algorithms (1998), example 25.a: 0.99766 AU. 1e-4 is the formula's own.
  test("the sun's distance", () => {
    expect(Math.abs(sunDistanceAu(spaInstant) - 0.9965422974)).toBeLessThan(1e-4);
    expect(Math.abs(sunDistanceAu(new Date("1992-10-13T00:00:00Z")) - 0.99766)).toBeLessThan(1e-4);
  });

  // Computed with astronomy-engine, airless, 0.02 degrees.
  test.each([
    { at: "2026-11-21T13:00:00Z", lat: 36.19833, lon: -84.23083, altitude: 6.329, azimuth: 120.483 },
    { at: "2026-11-21T15:00:00Z", lat: 36.19833, lon: -84.23083, altitude: 24.44, azimuth: 142.959 },
    { at: "2026-11-21T17:22:50Z", lat: 36.19833, lon: -84.23083, altitude: 33.776, azimuth: 179.998 },
    { at: "2026-11-21T20:00:00Z", lat: 36.19833, lon: -84.23083, altitude: 22.6, azimuth: 220.111 },
    { at: "2026-11-21T21:30:00Z", lat: 36.19833, lon: -84.23083, altitude: 8.965, azimuth: 236.92 },
    { at: "2026-04-04T20:00:00Z", lat: -45.0312, lon: 168.6626, altitude: 8.25, azimuth: 72.968 },
    { at: "2026-04-05T00:48:08Z", lat: -45.0312, lon: 168.6626, altitude: 38.961, azimuth: 0.004 },
    { at: "2026-04-05T04:00:00Z", lat: -45.0312, lon: 168.6626, altitude: 23.316, azimuth: 306.449 },
  ])("at $at over $lat, $lon", ({ at, lat, lon, altitude, azimuth }) => {
    const position = { lat, lon };
    expect(Math.abs(airlessSunAltitudeDeg(new Date(at), position) - altitude)).toBeLessThan(0.02);
    const turn = Math.abs(sunPosition(new Date(at), position).azimuthDeg - azimuth);
    expect(Math.min(turn, 360 - turn)).toBeLessThan(0.02);
  });

  test("altitude is within 0.02 degrees of an independent almanac at 500 places, day and night", () => {
    const errors = seededPlaceDays().map(({ position, localDate }, i) => {
      const at = new Date(Date.parse(`${localDate}T00:00:00Z`) + i * 172_800); // all hours of the day in turn
      return Math.abs(airlessSunAltitudeDeg(at, position) - almanacSun(at, position).airlessDeg);
    });
    expect(errors).toHaveLength(500);
    expect(Math.max(...errors)).toBeLessThan(0.02);
  });

  // Meeus, Astronomical Algorithms (1998), example 16.a's companion: true altitude 33.246' ... refraction 24.618'.
  test("refraction is undone as Saemundsson gives it", () => {
    const apparentDeg = (33.246 + 24.618) / 60;
    expect(Math.abs(airlessAltitudeDeg(apparentDeg) * 60 - 33.246)).toBeLessThan(0.05); // 3 seconds of arc
    expect(airlessAltitudeDeg(90)).toBeCloseTo(90, 3);
    expect(airlessAltitudeDeg(-6)).toBeLessThan(-6.4);
  });

  test("undoing refraction keeps the order of altitudes, through the horizon", () => {
    const airless = Array.from({ length: 2001 }, (_, i) => airlessAltitudeDeg(-2 + i * 0.01));
    for (let i = 1; i < airless.length; i++) expect(airless[i]!).toBeGreaterThan(airless[i - 1]!);
  });

  // Equation of time at 12:00 UTC, computed with astronomy-engine, 0.05 min; the sun's noon at longitude 0 is 12:00 less it.
  test.each([
    { day: "2026-02-11", minutes: -14.175 },
    { day: "2026-05-14", minutes: 3.674 },
    { day: "2026-07-26", minutes: -6.564 },
    { day: "2026-11-03", minutes: 16.448 },
  ])("the equation of time on $day is $minutes min", ({ day, minutes }) => {
    const noon = new Date(`${day}T12:00:00Z`);
    const found = (noon.getTime() - solarNoonNear(noon, { lat: 51.5, lon: 0 }).getTime()) / 60_000;
    expect(Math.abs(found - minutes)).toBeLessThan(0.05);
  });

  test("an instant or place that is none is refused", () => {
    expect(() => sunPosition(new Date(Number.NaN), golden)).toThrow(RangeError);
    expect(() => sunPosition(spaInstant, { lat: 999, lon: 0 })).toThrow("found 999");
  });
});

describe("the moon's light", () => {
  // Meeus, Astronomical Algorithms (1998), example 48.a: 0.6786 on 12 April 1992, 0h TD, which is 59 s before 0h UT.
  test("the worked example", () => {
    expect(Math.abs(moonLight(new Date("1992-04-11T23:59:01Z")).illuminated - 0.6786)).toBeLessThan(0.0005);
  });

  // Phases of 2026, computed with astronomy-engine, UTC to the minute; 0.005 of the cycle is 3.5 h: phase counts by the
  // angle at the moon, the almanac by longitude, and the moon stands up to 5 degrees off the sun's path.
  test.each([
    { at: "2026-09-11T03:27Z", cycle: 0 },
    { at: "2026-09-18T20:44Z", cycle: 0.25 },
    { at: "2026-09-26T16:50Z", cycle: 0.5 },
    { at: "2026-10-03T13:26Z", cycle: 0.75 },
    { at: "2026-10-10T15:51Z", cycle: 0 },
    { at: "2026-11-17T11:48Z", cycle: 0.25 },
    { at: "2026-11-24T14:54Z", cycle: 0.5 },
    { at: "2026-12-01T06:09Z", cycle: 0.75 },
  ])("$at is $cycle of the cycle", ({ at, cycle }) => {
    const found = moonLight(new Date(at)).cycle;
    const off = Math.abs(found - cycle);
    expect(Math.min(off, 1 - off)).toBeLessThan(0.02);
    expect(found).toBeLessThan(1);
  });
});
