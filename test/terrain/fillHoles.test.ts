import { describe, expect, test } from "vitest";
import { fillHoles } from "../../scripts/terrain/fillHoles.ts";

const RULES = { holeCellsMax: 9, holeShareMax: 0.05 };
const _ = Number.NaN;

function planeWithVoids(rows: number, columns: number, voids: readonly (readonly [number, number])[]) {
  const height = (row: number, column: number): number => 500 + 3 * row - 2 * column;
  const heightsM = new Float32Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) heightsM[row * columns + column] = height(row, column);
  }
  for (const [row, column] of voids) heightsM[row * columns + column] = _;
  return { rows, columns, heightsM, height };
}

const block = (row: number, column: number, rows: number, columns: number): [number, number][] =>
  Array.from({ length: rows * columns }, (_v, at) => [
    row + Math.floor(at / columns),
    column + (at % columns),
  ]);

describe("small holes", () => {
  test("a hole of nine cells in a plane is filled with the plane, and marked", () => {
    const raster = planeWithVoids(20, 20, block(7, 9, 3, 3));
    const { heightsM, filled, filledCells } = fillHoles(raster, RULES);
    expect(filledCells).toBe(9);
    for (let row = 0; row < 20; row++) {
      for (let column = 0; column < 20; column++) {
        // Relaxed until no step is over 0.01 mm; 32-bit heights of 500 m hold 0.03 mm.
        expect(heightsM[row * 20 + column]).toBeCloseTo(raster.height(row, column), 3);
        const isHole = row >= 7 && row <= 9 && column >= 9 && column <= 11;
        expect(filled?.[row * 20 + column]).toBe(isHole ? 1 : 0);
      }
    }
  });

  test("a hole of ten cells stays void, also when they touch only by corners", () => {
    const diagonal = Array.from({ length: 10 }, (_v, at): [number, number] => [3 + at, 3 + at]);
    for (const voids of [block(7, 9, 2, 5), diagonal]) {
      const result = fillHoles(planeWithVoids(20, 20, voids), RULES);
      expect(result).toMatchObject({ filled: null, filledCells: 0 });
      expect(Array.from(result.heightsM).filter(Number.isNaN)).toHaveLength(10);
    }
  });

  test("the large void stays when a small one is filled", () => {
    const result = fillHoles(planeWithVoids(20, 20, [...block(2, 2, 4, 4), [15, 15]]), RULES);
    expect(result.filledCells).toBe(1);
    expect(Array.from(result.heightsM).filter(Number.isNaN)).toHaveLength(16);
  });

  test("a gap at the edge has ground on one side only and stays void", () => {
    const result = fillHoles(
      planeWithVoids(20, 20, [
        [0, 5],
        [10, 19],
      ]),
      RULES,
    );
    expect(result.filledCells).toBe(0);
    expect(result.heightsM[5]).toBeNaN();
  });

  test("holes that add up to 5 % of the grid are not filled", () => {
    const holes = Array.from({ length: 5 }, (_v, at): [number, number] => [
      1 + (at % 3) * 3,
      1 + Math.floor(at / 3) * 3,
    ]);
    expect(fillHoles(planeWithVoids(10, 10, holes), RULES)).toMatchObject({ filled: null, filledCells: 0 });
    expect(fillHoles(planeWithVoids(10, 10, holes.slice(1)), RULES).filledCells).toBe(4);
  });

  test("a filled height lies between those around it, and the input is left alone", () => {
    const heightsM = Float32Array.from([1, 9, 4, 7, _, 3, 2, 8, 6]);
    const result = fillHoles({ rows: 3, columns: 3, heightsM }, { holeCellsMax: 9, holeShareMax: 0.2 });
    expect(result.heightsM[4]).toBeCloseTo((9 + 7 + 3 + 8) / 4, 5);
    expect(heightsM[4]).toBeNaN();
  });

  test("never makes a void zero", () => {
    const result = fillHoles(planeWithVoids(20, 20, block(3, 3, 6, 6)), RULES);
    expect(Array.from(result.heightsM)).not.toContain(0);
  });
});
