import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { approachOf, sectorOf } from "../../scripts/briefing/approachSector.ts";
import type { MapShape } from "../../scripts/briefing/mapShapes.ts";
import { isInSector, sectorWidthDeg } from "../../scripts/geo/bearings.ts";
import { destination } from "../../scripts/geo/geodesic.ts";
import type { Position } from "../../scripts/geo/position.ts";

const SITE: Position = { lat: 36.3, lon: -84.3 };
const from = (bearingDeg: number, distanceM: number): Position => destination(SITE, bearingDeg, distanceM);
const line = (...lines: Position[][]): MapShape => ({ id: "trail", kind: "deer-trail", name: null, lines });

describe("the sector in which a drawn approach lies", () => {
  // Half a degree: the line is looked at every 10 m, which is 2.9 degrees at 200 m only across the line of sight.
  test.each([
    { name: "a trail that runs straight out", shape: line([from(70, 50), from(70, 180)]), sector: [70, 70] },
    { name: "a trail across the view", shape: line([from(60, 100), from(110, 100)]), sector: [60, 110] },
    { name: "a trail across north", shape: line([from(340, 100), from(25, 100)]), sector: [340, 25] },
    { name: "a trail drawn the other way", shape: line([from(25, 100), from(340, 100)]), sector: [340, 25] },
    { name: "a single place", shape: line([from(222, 90)]), sector: [222, 222] },
    { name: "two parts", shape: line([from(10, 80)], [from(50, 80)]), sector: [10, 50] },
    {
      name: "a ring with the site outside",
      shape: line([from(80, 100), from(100, 100), from(90, 150), from(80, 100)]),
      sector: [80, 100],
    },
  ])("$name", ({ shape, sector }) => {
    const found = sectorOf(shape, SITE, [20, 200])!;
    expect(found[0]).toBeCloseTo(sector[0]!, 0);
    expect(found[1]).toBeCloseTo(sector[1]!, 0);
  });

  test("only the part between the stated distances counts", () => {
    const bent = line([from(90, 30), from(90, 190), from(150, 400)]);
    const [fromDeg, toDeg] = sectorOf(bent, SITE, [20, 195])!;
    expect(fromDeg).toBeCloseTo(90, 0);
    expect(toDeg).toBeLessThan(102.2); // the bent part leaves the 195 m there
    expect(sectorOf(bent, SITE, [0, 25])).toBeNull();
    expect(sectorOf(bent, SITE, [500, 900])).toBeNull();
  });

  // Seen from a place, the place itself has no bearing: north would be made up.
  test("a trail that passes under the tree lies to both its sides, not to the north", () => {
    const through = line([from(100, 150), SITE, from(140, 150)]);
    const found = sectorOf(through, SITE, [0, 200])!;
    expect(found[0]).toBeCloseTo(100, 0);
    expect(found[1]).toBeCloseTo(140, 0);
  });

  test("the sector holds every corner in reach and is no wider than the whole circle less the widest gap", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 30, max: 190 })), {
          minLength: 1,
          maxLength: 6,
        }),
        (corners) => {
          const shape = line(...corners.map(([bearing, distance]) => [from(bearing, distance)]));
          const [fromDeg, toDeg] = sectorOf(shape, SITE, [20, 200])!;
          const bearings = [...new Set(corners.map(([bearing]) => bearing))].sort((a, b) => a - b);
          for (const bearing of bearings) {
            expect(isInSector(bearing, fromDeg - 0.01, toDeg + 0.01)).toBe(true);
          }
          const gaps = bearings.map((b, i) => (bearings[(i + 1) % bearings.length]! - b + 360) % 360 || 360);
          expect(sectorWidthDeg(fromDeg, toDeg)).toBeCloseTo(360 - Math.max(...gaps), 0);
        },
      ),
      { seed: 20261014, numRuns: 200 },
    );
  });
});

describe("an approach as the air is judged by", () => {
  const typed = { id: "way", bearingsDeg: [10, 50] as [number, number], use: 0.5 };
  const distanceM: [number, number] = [20, 200];

  test("what is drawn wins over bearings typed by hand", () => {
    const drawn = approachOf(
      { ...typed, distanceM, along: "trail" },
      SITE,
      line([from(90, 50), from(90, 100)]),
    )!;
    expect(drawn.bearingsDeg[0]).toBeCloseTo(90, 3);
    expect([drawn.id, drawn.use, drawn.distanceM]).toEqual(["way", 0.5, distanceM]);
  });

  test("bearings stand where nothing is drawn within the distance", () => {
    const far = line([from(90, 500), from(90, 900)]);
    expect(approachOf({ ...typed, distanceM, along: "trail" }, SITE, far)!.bearingsDeg).toEqual([10, 50]);
    expect(approachOf({ ...typed, distanceM }, SITE, null)).toEqual({ ...typed, distanceM });
  });

  test("an approach with neither is none", () => {
    expect(approachOf({ id: "way", use: 1, distanceM, along: "trail" }, SITE, null)).toBeNull();
  });

  test("it keeps its name", () => {
    expect(approachOf({ ...typed, name: "the bench", distanceM }, SITE, null)!.name).toBe("the bench");
  });
});
