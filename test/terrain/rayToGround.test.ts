import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { elevationAt, placeOnGrid } from "../../scripts/terrain/elevationGrid.ts";
import { type GroundRay, rayToGround, rayToGroundWithMargin } from "../../scripts/terrain/rayToGround.ts";
import { hills, plane, positionAt, syntheticGrid } from "./syntheticGrid.ts";

const ray = (given: Partial<GroundRay>): GroundRay => ({
  from: positionAt(0, 0),
  heightM: 6,
  bearingDeg: 90,
  aim: { kind: "down", downDeg: 5 },
  startsAtM: 0,
  reachM: 500,
  groundOffsetM: 0,
  ...given,
});

describe("where a line meets the ground", () => {
  test("on the flat, 6 m at 5 degrees down meet it at 68.58 m and at 5 degrees", () => {
    const { meeting } = rayToGround(
      syntheticGrid(101, 10, () => 500),
      ray({}),
    );
    // 6 / tan 5
    expect(meeting?.distanceM).toBeCloseTo(68.5803, 4);
    expect(meeting?.elevationM).toBeCloseTo(500, 9);
    expect(meeting?.meetsAtDeg).toBeCloseTo(5, 9);
    expect(meeting?.groundRiseDeg).toBeCloseTo(0, 9);
  });

  test("a level line meets a hill of 20 degrees at height / tan 20, square to its slope", () => {
    const grid = syntheticGrid(101, 10, (east) => 500 + Math.max(0, east - 100) * Math.tan(Math.PI / 9));
    const { meeting } = rayToGround(grid, ray({ heightM: 10, aim: { kind: "down", downDeg: 0 } }));
    expect(meeting?.distanceM).toBeCloseTo(100 + 10 / Math.tan(Math.PI / 9), 3);
    expect(meeting?.groundRiseDeg).toBeCloseTo(20, 3);
    expect(meeting?.meetsAtDeg).toBeCloseTo(20, 3);
  });

  test("through 0.8 m over the ground at 50 m, a muzzle at 6 m goes into flat ground at 57.69 m", () => {
    const { meeting } = rayToGround(
      syntheticGrid(101, 10, () => 500),
      ray({ aim: { kind: "through", distanceM: 50, heightM: 0.8 }, startsAtM: 50 }),
    );
    // 50 x 6 / 5.2
    expect(meeting?.distanceM).toBeCloseTo(57.6923, 4);
  });

  test("over a crest the line finds no ground, and the reason says how far was looked", () => {
    const grid = syntheticGrid(101, 10, (east) => 500 - Math.max(0, east - 50));
    const { meeting, why } = rayToGround(
      grid,
      ray({ aim: { kind: "through", distanceM: 50, heightM: 0.8 }, startsAtM: 50, reachM: 300 }),
    );
    expect(meeting).toBeNull();
    expect(why).toBe("no ground met within 300 m");
  });

  test("ground before the start of the search is not met, such as a hump before the target", () => {
    const grid = syntheticGrid(101, 10, (east) => (Math.abs(east - 30) < 1 ? 520 : 500));
    expect(rayToGround(grid, ray({})).meeting?.distanceM).toBeLessThan(30);
    expect(rayToGround(grid, ray({ startsAtM: 50 })).meeting?.distanceM).toBeCloseTo(68.58, 2);
  });

  test("the position lies on the true bearing at the distance", () => {
    const grid = syntheticGrid(101, 10, hills);
    const from = positionAt(-120, 80);
    const { meeting } = rayToGround(grid, ray({ from, bearingDeg: 233, aim: { kind: "down", downDeg: 20 } }));
    const line = distanceAndBearing(from, meeting!.position);
    // Grid lengths differ from the ground's by at most 0.1 %.
    expect(Math.abs(line.distanceM / meeting!.distanceM - 1)).toBeLessThan(0.001);
    expect(line.bearingDeg).toBeCloseTo(233, 2);
  });
});

describe("against a fine march", () => {
  test("from any place, in any direction, the first ground is where steps of 5 cm find it", () => {
    const grid = syntheticGrid(
      81,
      10,
      (east, north) => hills(east, north) + 3 * Math.sin(east / 9 + north / 7),
    );
    let met = 0;
    fc.assert(
      fc.property(
        fc.double({ min: -150, max: 150, noNaN: true }),
        fc.double({ min: -150, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.double({ min: -4, max: 12, noNaN: true }),
        fc.double({ min: 1, max: 8, noNaN: true }),
        (east, north, bearingDeg, downDeg, heightM) => {
          const from = positionAt(east, north);
          const place = placeOnGrid(grid, from);
          const { meeting } = rayToGround(
            grid,
            ray({ from, bearingDeg, heightM, aim: { kind: "down", downDeg }, reachM: 200 }),
          );
          const azimuth = ((bearingDeg - place.convergenceDeg) * Math.PI) / 180;
          const clearance = (d: number): number =>
            elevationAt(grid, place.eastingM, place.northingM)! +
            heightM -
            d * Math.tan((downDeg * Math.PI) / 180) -
            elevationAt(
              grid,
              place.eastingM + d * Math.sin(azimuth),
              place.northingM + d * Math.cos(azimuth),
            )!;
          let marched: number | null = null;
          for (let d = 0; d <= 200 && marched === null; d += 0.05) if (clearance(d) <= 0) marched = d;
          if (meeting === null) {
            // A march may only miss what is met within its last step.
            expect(marched).toBeNull();
            return;
          }
          met++;
          expect(Math.abs(clearance(meeting.distanceM))).toBeLessThan(1e-6);
          // It may come before what the march finds, never after.
          if (marched !== null) expect(meeting.distanceM).toBeLessThanOrEqual(marched + 1e-6);
          for (let d = 0; d < meeting.distanceM - 1e-3; d += 0.25)
            expect(clearance(d)).toBeGreaterThan(-1e-9);
        },
      ),
      { seed: 13, numRuns: 120 },
    );
    expect(met).toBeGreaterThan(40);
  });
});

describe("when the grid is off", () => {
  test("a bank that is only just there is gone when the ground is lower by the error", () => {
    // Level line 4 m over the flat; a bank 6 m high at 150 m.
    const grid = syntheticGrid(101, 10, (east) => (east >= 150 ? 506 : 500));
    const level = { ...ray({ heightM: 4, aim: { kind: "down", downDeg: 0 } as const }) };
    const two = rayToGroundWithMargin(grid, level, 2);
    expect(two.asMapped.meeting?.distanceM).toBeLessThan(150);
    expect(two.ifLower.meeting?.distanceM).toBeCloseTo(150, 6);
    const five = rayToGroundWithMargin(grid, level, 5);
    expect(five.asMapped.meeting).not.toBeNull();
    expect(five.ifLower.meeting).toBeNull();
  });

  test("lower ground is never met nearer", () => {
    const grid = syntheticGrid(101, 10, hills);
    let compared = 0;
    for (let bearingDeg = 0; bearingDeg < 360; bearingDeg += 7) {
      const { asMapped, ifLower } = rayToGroundWithMargin(grid, ray({ bearingDeg }), 2);
      if (asMapped.meeting === null || ifLower.meeting === null) continue;
      expect(ifLower.meeting.distanceM).toBeGreaterThan(asMapped.meeting.distanceM);
      compared++;
    }
    expect(compared).toBeGreaterThan(20);
  });
});

describe("what is not known", () => {
  test("a void or the edge before any ground gives no meeting, and says from where", () => {
    const grid = syntheticGrid(101, 10, () => 500);
    for (let row = 0; row < 101; row++) grid.heightsM[row * 101 + 54] = Number.NaN;
    const result = rayToGround(grid, ray({}));
    expect(result.meeting).toBeNull();
    expect(result.why).toBe("the ground is not known from 30 m on");
    const off = rayToGround(
      syntheticGrid(101, 10, () => 500),
      ray({ aim: { kind: "down", downDeg: 0 }, reachM: 900 }),
    );
    expect(off.why).toBe("the ground is not known from 500 m on");
  });

  test("a start or an aim on unknown ground gives none either", () => {
    const grid = syntheticGrid(101, 10, () => 500);
    expect(rayToGround(grid, ray({ from: positionAt(900, 0) })).meeting).toBeNull();
    const aim = { kind: "through", distanceM: 700, heightM: 1 } as const;
    expect(rayToGround(grid, ray({ aim, reachM: 900 })).why).toBe(
      "the aim lies outside the elevation grid or on a void",
    );
  });

  test.each([
    { heightM: -1 },
    { reachM: 0 },
    { startsAtM: 600 },
    { aim: { kind: "down", downDeg: 90 } as const },
    { aim: { kind: "through", distanceM: 0, heightM: 1 } as const },
    { groundOffsetM: Number.NaN },
    { bearingDeg: Number.NaN },
  ])("%o is refused", (given) => {
    expect(() => rayToGround(syntheticGrid(21, 10, plane(5, 0)), ray(given))).toThrow(RangeError);
  });
});
