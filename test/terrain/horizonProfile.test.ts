import { describe, expect, test } from "vitest";
import { fromUtm, gridConvergenceDeg } from "../../scripts/geo/utm.ts";
import { type ElevationGrid, elevationAt, placeOnGrid } from "../../scripts/terrain/elevationGrid.ts";
import {
  type HorizonProfile,
  horizonAngleDeg,
  horizonProfile,
} from "../../scripts/terrain/horizonProfile.ts";
import { jacksboroGrid, jacksboroPosition } from "./jacksboro.ts";
import { hills, plane, positionAt, syntheticGrid, ZONE } from "./syntheticGrid.ts";

const RULES = { horizonReachM: 15000, horizonNearM: 5000, refraction: 0.13, earthRadiusM: 6371000 };
const FLAT_EARTH = { ...RULES, earthRadiusM: 1e15 };

function profile(
  grid: ElevationGrid,
  eastM: number,
  northM: number,
  eyeM: number,
  rules = RULES,
): HorizonProfile {
  const { horizon, why } = horizonProfile(grid, positionAt(eastM, northM), eyeM, rules);
  if (horizon === null) throw new Error(why);
  return horizon;
}

describe("skyline against geometry", () => {
  // HZ-1: ground 200 m higher at 5 km with k = 0.13: atan((200 - 1.707) / 5000) = 2.271 degrees.
  test("HZ-1: a wall 200 m higher and 5 km away stands at 2.271 degrees", () => {
    const grid = syntheticGrid(421, 25, (east) => (east >= 5000 ? 700 : 500));
    expect(profile(grid, 0, 0, 0).angleDeg[90]).toBeCloseTo(2.271, 3);
  });

  // CU-2: drop at 10 km 6.8278 m with k = 0.13.
  test("CU-2: flat ground drops 6.828 m at 10 km", () => {
    const grid = syntheticGrid(421, 50, (east) => (east >= 10000 ? 600 : 500));
    const angleDeg = profile(grid, 0, 0, 0).angleDeg[90] ?? Number.NaN;
    expect(100 - Math.tan((angleDeg * Math.PI) / 180) * 10000).toBeCloseTo(6.828, 2);
  });

  test("on flat ground the skyline lies just under level, as low as the eye is high", () => {
    const { angleDeg } = profile(
      syntheticGrid(421, 25, () => 500),
      0,
      0,
      2,
    );
    for (const angle of angleDeg) {
      // Dip at the horizon of a 2 m eye: sqrt(2 x 2 m (1 - k) / R) = 0.0423 degrees.
      expect(angle).toBeLessThan(-0.042);
      expect(angle).toBeGreaterThan(-0.045);
    }
  });

  test("from the ground of a plane the skyline is the plane itself, all round", () => {
    for (const [slopeDeg, aspectDeg] of [
      [20, 90],
      [33, 225],
    ] as const) {
      const { angleDeg } = profile(syntheticGrid(201, 10, plane(slopeDeg, aspectDeg)), 0, 0, 0, FLAT_EARTH);
      for (let bearing = 0; bearing < 360; bearing++) {
        const uphill = Math.cos(((bearing - aspectDeg - 180) * Math.PI) / 180);
        const expected = (Math.atan(Math.tan((slopeDeg * Math.PI) / 180) * uphill) * 180) / Math.PI;
        // 32-bit heights: 0.03 mm at the first 5 m.
        expect(angleDeg[bearing]).toBeCloseTo(expected, 2);
      }
    }
  });

  test("a taller eye never sees a higher skyline", () => {
    const grid = syntheticGrid(201, 10, hills);
    const low = profile(grid, 30, -40, 2);
    const high = profile(grid, 30, -40, 8);
    low.angleDeg.forEach((angle, bearing) => {
      expect(high.angleDeg[bearing]).toBeLessThanOrEqual(angle);
    });
  });

  test("turning the ground by a right angle turns the skyline", () => {
    // Off the cell lines, where no ray ends on the edge itself.
    const before = profile(syntheticGrid(201, 10, hills), 3.7, -1.9, 2);
    const after = profile(
      syntheticGrid(201, 10, (east, north) => hills(-north, east)),
      -1.9,
      -3.7,
      2,
    );
    for (let bearing = 0; bearing < 360; bearing++) {
      expect(after.angleDeg[(bearing + 90) % 360]).toBeCloseTo(before.angleDeg[bearing]!, 4);
    }
  });

  test("mirroring the ground mirrors the skyline", () => {
    const before = profile(syntheticGrid(201, 10, hills), 3.7, -1.9, 2);
    const after = profile(
      syntheticGrid(201, 10, (east, north) => hills(-east, north)),
      -3.7,
      -1.9,
      2,
    );
    for (let bearing = 0; bearing < 360; bearing++) {
      expect(after.angleDeg[(360 - bearing) % 360]).toBeCloseTo(before.angleDeg[bearing]!, 4);
    }
  });

  test("bearings are true: a wall due grid east stands where true bearings say", () => {
    const easting = 700000;
    const grid = syntheticGrid(201, 10, (east, north) => (Math.hypot(east - 800, north) < 12 ? 700 : 500), {
      eastingM: easting,
      northingM: 5000000,
    });
    const position = fromUtm({ eastingM: easting, northingM: 5000000 }, ZONE);
    const { horizon } = horizonProfile(grid, position, 2, RULES);
    const highest = (horizon?.angleDeg ?? new Float64Array(360)).reduce(
      (best, angle, at, all) => (angle > all[best]! ? at : best),
      0,
    );
    // Grid convergence here is -1.8: the wall lies at 88.2 true.
    expect(highest).toBe(Math.round(90 + gridConvergenceDeg(position, ZONE)));
    expect(highest).toBe(88);
  });
});

/** Every bearing, every half cell, straight from the definition: no shared code but the height of the ground. */
function bruteForce(grid: ElevationGrid, place: ReturnType<typeof placeOnGrid>, eyeM: number): number[] {
  const ground = elevationAt(grid, place.eastingM, place.northingM) ?? Number.NaN;
  return Array.from({ length: 360 }, (_, bearing) => {
    const angles: number[] = [];
    for (let distanceM = grid.cellSizeM / 2; distanceM <= 15000; distanceM += grid.cellSizeM / 2) {
      const azimuth = ((bearing - place.convergenceDeg) / 180) * Math.PI;
      const east = place.eastingM + distanceM * Math.sin(azimuth);
      const north = place.northingM + distanceM * Math.cos(azimuth);
      const heightM = elevationAt(grid, east, north);
      if (heightM === null) break;
      const drop = ((1 - 0.13) * distanceM ** 2) / (2 * 6371000);
      angles.push((Math.atan2(heightM - drop - ground - eyeM, distanceM) * 180) / Math.PI);
    }
    return Math.max(...angles);
  });
}

describe("skyline against brute force", () => {
  test.each([
    [0, 0, 2],
    [137.3, -211.9, 2],
    [-402.5, 355.1, 6.2],
    [12.25, 700.5, 0],
  ])("hills, %f m east %f m north, eye %f m", (eastM, northM, eyeM) => {
    const grid = syntheticGrid(201, 10, hills);
    const { angleDeg } = profile(grid, eastM, northM, eyeM);
    const expected = bruteForce(grid, placeOnGrid(grid, positionAt(eastM, northM)), eyeM);
    expected.forEach((angle, bearing) => {
      expect(Math.abs(angleDeg[bearing]! - angle), `bearing ${bearing}`).toBeLessThan(1e-9);
    });
  });

  test("twelve places on the Jacksboro grid", async () => {
    const grid = await jacksboroGrid();
    let compared = 0;
    for (const [row, column] of [
      [166, 110],
      [259, 110],
      [281, 232],
      [80, 324],
      [225, 195],
      [68, 147],
    ] as const) {
      for (const eyeM of [2, 6]) {
        const position = jacksboroPosition(row, column);
        const { horizon } = horizonProfile(grid, position, eyeM, RULES);
        bruteForce(grid, placeOnGrid(grid, position), eyeM).forEach((angle, bearing) => {
          expect(Math.abs((horizon?.angleDeg[bearing] ?? Number.NaN) - angle)).toBeLessThan(1e-9);
          compared++;
        });
      }
    }
    expect(compared).toBe(12 * 360);
  });
});

describe("what the skyline does not know", () => {
  test("the reach is the distance to the edge, and a near edge is said", () => {
    const horizon = profile(syntheticGrid(201, 10, hills), 500, 0, 2);
    expect(horizon.reachM[90]).toBeGreaterThanOrEqual(490);
    expect(horizon.reachM[90]).toBeLessThanOrEqual(500);
    expect(horizon.reachM[270]).toBeGreaterThanOrEqual(1490);
    expect(horizon.shortestReachM).toBe(horizon.reachM[90]);
    expect(horizon.endsNear).toBe(true);
  });

  test("no bearing is looked at beyond the reach", () => {
    const grid = syntheticGrid(421, 100, (east) => (east > 15050 ? 3000 : 500));
    const horizon = profile(grid, 0, 0, 2);
    expect(horizon.shortestReachM).toBe(15000);
    expect(horizon.endsNear).toBe(false);
    expect(horizon.angleDeg[90]).toBeLessThan(0);
  });

  test("a void breaks the reach, and ground beyond it is still seen but said to be a least value", () => {
    const grid = syntheticGrid(201, 10, (east) => (east > 600 ? 700 : 500));
    for (let row = 60; row < 140; row++) grid.heightsM[row * 201 + 130] = Number.NaN;
    const horizon = profile(grid, 0, 0, 2);
    expect(horizon.brokenBearingsDeg).toContain(90);
    expect(horizon.brokenBearingsDeg).not.toContain(270);
    expect(horizon.reachM[90]).toBeLessThan(300);
    expect(horizon.angleDeg[90]).toBeGreaterThan(17);
    expect(horizon.angleDeg.some(Number.isNaN)).toBe(false);
  });

  test("a site off the grid or on a void has no skyline", () => {
    const grid = syntheticGrid(21, 10, hills);
    expect(horizonProfile(grid, positionAt(101, 0), 2, RULES).horizon).toBeNull();
    grid.heightsM[10 * 21 + 10] = Number.NaN;
    expect(horizonProfile(grid, positionAt(0, 0), 2, RULES).horizon).toBeNull();
  });

  test("an eye under the ground is refused", () => {
    expect(() => horizonProfile(syntheticGrid(21, 10, hills), positionAt(0, 0), -1, RULES)).toThrow(
      RangeError,
    );
  });
});

test("between whole degrees the skyline is linear, across north too", () => {
  const horizon = profile(syntheticGrid(201, 10, hills), 0, 0, 2);
  const mean = (horizon.angleDeg[359]! + horizon.angleDeg[0]!) / 2;
  expect(horizonAngleDeg(horizon, 359.5)).toBeCloseTo(mean, 12);
  expect(horizonAngleDeg(horizon, -0.5)).toBeCloseTo(mean, 12);
  expect(horizonAngleDeg(horizon, 77)).toBe(horizon.angleDeg[77]);
});
