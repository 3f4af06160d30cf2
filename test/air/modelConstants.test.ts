import { describe, expect, test } from "vitest";
import { modelConstants } from "../../scripts/air/modelConstants.ts";
import { constants, modelRows } from "./planeSite.ts";

describe("the constants of the model", () => {
  test("every row gives a reason, a unit and a range that holds its value", () => {
    for (const row of modelRows) {
      expect(row.reason.length, row.id).toBeGreaterThan(10);
      expect(row.unit.length, row.id).toBeGreaterThan(0);
      const values = Array.isArray(row.value) ? row.value : [row.value];
      for (const value of values) {
        if (typeof value !== "number") continue;
        expect(value, row.id).toBeGreaterThanOrEqual(row.low as number);
        expect(value, row.id).toBeLessThanOrEqual(row.high as number);
      }
    }
  });

  test("a published constant names its source", () => {
    const unnamed = modelRows.filter((row) => row.status === "published" && !row.source);
    expect(unnamed.map((row) => row.id)).toEqual([]);
  });

  test("a row of four is read by cover, a single row by name", () => {
    expect(constants.windCover).toEqual({ open: 0.35, edge: 0.26, timber: 0.15, "dense timber": 0.09 });
    expect(constants.avoidFrom).toBe(0.35);
  });

  test("the ensemble is a two-level design: every factor is balanced and no two factors move together", () => {
    const factors = Object.keys(
      constants.ensembleSigns[0] ?? {},
    ) as (keyof (typeof constants.ensembleSigns)[0])[];
    expect(constants.ensembleSigns).toHaveLength(16);
    for (const a of factors) {
      for (const b of factors) {
        const sum = constants.ensembleSigns.reduce((total, signs) => total + signs[a] * signs[b], 0);
        expect(sum, `${a} with ${b}`).toBe(a === b ? 16 : 0);
      }
      expect(constants.ensembleSigns.reduce((total, signs) => total + signs[a], 0)).toBe(0);
    }
  });

  test("a missing, doubled, ill-typed or out-of-range row is named", () => {
    const without = modelRows.filter((row) => row.id !== "fadeToMps");
    expect(() => modelConstants(without)).toThrow(/fadeToMps must be given, found none/);
    const first = modelRows[0];
    expect(() => modelConstants(first ? [...modelRows, first] : [])).toThrow(/once, found twice/);
    const changed = (id: string, value: number | number[] | string[]): typeof modelRows =>
      modelRows.map((row) => (row.id === id ? { ...row, value } : row));
    expect(() => modelConstants(changed("windCover", [0.3, 0.2]))).toThrow(/windCover must be four numbers/);
    expect(() => modelConstants(changed("steadyMin", ["x"]))).toThrow(/steadyMin must be a number/);
    expect(() => modelConstants(changed("steadyMin", 9))).toThrow(RangeError);
    expect(() => modelConstants(changed("ensembleSigns", ["++"]))).toThrow(/eight signs/);
  });
});
