import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isInSector, normalizeDeg } from "../../scripts/geo/bearings.ts";
import { destination } from "../../scripts/geo/geodesic.ts";
import { closedHalfDeg } from "../../scripts/shooting/bearingCover.ts";
import { closedRuns } from "../../scripts/shooting/bearingRuns.ts";
import type { LineOfFire } from "../../scripts/shooting/linesOfFire.ts";
import { noShootBearings, type ProtectedThing } from "../../scripts/shooting/noShootBearings.ts";
import {
  insideDistanceM,
  isInside,
  linesDistanceM,
  type PlanePoint,
  seatPlane,
} from "../../scripts/shooting/seatPlane.ts";
import { rules } from "./rules.ts";

const at = (bearingDeg: number, distanceM: number): PlanePoint => ({
  eastM: Math.sin((bearingDeg * Math.PI) / 180) * distanceM,
  northM: Math.cos((bearingDeg * Math.PI) / 180) * distanceM,
});
const house = (bearingDeg: number, distanceM: number): ProtectedThing => ({
  id: "house",
  reason: "building",
  lines: [[at(bearingDeg, distanceM)]],
  isArea: false,
  farM: null,
});
const road = (...points: PlanePoint[]): ProtectedThing => ({
  id: "valley-road",
  reason: "road",
  lines: [points],
  isArea: false,
  farM: 400,
});
const line = (bearingDeg: number, ground: "earth" | "far", isSeenOnGround = true): LineOfFire => {
  const worst = { rangeM: 50, ground, beyondM: 8, downDeg: 6, meetsAtDeg: 6, isHidden: false, why: null };
  return { lane: "A", bearingDeg, worst, ranges: [worst], isSeenOnGround };
};
const lane = (from: number, to: number, ground: "earth" | "far", seen = true): LineOfFire[] =>
  Array.from({ length: to - from + 1 }, (_, i) => line(normalizeDeg(from + i), ground, seen));
const spans = (things: ProtectedThing[], lines: LineOfFire[] | null = null, dangerM = 4800) =>
  noShootBearings(things, lines, dangerM, rules).spans.map(({ fromDeg, toDeg, reason }) => [
    fromDeg,
    toDeg,
    reason,
  ]);

describe("half width of a closed bearing", () => {
  // the greater of 15 degrees and atan(50 m / distance); they are equal at 50 / tan 15 = 186.6 m
  test.each([
    [50, 45],
    [100, 26.565],
    [186, 15.046],
    [187, 15],
    [4800, 15],
  ])("at %d m is %d degrees", (distanceM, halfDeg) => {
    expect(closedHalfDeg(distanceM, rules)).toBeCloseTo(halfDeg, 3);
  });

  test("at the seat itself closes all", () => {
    expect(closedHalfDeg(0, rules)).toBe(180);
  });
});

describe("one protected place", () => {
  test("closes its span, rounded outward to whole degrees", () => {
    expect(spans([house(100, 1000)])).toEqual([[85, 115, "building"]]);
    expect(spans([house(100, 100)])).toEqual([[73, 127, "building"]]);
    expect(spans([house(100.4, 1000)])).toEqual([[85, 116, "building"]]);
  });

  test("closes over north", () => {
    expect(spans([house(5, 1000)])).toEqual([[350, 20, "building"]]);
  });

  test("counts up to the danger distance and no farther", () => {
    expect(spans([house(100, 299.9)], null, 300)).toHaveLength(1);
    expect(spans([house(100, 300.1)], null, 300)).toEqual([]);
  });

  test("at the seat closes the whole circle, as two halves", () => {
    expect(spans([house(0, 0)])).toEqual([
      [0, 180, "building"],
      [180, 0, "building"],
    ]);
  });

  test("closes all from inside its walls", () => {
    const walls = [at(45, 80), at(135, 80), at(225, 80), at(315, 80), at(45, 80)];
    const found = noShootBearings([{ ...house(0, 0), lines: [walls], isArea: true }], null, 300, rules);
    expect(found.spans.map(({ distanceM }) => distanceM)).toEqual([0, 0]);
  });
});

describe("a line across the view", () => {
  test("closes from end to end and both half widths", () => {
    // 1000 m off at its foot: no part nearer than 187 m
    expect(spans([road(at(60, 1155), at(90, 1000), at(120, 1155))])).toEqual([[45, 135, "road"]]);
  });

  test("tells its nearest distance", () => {
    const [span] = noShootBearings([road(at(60, 2000), at(120, 2000))], null, 4800, rules).spans;
    expect(span!.distanceM!).toBeCloseTo(2000 * Math.cos(Math.PI / 6), 6); // at its foot
    expect(span!.thingId).toBe("valley-road");
  });
});

describe("a road over 400 m off", () => {
  const far = road(at(60, 1155), at(120, 1155));

  test("leaves the degrees open where earth stands behind and the lane was seen, and says so", () => {
    const found = noShootBearings([far], lane(80, 100, "earth"), 4800, rules);
    expect(found.spans.map(({ fromDeg, toDeg }) => [fromDeg, toDeg])).toEqual([
      [45, 79],
      [101, 135],
    ]);
    expect(found.leftToBackstop).toMatchObject([{ fromDeg: 80, toDeg: 100, reason: "road" }]);
  });

  test.each([
    ["is not seen on the ground", lane(80, 100, "earth", false)],
    ["has ground too far behind", lane(80, 100, "far")],
    ["holds two lanes of which one has no backstop", [...lane(80, 100, "earth"), ...lane(80, 100, "far")]],
    ["is not known", null],
  ])("closes where the lane %s", (_words, lines) => {
    const found = noShootBearings([far], lines, 4800, rules);
    expect(found.spans.filter(({ reason }) => reason === "road")).toMatchObject([
      { fromDeg: 45, toDeg: 135 },
    ]);
    expect(found.leftToBackstop).toEqual([]);
  });

  test("closes always at 400 m and nearer", () => {
    expect(spans([road(at(90, 400))], lane(80, 100, "earth"))).toEqual([[75, 105, "road"]]);
    expect(spans([road(at(90, 401))], lane(60, 120, "earth"))).toEqual([]);
  });

  test("does not open what a house closes", () => {
    const found = noShootBearings([far, house(90, 900)], lane(80, 100, "earth"), 4800, rules);
    expect(found.merged).toEqual([{ fromDeg: 45, toDeg: 135 }]);
    expect(found.leftToBackstop).toEqual([]);
  });
});

describe("lanes without a backstop", () => {
  test("are closed half a degree beyond their degrees, without distance or feature", () => {
    const { spans: found } = noShootBearings([], lane(85, 90, "far"), 4800, rules);
    expect(found).toEqual([
      { fromDeg: 84.5, toDeg: 90.5, distanceM: null, thingId: null, reason: "no backstop" },
    ]);
  });

  test("leave no gap that nobody can keep to", () => {
    expect(spans([], [...lane(85, 90, "far"), ...lane(91, 92, "earth"), ...lane(93, 95, "far")])).toEqual([
      [84.5, 95.5, "no backstop"],
    ]);
    expect(
      spans([], [...lane(85, 90, "far"), ...lane(91, 93, "earth"), ...lane(94, 95, "far")]),
    ).toHaveLength(2);
  });
});

describe("runs of closed degrees", () => {
  const runs = (isOpen: (deg: number) => boolean) =>
    closedRuns((deg) => !isOpen(deg)).map(({ from, to }) => [from, to]);

  test.each([
    { given: "no closed degree", isOpen: () => true, expected: [] },
    { given: "four closed over north", isOpen: (deg: number) => deg > 1 && deg < 358, expected: [[358, 1]] },
    {
      given: "two open",
      isOpen: (deg: number) => deg === 7 || deg === 8,
      expected: [
        [0, 180],
        [180, 0],
      ],
    },
    { given: "three open", isOpen: (deg: number) => deg >= 7 && deg <= 9, expected: [[10, 6]] },
    {
      given: "two open over north between closed ones",
      isOpen: (deg: number) => deg === 359 || deg === 0 || (deg > 10 && deg < 300),
      expected: [[300, 10]],
    },
  ])("with $given", ({ isOpen, expected }) => {
    expect(runs(isOpen)).toEqual(expected);
  });
});

test("whatever lies within the danger distance is closed on its own bearing, and 50 m beside it", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 359.99, noNaN: true }),
      fc.double({ min: 20, max: 4799, noNaN: true }),
      fc.boolean(),
      (bearingDeg, distanceM, seen) => {
        const found = noShootBearings(
          [house(bearingDeg, distanceM)],
          lane(0, 359, "earth", seen),
          4800,
          rules,
        );
        const clearDeg = (Math.atan(50 / distanceM) * 180) / Math.PI - 1e-5; // ends are rounded outward but for 1e-6
        for (const off of [0, clearDeg, -clearDeg, 14.99999, -14.99999]) {
          const deg = normalizeDeg(bearingDeg + off);
          expect(found.spans.some(({ fromDeg, toDeg }) => isInSector(deg, fromDeg, toDeg))).toBe(true);
        }
      },
    ),
    { seed: 11, numRuns: 300 },
  );
});

describe("places around a seat", () => {
  const seat = { lat: -42.7, lon: 172.12 };
  const square = [at(45, 100), at(135, 100), at(225, 100), at(315, 100), at(45, 100)];

  test("keep distance and bearing of the ellipsoid", () => {
    const { eastM, northM } = seatPlane(seat)(destination(seat, 233, 4800));
    expect(Math.hypot(eastM, northM)).toBeCloseTo(4800, 3);
    expect(normalizeDeg((Math.atan2(eastM, northM) * 180) / Math.PI)).toBeCloseTo(233, 6);
  });

  test("are inside or outside a ring by their distance to it", () => {
    const halfM = 100 / Math.SQRT2;
    expect(isInside([square])).toBe(true);
    expect(insideDistanceM([square])).toBeCloseTo(halfM, 9);
    expect(insideDistanceM([square], at(90, halfM + 10))).toBeCloseTo(-10, 9);
    expect(insideDistanceM([square], at(0, halfM - 1))).toBeCloseTo(1, 9);
    expect(insideDistanceM([])).toBe(Number.NEGATIVE_INFINITY);
  });

  test("are as far from a leg as from its nearest point", () => {
    expect(linesDistanceM([[at(90, 100), { eastM: 100, northM: 50 }]])).toBe(100);
    expect(linesDistanceM([[at(90, 30)]])).toBeCloseTo(30, 9);
    expect(linesDistanceM([])).toBe(Number.POSITIVE_INFINITY);
  });
});
