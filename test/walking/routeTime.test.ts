import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { destination } from "../../scripts/geo/geodesic.ts";
import type { Position } from "../../scripts/geo/position.ts";
import { routeSteps } from "../../scripts/walking/routeSteps.ts";
import { type RouteRequest, routeTime } from "../../scripts/walking/routeTime.ts";

const constants = {
  toblerSpeedKmh: 6,
  toblerSlopeFactor: 3.5,
  toblerBestSlope: -0.05,
  walkStepM: 10,
  offTrackFactor: 0.6,
  darkFactor: 1.25,
  loadFactor: 1.2,
  walkSlowFactor: 1.2,
};
const start = { lat: -45, lon: 168.6 };
const line = (lengthM: number, riseM: number | null) => [
  { ...start, elevationM: riseM === null ? null : 100 },
  { ...destination(start, 30, lengthM), elevationM: riseM === null ? null : 100 + riseM },
];

function request(other: Partial<RouteRequest> = {}): RouteRequest {
  return {
    points: line(3000, 0),
    elevationAt: null,
    offTrackShare: 0,
    isLoaded: false,
    isDark: false,
    ownerMinutes: null,
    ...other,
  };
}

describe("time of a route", () => {
  test("3 km on the level take 35.7 min by Tobler (3 / 5.0367 h), 36 by Naismith; the slow end is a fifth longer", () => {
    const found = routeTime(request(), constants);
    expect(found.minutes).toEqual([35, 43]);
    expect(found.naismithLangmuirMin).toBeCloseTo(36, 4);
    expect(found).toMatchObject({ climbM: 0, fallM: 0, minutesSource: "computed", why: {} });
    expect(found.lengthM).toBeCloseTo(3000, 4);
  });

  test("1 km with 300 m of climb takes 34.0 min by Tobler (1 / 1.7625 h) and is longer on the slope", () => {
    const found = routeTime(request({ points: line(1000, 300) }), constants);
    expect(found.minutes).toEqual([34, 41]);
    expect(found.lengthM).toBeCloseTo(Math.hypot(1000, 300), 4);
    expect(found.climbM).toBeCloseTo(300, 9);
    expect(found.naismithLangmuirMin).toBeCloseTo(12 + 30, 4);
  });

  test("the way back falls what the way in climbs, and Langmuir adds on the steep descent", () => {
    const found = routeTime(request({ points: line(1000, 300).reverse() }), constants);
    expect(found).toMatchObject({ climbM: 0 });
    expect(found.fallM).toBeCloseTo(300, 9);
    expect(found.naismithLangmuirMin).toBeCloseTo(22, 4); // LA-1: 300 m of descent over 1 km
  });

  test("off track, load and dark make the same way longer: 35.73 / 0.6 x 1.2 x 1.25 = 89.3 min", () => {
    const found = routeTime(request({ offTrackShare: 1, isLoaded: true, isDark: true }), constants);
    expect(found.minutes).toEqual([89, 108]);
  });

  test("half off track takes the mean of both", () => {
    const found = routeTime(request({ offTrackShare: 0.5 }), constants); // 35.738 x (0.5 + 0.5 / 0.6) = 47.65
    expect(found.minutes).toEqual([47, 58]);
  });

  test("the owner's minutes win and are marked, length and climb stay computed", () => {
    const found = routeTime(request({ ownerMinutes: [50, 70], isDark: true }), constants);
    expect(found).toMatchObject({ minutes: [50, 70], minutesSource: "owner", climbM: 0 });
  });

  test("a grid beats the heights of the points", () => {
    const found = routeTime(request({ points: line(1000, 300), elevationAt: () => 640 }), constants);
    expect(found).toMatchObject({ climbM: 0, fallM: 0 });
  });

  test("a hill in between is climbed and come down, as the grid has it", () => {
    const [from, to] = line(1000, 0);
    const top = destination(start, 30, 500);
    const heightM = ({ lat }: Position) =>
      100 + 80 * (1 - Math.abs(lat - top.lat) / Math.abs(to!.lat - top.lat));
    const found = routeTime(request({ points: [from!, to!], elevationAt: heightM }), constants);
    expect(found.climbM).toBeCloseTo(80, 1);
    expect(found.fallM).toBeCloseTo(80, 1);
  });

  test("without heights the length stays, time and climb are not known, with the reason", () => {
    const found = routeTime(request({ points: line(1000, null) }), constants);
    expect(found).toMatchObject({
      climbM: null,
      fallM: null,
      minutes: null,
      minutesSource: null,
      naismithLangmuirMin: null,
    });
    expect(found.lengthM).toBeCloseTo(1000, 4);
    expect(found.why.minutes).toBe("no terrain file and no heights on the route");
    expect(Object.keys(found.why).sort()).toEqual([
      "climbM",
      "fallM",
      "minutes",
      "minutesSource",
      "naismithLangmuirMin",
    ]);
  });

  test("without heights the owner's minutes still stand", () => {
    const found = routeTime(request({ points: line(1000, null), ownerMinutes: [20, 30] }), constants);
    expect(found).toMatchObject({ minutes: [20, 30], minutesSource: "owner", climbM: null });
    expect(found.why.minutes).toBeUndefined();
  });

  test("one step of unknown ground makes the climb unknown, never 0", () => {
    let asked = 0;
    const found = routeTime(request({ elevationAt: () => (asked++ === 40 ? null : 100) }), constants);
    expect(found).toMatchObject({ climbM: null, minutes: null });
    expect(found.why.climbM).toBe("the route leaves the known ground");
  });

  test("a share off track outside 0 to 1 and a route of one point are refused", () => {
    expect(() => routeTime(request({ offTrackShare: 1.1 }), constants)).toThrow(RangeError);
    expect(() => routeTime(request({ points: [start] }), constants)).toThrow(RangeError);
  });
});

describe("steps of a route", () => {
  test("run every 10 m over the map, corners included, with the rest at the end", () => {
    const corner = destination(start, 90, 25);
    const steps = routeSteps([start, corner, destination(corner, 0, 12)], null, 10);
    expect(steps.map(({ alongM }) => Math.round(alongM * 1000) / 1000)).toEqual([0, 10, 20, 30, 37]);
  });

  test("a track with a point every metre is walked in steps of 10 m as well", () => {
    const track = Array.from({ length: 101 }, (_, metre) => destination(start, 0, metre));
    expect(routeSteps(track, null, 10)).toHaveLength(11);
  });

  test("a route over the date line stays there", () => {
    const steps = routeSteps(
      [
        { lat: 0, lon: 179.9999 },
        { lat: 0, lon: -179.9999 },
      ],
      null,
      5,
    );
    expect(steps.length).toBe(6); // 22.3 m
    for (const { lon } of steps) expect(Math.abs(lon)).toBeGreaterThan(179.9998);
  });

  test("a route that goes nowhere has one place and no length", () => {
    expect(routeTime(request({ points: [line(0, 0)[0]!, line(0, 0)[0]!] }), constants)).toMatchObject({
      lengthM: 0,
      minutes: [0, 0],
    });
  });
});

test("more off track, load or dark never makes a way shorter (seeded)", () => {
  const ways = fc.record({
    lengthM: fc.integer({ min: 50, max: 3000 }),
    riseM: fc.integer({ min: -400, max: 400 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  fc.assert(
    fc.property(ways, ({ lengthM, riseM, share }) => {
      const points = line(lengthM, riseM);
      const plain = routeTime(request({ points }), constants).minutes!;
      const hard = routeTime(
        request({ points, offTrackShare: share, isLoaded: true, isDark: true }),
        constants,
      ).minutes!;
      expect(hard[0]).toBeGreaterThanOrEqual(plain[0]);
      expect(plain[1]).toBeGreaterThanOrEqual(plain[0]);
    }),
    { seed: 1993, numRuns: 100 },
  );
});
