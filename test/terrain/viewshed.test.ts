import { readFileSync } from "node:fs";
import { inflateRawSync } from "node:zlib";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { fromUtm } from "../../scripts/geo/utm.ts";
import type { ElevationGrid } from "../../scripts/terrain/elevationGrid.ts";
import { SIGHT } from "../../scripts/terrain/sightRules.ts";
import { type Viewshed, type ViewshedRequest, viewshed } from "../../scripts/terrain/viewshed.ts";
import { signedAreaM2, viewshedOutline } from "../../scripts/terrain/viewshedOutline.ts";
import { visibleShare } from "../../scripts/terrain/visibleShare.ts";
import { jacksboroGrid } from "./jacksboro.ts";
import { marchedSight } from "./marchedSight.ts";
import { hills, plane, positionAt, syntheticGrid, ZONE } from "./syntheticGrid.ts";
import { thirtyMetreGrid } from "./thirtyMetreGrid.ts";

const RULES = { refraction: 0.13, earthRadiusM: 6371000 };
const FLAT_EARTH = { refraction: 0, earthRadiusM: 1e15 };
const HUNTER: ViewshedRequest = { eyeHeightM: 6, targetHeightM: 1, reachM: 2000 };

function seen(
  grid: ElevationGrid,
  eastM: number,
  northM: number,
  request: ViewshedRequest,
  rules = RULES,
): Viewshed {
  const { viewshed: view, why } = viewshed(grid, positionAt(eastM, northM), request, rules);
  if (view === null) throw new Error(why);
  return view;
}

function markAt(view: Viewshed, row: number, column: number): number | undefined {
  return view.sight[(row - view.row0) * view.columns + column - view.column0];
}

/** Cells within the reach whose mark differs from the march of their own line, as text; and how many were compared. */
function differences(
  grid: ElevationGrid,
  eastM: number,
  northM: number,
  request: ViewshedRequest,
  rules = RULES,
): { compared: number; different: string[] } {
  const view = seen(grid, eastM, northM, request, rules);
  const march = marchedSight(
    grid,
    positionAt(eastM, northM),
    request.eyeHeightM,
    request.targetHeightM,
    rules,
  );
  const different: string[] = [];
  let compared = 0;
  for (let row = view.row0; row < view.row0 + view.rows; row++) {
    for (let column = view.column0; column < view.column0 + view.columns; column++) {
      const mark = markAt(view, row, column);
      if (mark === SIGHT.beyond) continue;
      compared++;
      const expected = march(row, column);
      if (mark !== expected) different.push(`row ${row}, column ${column}: ${mark}, march ${expected}`);
    }
  }
  return { compared, different };
}

describe("the sweep equals a march along every line of sight, in every cell", () => {
  test.each([
    ["from a cell centre", 0, 0, 2, 1],
    ["from between centres", 137.3, -211.9, 2, 1],
    ["from on a row line", 33.3, 250, 6.2, 0],
    ["from high up", -402.5, 355.1, 30, 1],
    ["from near a corner", 985.5, -990, 2, 0],
    ["from the corner itself", 1000, 1000, 2, 1],
    ["with the eye on the ground", 12.25, 700.5, 0, 0],
  ])("hills, %s", (_where, eastM, northM, eyeHeightM, targetHeightM) => {
    const { compared, different } = differences(syntheticGrid(201, 10, hills), eastM, northM, {
      eyeHeightM,
      targetHeightM,
      reachM: 600,
    });
    expect(different).toEqual([]);
    expect(compared).toBeGreaterThan(2800);
  });

  test("on whole metres, where many lines only touch the ground", () => {
    const grid = syntheticGrid(91, 10, (east, north) => Math.round(hills(east, north) / 6));
    for (const eyeHeightM of [0, 1, 2]) {
      const request = { eyeHeightM, targetHeightM: 0, reachM: 400 };
      expect(differences(grid, 10, -20, request, FLAT_EARTH).different).toEqual([]);
    }
  });

  test("on rough ground with voids, from anywhere", () => {
    const height = fc.oneof(
      { weight: 12, arbitrary: fc.integer({ min: 0, max: 6 }) },
      { weight: 6, arbitrary: fc.double({ min: 0, max: 6, noNaN: true }) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
    );
    const offset = fc.oneof(
      fc.integer({ min: -5, max: 5 }).map((cells) => cells * 10),
      fc.double({ min: -59, max: 59, noNaN: true }),
    );
    let compared = 0;
    fc.assert(
      fc.property(
        fc.array(height, { minLength: 169, maxLength: 169 }),
        offset,
        offset,
        fc.constantFrom(0, 0.7, 2),
        (heights, eastM, northM, eyeHeightM) => {
          const grid = { ...syntheticGrid(13, 10, () => 0), heightsM: Float32Array.from(heights) };
          const request = { eyeHeightM, targetHeightM: 0.5, reachM: 80 };
          if (viewshed(grid, positionAt(eastM, northM), request, RULES).viewshed === null) return;
          const found = differences(grid, eastM, northM, request);
          compared += found.compared;
          expect(found.different).toEqual([]);
        },
      ),
      { seed: 1985, numRuns: 250 },
    );
    expect(compared).toBeGreaterThan(15000);
  });
});

describe("what geometry demands", () => {
  test("on flat ground everything within the reach is in view", () => {
    const view = seen(
      syntheticGrid(405, 10, () => 500),
      3.3,
      -4.4,
      HUNTER,
    );
    expect(view.hiddenCells).toBe(0);
    expect(view.unknownCells).toBe(0);
    // Circle of 200 cells: pi 200^2 = 125 664, and at most one cell in a thousand by the choice of centres.
    expect(Math.abs(view.visibleCells - Math.PI * 200 ** 2)).toBeLessThan(126);
    expect(view.isCutByGrid).toBe(false);
  });

  test.each([36, 60])("an exact plane of %i degrees is all in view", (slopeDeg) => {
    const view = seen(syntheticGrid(201, 10, plane(slopeDeg, 77)), 1.7, 2.9, { ...HUNTER, reachM: 900 });
    expect(view.hiddenCells).toBe(0);
  });

  test("CU-2: over 10 km of flat ground the curve hides what is lower than it", () => {
    // Drop at 10 km with k = 0.13: 6.8278 m. An eye at ground level sees targets from that height up.
    const grid = syntheticGrid(221, 100, () => 500);
    const far = (targetHeightM: number) =>
      markAt(seen(grid, 0, 0, { eyeHeightM: 0, targetHeightM, reachM: 10000 }), 110, 210);
    expect(far(6.9)).toBe(SIGHT.visible);
    expect(far(6.7)).toBe(SIGHT.hidden);
  });

  test("a wall hides a deer behind it as far as the similar triangles say", () => {
    // Eye 6 m, wall 3 m at 100 m: the line over it meets 1 m height at 100 x 5/3 = 166.7 m.
    const grid = syntheticGrid(101, 10, (east) => (Math.abs(east - 100) < 1 ? 503 : 500));
    const view = seen(grid, 0, 0, { ...HUNTER, reachM: 400 }, FLAT_EARTH);
    const inView = (eastM: number) => markAt(view, 50, 50 + eastM / 10) === SIGHT.visible;
    expect([90, 100, 110, 160, 170, 300].map(inView)).toEqual([true, true, false, false, true, true]);
  });

  test("a taller eye keeps everything in view that a lower one saw", () => {
    const grid = syntheticGrid(201, 10, hills);
    const low = seen(grid, 31.1, -47.7, { ...HUNTER, eyeHeightM: 2, reachM: 900 });
    const high = seen(grid, 31.1, -47.7, { ...HUNTER, eyeHeightM: 9, reachM: 900 });
    expect(low.sight.every((mark, at) => mark !== SIGHT.visible || high.sight[at] === SIGHT.visible)).toBe(
      true,
    );
    expect(high.visibleCells).toBeGreaterThan(low.visibleCells);
  });

  test.each([
    ["turned by a right angle", (e: number, n: number) => [-n, e], (r: number, c: number) => [c, 160 - r]],
    ["mirrored east to west", (e: number, n: number) => [-e, n], (r: number, c: number) => [r, 160 - c]],
  ] as const)("ground %s gives the same view, so %s", (_what, ground, cell) => {
    const before = seen(syntheticGrid(161, 10, hills), 0, 0, { ...HUNTER, reachM: 800 });
    const turned = syntheticGrid(161, 10, (east, north) =>
      hills(...(ground(east, north) as [number, number])),
    );
    const after = seen(turned, 0, 0, { ...HUNTER, reachM: 800 });
    let different = 0;
    for (let row = 0; row < 161; row++) {
      for (let column = 0; column < 161; column++) {
        const [r, c] = cell(row, column);
        if (markAt(before, row, column) !== markAt(after, r!, c!)) different++;
      }
    }
    expect(different).toBe(0);
    expect(after.visibleCells).toBe(before.visibleCells);
  });
});

describe("voids and edges", () => {
  test("ground behind a void is unknown unless known ground hides it anyway", () => {
    const grid = syntheticGrid(101, 10, (east) => (Math.abs(east + 200) < 1 ? 530 : 500));
    // Void columns 100 m east and 100 m west; a wall 200 m west.
    for (let row = 0; row < 101; row++) {
      grid.heightsM[row * 101 + 60] = Number.NaN;
      grid.heightsM[row * 101 + 40] = Number.NaN;
    }
    const view = seen(grid, 0, 0, { ...HUNTER, reachM: 450 });
    const at = (eastM: number) => markAt(view, 50, 50 + eastM / 10);
    expect([90, 100, 110, 400].map(at)).toEqual([SIGHT.visible, SIGHT.unknown, SIGHT.unknown, SIGHT.unknown]);
    expect([-90, -110, -200, -220, -400].map(at)).toEqual([
      SIGHT.visible,
      SIGHT.unknown,
      SIGHT.unknown,
      SIGHT.hidden,
      SIGHT.hidden,
    ]);
    expect(view.visibleCells + view.hiddenCells + view.unknownCells).toBe(
      view.sight.filter((mark) => mark !== SIGHT.beyond).length,
    );
  });

  test("a view that the grid cuts off says so", () => {
    expect(seen(syntheticGrid(201, 10, hills), 500, 0, { ...HUNTER, reachM: 501 }).isCutByGrid).toBe(true);
    expect(seen(syntheticGrid(201, 10, hills), 500, 0, { ...HUNTER, reachM: 499 }).isCutByGrid).toBe(false);
  });

  test("a place off the grid or on a void has no view", () => {
    const grid = syntheticGrid(21, 10, hills);
    expect(viewshed(grid, positionAt(101, 0), HUNTER, RULES).viewshed).toBeNull();
    grid.heightsM[10 * 21 + 10] = Number.NaN;
    expect(viewshed(grid, positionAt(0, 0), HUNTER, RULES).viewshed).toBeNull();
  });

  test.each([
    { ...HUNTER, eyeHeightM: -1 },
    { ...HUNTER, targetHeightM: Number.NaN },
    { ...HUNTER, reachM: 0 },
  ])("%o is refused", (request) => {
    expect(() => viewshed(syntheticGrid(21, 10, hills), positionAt(0, 0), request, RULES)).toThrow(
      RangeError,
    );
  });
});

describe("against other programs", () => {
  interface Observer {
    row: number;
    column: number;
    gdal: string;
    grass: string;
  }
  const published: { observers: Observer[] } = JSON.parse(
    readFileSync(new URL("../fixtures/jacksboro/viewsheds.json", import.meta.url), "utf8"),
  );
  const agreements: { gdal: number; grass: number; grassWithGdal: number; shareOff: number }[] = [];

  beforeAll(async () => {
    const grid = thirtyMetreGrid(await jacksboroGrid());
    for (const observer of published.observers) {
      const eastingM = grid.westM + observer.column * 30;
      const northingM = grid.northM - observer.row * 30;
      const view = viewshed(grid, fromUtm({ eastingM, northingM }, grid.zone), HUNTER, RULES).viewshed!;
      const isIn = (packed: string) => {
        const bits = inflateRawSync(Buffer.from(packed, "base64"));
        return (at: number): boolean => (bits[at >> 3]! & (128 >> (at & 7))) !== 0;
      };
      const gdal = isIn(observer.gdal);
      const grass = isIn(observer.grass);
      const same = { gdal: 0, grass: 0, grassWithGdal: 0, grassVisible: 0 };
      let cells = 0;
      for (let r = 0; r < 135; r++) {
        for (let c = 0; c < 135; c++) {
          const mark = markAt(view, observer.row - 67 + r, observer.column - 67 + c);
          if (mark === SIGHT.beyond) continue;
          const at = r * 135 + c;
          cells++;
          if ((mark === SIGHT.visible) === gdal(at)) same.gdal++;
          if ((mark === SIGHT.visible) === grass(at)) same.grass++;
          if (grass(at) === gdal(at)) same.grassWithGdal++;
          if (grass(at)) same.grassVisible++;
        }
      }
      agreements.push({
        gdal: same.gdal / cells,
        grass: same.grass / cells,
        grassWithGdal: same.grassWithGdal / cells,
        shareOff: Math.abs(same.grassVisible - view.visibleCells) / cells,
      });
    }
  });

  // GRASS 8.2.1 r.viewshed, an exact sweep with another rule between cells: lines that graze differ.
  test("GRASS agrees on at least 99.5 % of the cells of each of 20 observers, the visible share within 0.02", () => {
    expect(agreements).toHaveLength(20);
    for (const { grass, shareOff } of agreements) {
      expect(grass).toBeGreaterThan(0.995);
      expect(shareOff).toBeLessThan(0.02);
    }
  });

  test("gdal_viewshed agrees on 97.5 % of the cells in the mean, and nowhere less than it agrees with GRASS", () => {
    const mean = agreements.reduce((sum, { gdal }) => sum + gdal, 0) / agreements.length;
    expect(mean).toBeGreaterThan(0.975);
    // On steep ground gdal_viewshed 3.6.2 hides what is in view: two observers fall under 94 %, for GRASS as for us.
    for (const { gdal, grassWithGdal } of agreements) {
      expect(gdal).toBeGreaterThan(Math.min(0.94, grassWithGdal) - 0.001);
    }
    expect(agreements.filter(({ gdal }) => gdal < 0.94).length).toBe(2);
  });

  // 829 by GRASS r.viewshed and one more exact method; 10 % for the rule between cells and lines that only touch.
  test("on the volcano grid about 829 of 5307 cells are in view", () => {
    const volcano = JSON.parse(
      readFileSync(new URL("../fixtures/volcano/volcano.json", import.meta.url), "utf8"),
    );
    const grid: ElevationGrid = {
      ...syntheticGrid(3, 10, () => 0),
      rows: volcano.height,
      columns: volcano.width,
      heightsM: Float32Array.from(volcano.values as number[]),
    };
    const eye = fromUtm({ eastingM: grid.westM + 400, northingM: grid.northM - 300 }, ZONE);
    const request = { eyeHeightM: 2, targetHeightM: 0, reachM: 2000 };
    const view = viewshed(grid, eye, request, FLAT_EARTH).viewshed!;
    expect(view.visibleCells + view.hiddenCells).toBe(5307);
    expect(Math.abs(view.visibleCells - 829)).toBeLessThan(83);
  });
});

describe("shares by distance", () => {
  test("rings add up to the whole view", () => {
    const view = seen(syntheticGrid(201, 10, hills), 3.3, 4.4, { ...HUNTER, reachM: 800 });
    const rings = visibleShare(view, [0, 100, 300, 800]);
    const sum = (key: "visibleCells" | "hiddenCells") => rings.reduce((total, ring) => total + ring[key], 0);
    expect(rings.map(({ fromM, toM }) => [fromM, toM])).toEqual([
      [0, 100],
      [100, 300],
      [300, 800],
    ]);
    expect(sum("visibleCells")).toBe(view.visibleCells);
    expect(sum("hiddenCells")).toBe(view.hiddenCells);
    for (const ring of rings) {
      expect(ring.visibleShare).toBeCloseTo(ring.visibleCells / (ring.visibleCells + ring.hiddenCells), 12);
      expect(ring.knownShare).toBe(1);
    }
  });

  test("ground beyond the grid is not known, and a ring without any known ground has no share", () => {
    const view = seen(
      syntheticGrid(41, 10, () => 500),
      200,
      200,
      { ...HUNTER, reachM: 1000 },
    );
    const [near, far] = visibleShare(view, [0, 100, 1000]);
    expect(near?.visibleShare).toBe(1);
    expect(near?.knownShare).toBeCloseTo(0.28, 1);
    expect(visibleShare(view, [600, 1000])[0]).toMatchObject({ visibleShare: null, knownShare: 0 });
    expect(far?.knownShare).toBeLessThan(0.06);
  });

  test("limits that fall or reach too far are refused", () => {
    const view = seen(syntheticGrid(41, 10, hills), 0, 0, { ...HUNTER, reachM: 200 });
    expect(() => visibleShare(view, [0, 100, 50])).toThrow(RangeError);
    expect(() => visibleShare(view, [0, 201])).toThrow(RangeError);
  });
});

describe("outline of a view", () => {
  test("encloses as much ground as there are visible cells, but for the cut corners", () => {
    const view = seen(
      syntheticGrid(201, 10, () => 500),
      0,
      0,
      { ...HUNTER, reachM: 500 },
    );
    const [ring, ...others] = viewshedOutline(view, { toleranceM: 0, leastAreaM2: 0 });
    expect(others).toEqual([]);
    // Every corner of the outline cuts off half a quarter of a cell; a circle of 50 cells has under 400 corners.
    expect(Math.abs(signedAreaM2(ring!) - view.visibleCells * 100)).toBeLessThan(400 * 12.5);
    expect(signedAreaM2(ring!)).toBeGreaterThan(0);
  });

  test("rings are closed, holes run the other way, and the even-odd area stays", () => {
    const grid = syntheticGrid(
      201,
      10,
      (east, north) => hills(east, north) + 5 * Math.sin(east / 31 + north / 23),
    );
    const view = seen(grid, 0, 0, { ...HUNTER, reachM: 900 });
    const rings = viewshedOutline(view, { toleranceM: 0, leastAreaM2: 0 });
    const areaM2 = rings.reduce((sum, ring) => sum + signedAreaM2(ring), 0);
    for (const ring of rings) {
      expect([ring[0], ring[1]]).toEqual([ring.at(-2), ring.at(-1)]);
      expect(signedAreaM2(ring)).not.toBe(0);
    }
    expect(rings.length).toBeGreaterThan(3);
    expect(Math.abs(areaM2 / (view.visibleCells * 100) - 1)).toBeLessThan(0.02);
    const drawn = viewshedOutline(view, { toleranceM: 5, leastAreaM2: 400 });
    expect(drawn.length).toBeLessThan(rings.length);
    const points = (lines: Float64Array[]) => lines.reduce((sum, line) => sum + line.length / 2, 0);
    expect(points(drawn)).toBeLessThan(points(rings) * 0.6);
  });
});
