import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { type ColdAirPath, coldAirPath } from "../../scripts/terrain/coldAirPath.ts";
import { downslopeDirectionDeg } from "../../scripts/terrain/downslopeDirection.ts";
import { type DrainageSurface, drainageSurface } from "../../scripts/terrain/drainageSurface.ts";
import { interpolate, placeOnGrid } from "../../scripts/terrain/elevationGrid.ts";
import { fillPits } from "../../scripts/terrain/fillPits.ts";
import { parseAsciiGrid } from "../../scripts/terrain/parseAsciiGrid.ts";
import { smoothHeights } from "../../scripts/terrain/smoothHeights.ts";
import { JACKSBORO_ASC, jacksboroGrid, jacksboroPosition } from "./jacksboro.ts";
import { hills, plane, positionAt, syntheticGrid } from "./syntheticGrid.ts";

const SURFACE_RULES = { pathSmoothM: 40, pathSmoothCellMaxM: 60, pitEpsilonM: 0.0001 };
const RULES = {
  pathLengthM: 1000,
  pathStepM: 40,
  pathBearingM: 300,
  pathFlatDeg: 3,
  pathFlatM: 300,
  trustCellM: 30,
  coarseCellM: 100,
};

function pathOf(
  surface: DrainageSurface,
  eastM: number,
  northM: number,
  phase: "falling" | "rising",
): ColdAirPath {
  const { path, why } = coldAirPath(surface, positionAt(eastM, northM), phase, RULES);
  if (path === null) throw new Error(why);
  return path;
}

const turn = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

describe("pits", () => {
  test("a pit is raised just over the way out, and nothing else is", () => {
    const heightsM = Float64Array.from([9, 9, 9, 9, 9, 10, 2, 9, 5, 6, 10, 9, 9, 9, 9, 9]);
    const { heightsM: filled, raisedCells } = fillPits({ rows: 4, columns: 4, heightsM }, 0.001);
    expect(raisedCells).toBe(1);
    expect(filled[6]).toBeCloseTo(6.001, 9);
    expect(Array.from(filled).filter((_h, at) => at !== 6)).toEqual(
      Array.from(heightsM).filter((_h, at) => at !== 6),
    );
  });

  // Independent count for this grid with the same epsilon, from the table of constants of the air.
  test("8758 of 138 632 cells of the Jacksboro file are raised", () => {
    const raster = parseAsciiGrid(readFileSync(JACKSBORO_ASC), null, 6000);
    expect(raster.heightsM).toHaveLength(138632);
    expect(fillPits(raster, 0.0001).raisedCells).toBe(8758);
  });

  test("afterwards every inner cell has a lower neighbour", () => {
    const { rows, columns, heightsM } = parseAsciiGrid(readFileSync(JACKSBORO_ASC), null, 6000);
    const filled = fillPits({ rows, columns, heightsM }, 0.0001).heightsM;
    let stuck = 0;
    for (let row = 1; row < rows - 1; row++) {
      for (let column = 1; column < columns - 1; column++) {
        const at = row * columns + column;
        const around = [-columns - 1, -columns, -columns + 1, -1, 1, columns - 1, columns, columns + 1];
        if (!around.some((offset) => filled[at + offset]! < filled[at]!)) stuck++;
      }
    }
    expect(stuck).toBe(0);
  });

  test("a void stays void and lets the ground around it drain", () => {
    const heightsM = Float64Array.from({ length: 25 }, () => 10);
    heightsM[12] = Number.NaN;
    const filled = fillPits({ rows: 5, columns: 5, heightsM }, 0.001).heightsM;
    expect(filled[12]).toBeNaN();
    expect(Array.from(filled).filter(Number.isNaN)).toHaveLength(1);
  });
});

describe("direction of steepest descent (D-infinity, Tarboton 1997)", () => {
  test("a plane of any aspect gives its aspect", () => {
    for (let aspectDeg = 0; aspectDeg < 360; aspectDeg += 7.5) {
      const grid = syntheticGrid(3, 10, plane(17, aspectDeg));
      expect(turn(downslopeDirectionDeg(grid, 1, 1) ?? Number.NaN, aspectDeg)).toBeLessThan(0.01);
    }
  });

  test("a single lower neighbour is where it goes", () => {
    const bearings = [315, 0, 45, 270, null, 90, 225, 180, 135];
    bearings.forEach((bearing, at) => {
      if (bearing === null) return;
      const heightsM = Float64Array.from({ length: 9 }, (_, cell) =>
        cell === at ? 5 : cell === 4 ? 10 : 12,
      );
      expect(downslopeDirectionDeg({ rows: 3, columns: 3, heightsM }, 1, 1)).toBeCloseTo(bearing, 9);
    });
  });

  test("a pit, a flat, the border and the rim of a void give none", () => {
    const flat = { rows: 3, columns: 3, heightsM: new Float64Array(9) };
    expect(downslopeDirectionDeg(flat, 1, 1)).toBeNull();
    expect(downslopeDirectionDeg(flat, 0, 1)).toBeNull();
    flat.heightsM.set([1, 1, 1, 1, 0, 1, 1, 1, 1]);
    expect(downslopeDirectionDeg(flat, 1, 1)).toBeNull();
    flat.heightsM.set([1, 1, 1, 1, 2, 1, 1, 1, Number.NaN]);
    expect(downslopeDirectionDeg(flat, 1, 1)).toBeNull();
  });
});

describe("smoothing", () => {
  test("leaves a plane as it is away from the edge, keeps voids and lets no weight leak from them", () => {
    const grid = syntheticGrid(41, 10, plane(20, 225));
    grid.heightsM[20 * 41 + 20] = Number.NaN;
    const smooth = smoothHeights(grid, 2);
    expect(smooth[20 * 41 + 20]).toBeNaN();
    expect(smooth[10 * 41 + 10]).toBeCloseTo(grid.heightsM[10 * 41 + 10]!, 3);
    const level = smoothHeights(
      syntheticGrid(21, 10, () => 500),
      3,
    );
    for (const heightM of level) expect(heightM).toBeCloseTo(500, 9);
  });

  test("fine grids are smoothed, grids of cells over 60 m are not", () => {
    const fine = drainageSurface(
      syntheticGrid(41, 10, (east, north) => 500 + (((east + north) / 10) % 3)),
      SURFACE_RULES,
    );
    expect(fine.invertedM[20 * 41 + 20]).not.toBe(-500);
    const grid = syntheticGrid(41, 61, (east, north) => 500 + ((east + north) % 122));
    expect(Array.from(drainageSurface(grid, SURFACE_RULES).invertedM)).toEqual(
      Array.from(grid.heightsM, (h) => -h),
    );
  });
});

describe("the way of the slope air", () => {
  test("on a plane it falls to the aspect and rises opposite, straight, for 1 km", () => {
    for (const aspectDeg of [0, 90, 117, 225, 300]) {
      const surface = drainageSurface(syntheticGrid(301, 10, plane(15, aspectDeg)), SURFACE_RULES);
      const falling = pathOf(surface, 0, 0, "falling");
      expect(falling).toMatchObject({ endsBecause: "length", flatFromM: null });
      expect(falling.lengthM).toBeCloseTo(1000, 6);
      expect(turn(falling.firstBearingDeg, aspectDeg)).toBeLessThan(0.5);
      const rising = pathOf(surface, 0, 0, "rising");
      expect(rising.lengthM).toBeCloseTo(1000, 6);
      expect(turn(rising.firstBearingDeg, aspectDeg + 180)).toBeLessThan(0.5);
      const ends = distanceAndBearing(falling.positions[0]!, falling.positions.at(-1)!);
      // Grid metres on the central meridian are 0.04 % short.
      expect(ends.distanceM).toBeCloseTo(1000.4, 0);
      expect(turn(ends.bearingDeg, aspectDeg)).toBeLessThan(0.5);
    }
  });

  test("in a valley it reaches the floor and follows it down", () => {
    // A V-valley that falls southward at 5 degrees between 20 degree sides.
    const valley = (east: number, north: number) => 500 + Math.abs(east) * 0.364 + north * 0.0875;
    const surface = drainageSurface(syntheticGrid(301, 10, valley), SURFACE_RULES);
    const path = pathOf(surface, -300, 500, "falling");
    const end = placeOnGrid(surface.grid, path.positions.at(-1)!);
    expect(Math.abs(end.eastingM - 500000)).toBeLessThan(15);
    expect(end.northingM).toBeLessThan(5000000);
    expect(path.lengthM).toBeCloseTo(1000, 6);
  });

  test("rising air stops at the crest", () => {
    const ridge = (east: number) => 800 - Math.abs(east) * 0.3;
    const surface = drainageSurface(syntheticGrid(301, 10, ridge), SURFACE_RULES);
    const path = pathOf(surface, 300, 200, "rising");
    expect(path.endsBecause).toBe("top");
    const end = placeOnGrid(surface.grid, path.positions.at(-1)!);
    expect(Math.abs(end.eastingM - 500000)).toBeLessThan(45);
  });

  test("a hollow does not hold it back", () => {
    const slope = plane(8, 180);
    const pitted = (east: number, north: number) =>
      slope(east, north) - 60 * Math.exp(-(east ** 2 + (north + 250) ** 2) / 3000);
    const surface = drainageSurface(syntheticGrid(301, 10, pitted), SURFACE_RULES);
    expect(surface.raisedCells).toBeGreaterThan(0);
    const path = pathOf(surface, 5, 0, "falling");
    expect(path.endsBecause).toBe("length");
    expect(path.lengthM).toBeCloseTo(1000, 6);
  });

  test("mirroring the ground mirrors the way, turning turns it", () => {
    const bearing = (ground: (east: number, north: number) => number, east: number, north: number): number =>
      pathOf(drainageSurface(syntheticGrid(301, 10, ground), SURFACE_RULES), east, north, "falling")
        .firstBearingDeg;
    // On filled flats the way out depends on the order of the flood: it may run one cell beside its mirror image.
    const before = bearing(hills, 110, -70);
    expect(
      turn(
        bearing((east, north) => hills(-east, north), -110, -70),
        360 - before,
      ),
    ).toBeLessThan(1);
    expect(
      turn(
        bearing((east, north) => hills(-north, east), -70, -110),
        before + 90,
      ),
    ).toBeLessThan(1);
  });

  test("a way that leaves the grid, or grows flat, says so", () => {
    const surface = drainageSurface(syntheticGrid(61, 10, plane(15, 90)), SURFACE_RULES);
    const leaving = pathOf(surface, 0, 0, "falling");
    expect(leaving.endsBecause).toBe("edge");
    expect(leaving.lengthM).toBeGreaterThan(200);
    expect(leaving.lengthM).toBeLessThan(310);
    // 15 degrees for 400 m, then 1 degree.
    const flattening = (east: number) =>
      east < 400 ? 600 - east * 0.268 : 600 - 400 * 0.268 - (east - 400) * 0.0175;
    const path = pathOf(drainageSurface(syntheticGrid(301, 10, flattening), SURFACE_RULES), 0, 0, "falling");
    expect(path.flatFromM).toBeGreaterThanOrEqual(320);
    expect(path.flatFromM).toBeLessThanOrEqual(400);
  });

  test("a site off the grid, on a void or on a summit, and a coarse grid, have none", () => {
    const grid = syntheticGrid(61, 10, plane(15, 90));
    grid.heightsM[30 * 61 + 30] = Number.NaN;
    const surface = drainageSurface(grid, SURFACE_RULES);
    const why = "the site lies outside the elevation grid or on a void";
    expect(coldAirPath(surface, positionAt(0, 0), "falling", RULES)).toEqual({ path: null, why });
    expect(coldAirPath(surface, positionAt(400, 0), "falling", RULES)).toEqual({ path: null, why });
    const summit = drainageSurface(
      syntheticGrid(61, 10, (e, n) => 500 - Math.hypot(e, n) / 4),
      SURFACE_RULES,
    );
    expect(coldAirPath(summit, positionAt(0, 0), "rising", RULES)).toEqual({
      path: null,
      why: "no higher ground beside the site",
    });
    const coarse = drainageSurface(syntheticGrid(61, 101, plane(15, 90)), SURFACE_RULES);
    expect(coldAirPath(coarse, positionAt(0, 0), "falling", RULES).path).toBeNull();
  });
});

describe("ways on the Jacksboro grid", () => {
  test("400 starts all run their kilometre and end lower", async () => {
    const grid = await jacksboroGrid();
    const surface = drainageSurface(grid, SURFACE_RULES);
    const raster = { rows: grid.rows, columns: grid.columns, heightsM: surface.drainedM };
    let state = 7;
    const random = (): number => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    let whole = 0;
    let climbs = 0;
    for (let start = 0; start < 400; start++) {
      // 20 cells, 1.5 km or more, from the edge.
      const position = jacksboroPosition(20 + random() * 304, 20 + random() * 363);
      const { path } = coldAirPath(surface, position, "falling", RULES);
      if (path?.endsBecause === "length" && Math.abs(path.lengthM - 1000) < 1e-6) whole++;
      const heights = (path?.positions ?? []).map((point) => {
        const { row, column } = placeOnGrid(grid, point);
        return interpolate(raster, row, column);
      });
      // The last point is cut to length and may lie between two cells that touch by a corner, over a dam.
      if (!((heights.at(-2) ?? Number.NaN) < (heights[0] ?? Number.NaN))) climbs++;
    }
    expect(whole).toBe(400);
    expect(climbs).toBe(0);
  });
});
