import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contourInterval } from "../../scripts/terrain/contourInterval.ts";
import { contourLabels } from "../../scripts/terrain/contourLabels.ts";
import { type ContourLine, contourLines } from "../../scripts/terrain/contourLines.ts";
import { type ElevationGrid, elevationAt } from "../../scripts/terrain/elevationGrid.ts";
import { signedAreaM2 } from "../../scripts/terrain/viewshedOutline.ts";
import { jacksboroGrid } from "./jacksboro.ts";
import { hills, plane, syntheticGrid } from "./syntheticGrid.ts";

const TENS = { intervalM: 10, indexEvery: 5 };

/** Heights row by row from the north-west, 1 m cells, first centre at 0, 0. */
function small(
  ...rows: number[][]
): Pick<ElevationGrid, "rows" | "columns" | "heightsM" | "westM" | "northM" | "cellSizeM"> {
  const heightsM = Float32Array.from(rows.flat());
  return { rows: rows.length, columns: rows[0]!.length, heightsM, westM: 0, northM: 0, cellSizeM: 1 };
}

function lengthM({ pointsM }: ContourLine): number {
  let sum = 0;
  for (let at = 2; at < pointsM.length; at += 2) {
    sum += Math.hypot(pointsM[at]! - pointsM[at - 2]!, pointsM[at + 1]! - pointsM[at - 1]!);
  }
  return sum;
}

const isClosed = ({ pointsM: p }: ContourLine): boolean => p[0] === p.at(-2) && p[1] === p.at(-1);

describe("shapes that can be drawn by hand", () => {
  test("a summit is one ring around it, counterclockwise", () => {
    const lines = contourLines(small([0, 0, 0], [0, 10, 0], [0, 0, 0]), { intervalM: 5, indexEvery: 5 });
    const ring = lines.find(({ heightM }) => heightM === 5)!;
    expect(ring.isRing).toBe(true);
    expect(isClosed(ring)).toBe(true);
    expect(ring.pointsM.length / 2).toBe(5);
    // Corners half a cell from the summit: a square standing on its tip, area 0.5.
    expect(signedAreaM2(ring.pointsM)).toBeCloseTo(0.5, 12);
  });

  test("a hollow runs clockwise: higher ground is always on the left", () => {
    const [ring] = contourLines(small([9, 9, 9], [9, 1, 9], [9, 9, 9]), { intervalM: 5, indexEvery: 5 });
    expect(signedAreaM2(ring!.pointsM)).toBeLessThan(0);
  });

  test("a slope gives open lines from border to border, each fifth an index line", () => {
    const grid = syntheticGrid(21, 10, (east) => 500 + east / 2 + 0.25);
    const lines = contourLines(grid, TENS);
    expect(lines.map(({ heightM, isIndex, isRing }) => [heightM, isIndex, isRing])).toEqual([
      [460, false, false],
      [470, false, false],
      [480, false, false],
      [490, false, false],
      [500, true, false],
      [510, false, false],
      [520, false, false],
      [530, false, false],
      [540, false, false],
      [550, true, false],
    ]);
    for (const line of lines) expect(lengthM(line)).toBeCloseTo(200, 6);
  });

  test.each([
    // Saddle of the bilinear surface at (a d - b c) / (a + d - b - c), corners a b / c d.
    ["the high pair when the saddle lies above", [10, 0, 0, 10], 4.9, "high joined"],
    ["the low pair when the saddle lies below", [10, 0, 0, 10], 5.1, "low joined"],
    ["the high pair of the other diagonal", [0, 10, 10, 0], 4.9, "high joined"],
    ["the pair that the heights favour, not the mean", [10, 1, 0, 4], 3, "high joined"],
  ] as const)("a saddle joins %s", (_what, [a, b, c, d], levelM, joined) => {
    // Level 0 of the shifted heights is the level wanted.
    const lines = contourLines(small([a - levelM, b - levelM], [c - levelM, d - levelM]), {
      intervalM: 1000,
      indexEvery: 1,
    });
    expect(lines).toHaveLength(2);
    // Each line cuts off the corner it is nearest to; a joined pair of high corners cuts off the low ones.
    const isHigh = (x: number, y: number): boolean =>
      [a, b, c, d][(y < -0.5 ? 2 : 0) + (x > 0.5 ? 1 : 0)]! > levelM;
    for (const { pointsM: p } of lines) {
      const corner = isHigh(Math.round((p[0]! + p[2]!) / 2), Math.round((p[1]! + p[3]!) / 2));
      expect(corner).toBe(joined === "low joined");
    }
  });

  test("the saddle at 4 x 10 over 13 is 3.08, where the mean of the corners would say 3.75", () => {
    const at = (levelM: number) =>
      contourLines(small([10 - levelM, 1 - levelM], [0 - levelM, 4 - levelM]), {
        intervalM: 1000,
        indexEvery: 1,
      })
        .map(({ pointsM }) => Array.from(pointsM, (x) => Math.round(x * 100) / 100).join(" "))
        .sort();
    expect(at(3)).not.toEqual(at(3.2));
    const cutsNorthWest = (levelM: number) =>
      at(levelM).some((line) => line.split(" ").every((x) => Math.abs(Number(x)) <= 0.8));
    expect(cutsNorthWest(3.2)).toBe(true);
    expect(cutsNorthWest(3)).toBe(false);
  });

  test("ground exactly at a height counts as above it, and a lone cell at it has no line", () => {
    expect(contourLines(small([0, 0, 0], [0, 5, 0], [0, 0, 0]), { intervalM: 5, indexEvery: 5 })).toEqual([]);
    const plateau = contourLines(small([0, 0, 0, 0], [0, 5, 5, 0], [0, 5, 5, 0], [0, 0, 0, 0]), {
      intervalM: 5,
      indexEvery: 5,
    });
    expect(plateau).toHaveLength(1);
    expect(isClosed(plateau[0]!)).toBe(true);
    expect(signedAreaM2(plateau[0]!.pointsM)).toBeCloseTo(1, 12);
  });

  test("ground below the sea has its lines too", () => {
    const lines = contourLines(small([-12, -12], [-3, -3]), { intervalM: 5, indexEvery: 2 });
    expect(lines.map(({ heightM, isIndex }) => [heightM, isIndex])).toEqual([
      [-10, true],
      [-5, false],
    ]);
  });

  test("flat ground has no line", () => {
    expect(contourLines(small([7, 7], [7, 7]), TENS)).toEqual([]);
  });
});

describe("voids", () => {
  test("a contour ends at a void and makes no ring around it", () => {
    const grid = syntheticGrid(41, 10, plane(20, 135));
    for (let row = 17; row <= 22; row++) grid.heightsM.fill(Number.NaN, row * 41 + 17, row * 41 + 23);
    const lines = contourLines(grid, TENS);
    expect(lines.every((line) => !line.isRing && !isClosed(line))).toBe(true);
    for (const { pointsM } of lines) {
      for (let at = 0; at < pointsM.length; at += 2) {
        expect(elevationAt(grid, pointsM[at]!, pointsM[at + 1]!)).not.toBeNull();
      }
    }
    // The middle line meets the void and goes on behind it.
    expect(lines.filter(({ heightM }) => heightM === 500)).toHaveLength(2);
  });

  test("a flat with a void in it has no line", () => {
    const grid = syntheticGrid(9, 10, () => 505);
    grid.heightsM[40] = Number.NaN;
    expect(contourLines(grid, TENS)).toEqual([]);
  });

  test("on any rough ground with voids each line is whole: rings close, open lines end at a border or void", () => {
    const height = fc.oneof(
      { weight: 9, arbitrary: fc.integer({ min: 0, max: 30 }) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
    );
    // Half metres: no height is exactly a level, where lines may shrink to a point.
    fc.assert(
      fc.property(fc.array(height, { minLength: 81, maxLength: 81 }), (heights) => {
        const grid = {
          ...syntheticGrid(9, 1, () => 0),
          heightsM: Float32Array.from(heights, (heightM) => heightM + 0.5),
        };
        const cellAt = (x: number, y: number) => [(grid.northM - y) / 1, x - grid.westM] as const;
        const isRim = (row: number, column: number): boolean =>
          [-1, 0].some((dr) =>
            [-1, 0].some((dc) =>
              [0, 1].some((r) =>
                [0, 1].some((c) => {
                  const [y, x] = [Math.ceil(row) + dr + r, Math.ceil(column) + dc + c];
                  return !(x >= 0 && y >= 0 && x < 9 && y < 9) || Number.isNaN(grid.heightsM[y * 9 + x]!);
                }),
              ),
            ),
          );
        const lines = contourLines(grid, { intervalM: 7, indexEvery: 5 });
        for (const line of lines) {
          const { pointsM: p } = line;
          if (line.isRing) {
            expect(isClosed(line)).toBe(true);
          } else {
            expect(isRim(...cellAt(p[0]!, p[1]!))).toBe(true);
            expect(isRim(...cellAt(p.at(-2)!, p.at(-1)!))).toBe(true);
          }
        }
        // Every stretch of a square's contour is drawn once: lengths add up to those of the squares one by one.
        expect(lines.reduce((sum, line) => sum + lengthM(line), 0)).toBeCloseTo(lengthBySquares(grid, 7), 6);
      }),
      { seed: 1987, numRuns: 300 },
    );
  });
});

/** Total length of all contours, square by square, each from the four sides it crosses; saddles by both pairings' rule. */
function lengthBySquares(grid: ElevationGrid, intervalM: number): number {
  const z = (row: number, column: number) => grid.heightsM[row * grid.columns + column]!;
  let total = 0;
  for (let row = 0; row + 1 < grid.rows; row++) {
    for (let column = 0; column + 1 < grid.columns; column++) {
      const [a, b, c, d] = [z(row, column), z(row, column + 1), z(row + 1, column), z(row + 1, column + 1)];
      if ([a, b, c, d].some(Number.isNaN)) continue;
      for (let levelM = 0; levelM <= 30; levelM += intervalM) {
        const cut = (p: number, q: number) => (levelM - p) / (q - p);
        const north = a >= levelM !== b >= levelM ? [cut(a, b), 0] : null;
        const south = c >= levelM !== d >= levelM ? [cut(c, d), 1] : null;
        const west = a >= levelM !== c >= levelM ? [0, cut(a, c)] : null;
        const east = b >= levelM !== d >= levelM ? [1, cut(b, d)] : null;
        const sides = [north, west, south, east].filter((side) => side !== null) as number[][];
        const gap = (p: number[], q: number[]) => Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!);
        if (sides.length === 2) total += gap(sides[0]!, sides[1]!);
        if (sides.length !== 4) continue;
        const saddle = (a * d - b * c) / (a + d - b - c);
        // The north-west corner is cut off when it differs from the saddle.
        const cutsNorthWest = a >= levelM !== saddle > levelM;
        total += cutsNorthWest
          ? gap(north!, west!) + gap(south!, east!)
          : gap(north!, east!) + gap(south!, west!);
      }
    }
  }
  return total;
}

describe("against the ground and gdal_contour", () => {
  test("every point of the Jacksboro contours lies at its height", async () => {
    const grid = await jacksboroGrid();
    let points = 0;
    let unknown = 0;
    let worstM = 0;
    for (const { heightM, pointsM } of contourLines(grid, { intervalM: 20, indexEvery: 5 })) {
      for (let at = 0; at < pointsM.length; at += 2) {
        points++;
        const groundM = elevationAt(grid, pointsM[at]!, pointsM[at + 1]!);
        // The last digit of an easting may lie beyond the known side of an edge.
        if (groundM === null) unknown++;
        else worstM = Math.max(worstM, Math.abs(groundM - heightM));
      }
    }
    // On a line between two centres the bilinear ground is linear; eastings and northings round at 1e-9 m.
    expect(worstM).toBeLessThan(1e-6);
    expect(unknown).toBeLessThan(points / 500);
    expect(points).toBeGreaterThan(150000);
  });

  // gdal_contour 3.6.2 -i 20: saddles by the mean of the corners and a nudge of heights that equal a level; 1 %.
  test("the length of the lines of every height is that of gdal_contour within 1 %", async () => {
    const ours = new Map<number, number>();
    for (const line of contourLines(await jacksboroGrid(), { intervalM: 20, indexEvery: 5 })) {
      ours.set(line.heightM, (ours.get(line.heightM) ?? 0) + lengthM(line));
    }
    const rows = readFileSync(new URL("../fixtures/jacksboro/gdal-contours.csv", import.meta.url), "utf8")
      .trim()
      .split("\n")
      .slice(1)
      .map((row) => row.split(",").map(Number) as [number, number, number]);
    expect(rows).toHaveLength(42);
    expect([...ours.keys()]).toEqual(rows.map(([heightM]) => heightM));
    for (const [heightM, , theirsM] of rows) {
      expect(Math.abs(ours.get(heightM)! / theirsM - 1), `${heightM} m`).toBeLessThan(0.01);
    }
  });
});

describe("interval of a sheet", () => {
  const METRES = {
    intervals: [5, 10, 20, 25, 50],
    unit: "m",
    steepDeg: 40,
    leastGapMm: 0.6,
    fewLines: 4,
  } as const;
  const FEET = { ...METRES, intervals: [20, 40, 80], unit: "ft" } as const;
  const MOUNTAINS = { lowestM: 300, highestM: 900, steepestDeg: 45 };

  // 40 degrees leave interval / tan 40 / scale; 10 m at 1:15 000 and 20 m at 1:25 000 are the sheets' usual ones.
  test.each([
    [5000, 5],
    [10000, 10],
    [15000, 10],
    [25000, 20],
    [50000, 50],
    [100000, 50],
  ])("1:%i takes %i m", (scale, interval) => {
    expect(contourInterval(MOUNTAINS, scale, METRES).interval).toBe(interval);
  });

  test("feet: 20 ft are 6.1 m and leave 0.73 mm at 1:10 000, 0.48 mm at 1:15 000", () => {
    expect(contourInterval(MOUNTAINS, 10000, FEET)).toMatchObject({ interval: 20, intervalM: 6.096 });
    expect(contourInterval(MOUNTAINS, 10000, FEET).gapMm).toBeCloseTo(0.7265, 4);
    expect(contourInterval(MOUNTAINS, 15000, FEET).interval).toBe(40);
  });

  test("low ground with gentle slopes takes a finer interval, steep ground never does", () => {
    const low = { lowestM: 300, highestM: 330, steepestDeg: 12 };
    expect(contourInterval(low, 25000, METRES).interval).toBe(5);
    expect(contourInterval({ ...low, steepestDeg: 50 }, 25000, METRES).interval).toBe(20);
    expect(contourInterval({ ...low, steepestDeg: null }, 25000, METRES).interval).toBe(20);
  });
});

describe("labels", () => {
  const RULES = { labelLengthM: 60, spacingM: 400, leastStraightness: 0.95 };

  test("figures stand upright where the ground rises to the north, tops towards it", () => {
    const ring = contourLines(
      syntheticGrid(101, 10, (east, north) => 700 - Math.hypot(east, north) / 2),
      { intervalM: 50, indexEvery: 1 },
    ).find(({ isRing }) => isRing)!;
    const [label] = contourLabels(ring, RULES);
    expect(label?.isUpright).toBe(true);
    expect(label?.readsTowardDeg).toBeGreaterThan(60);
    expect(label?.readsTowardDeg).toBeLessThan(120);
    // South side of the hill: the line runs east there, and the summit lies on its left, north.
    expect(label?.northingM).toBeLessThan(5000000);
  });

  test("a lone north slope keeps the tops towards high ground and says that it is not upright", () => {
    const [line] = contourLines(syntheticGrid(101, 10, plane(10, 0)), { intervalM: 50, indexEvery: 1 });
    const labels = contourLabels(line!, RULES);
    expect(labels).toHaveLength(1);
    expect(labels[0]?.isUpright).toBe(false);
    expect(labels[0]?.readsTowardDeg).toBeCloseTo(270, 6);
  });

  test("labels keep their distance, on a ring across its start too, and crooked lines have none", () => {
    const line = contourLines(syntheticGrid(201, 10, plane(10, 180)), { intervalM: 50, indexEvery: 1 })[0]!;
    const labels = contourLabels(line, RULES);
    expect(labels.length).toBeGreaterThanOrEqual(4);
    labels.forEach((label, at) => {
      for (const other of labels.slice(0, at)) {
        expect(Math.abs(label.eastingM - other.eastingM)).toBeGreaterThanOrEqual(399.999);
      }
    });
    const ring = contourLines(
      syntheticGrid(31, 10, (east, north) => 700 - Math.hypot(east, north)),
      { intervalM: 50, indexEvery: 1 },
    ).find(({ heightM }) => heightM === 650)!;
    expect(contourLabels(ring, { ...RULES, labelLengthM: 100 })).toEqual([]);
  });
});

test.each([0, -5, Number.NaN])("an interval of %f is refused", (intervalM) => {
  expect(() => contourLines(small([0, 1], [2, 3]), { intervalM, indexEvery: 5 })).toThrow(RangeError);
});

test("hills have as many rings as a count of summits and hollows allows, all whole", () => {
  const lines = contourLines(syntheticGrid(201, 10, hills), TENS);
  expect(lines.filter(({ isRing }) => isRing).every(isClosed)).toBe(true);
  expect(lines.some(({ isRing }) => isRing)).toBe(true);
});
