import { describe, expect, test } from "vitest";
import { sunPosition } from "../../scripts/light/sunAndMoon.ts";
import { sunTable } from "../../scripts/light/sunTable.ts";

const place = { lat: -45.0312, lon: 168.6626 };
const startsAt = new Date("2026-01-01T00:00:00Z");

describe("the sun's table", () => {
  test("each entry is the sun at its own instant", () => {
    const table = sunTable(place, startsAt, 5, 289);
    expect(table.altitudeDeg).toHaveLength(289);
    for (const i of [0, 1, 144, 288]) {
      const sun = sunPosition(new Date(startsAt.getTime() + i * 300_000), place);
      expect(table.altitudeDeg[i]).toBe(sun.altitudeDeg);
      expect(table.azimuthDeg[i]).toBe(sun.azimuthDeg);
    }
  });

  test("no entry is missing or out of range over a year", () => {
    const table = sunTable(place, startsAt, 60, 8760);
    expect(table.altitudeDeg.every((deg) => deg > -90 && deg < 90)).toBe(true);
    expect(table.azimuthDeg.every((deg) => deg >= 0 && deg < 360)).toBe(true);
  });

  test("a step or count that is none is refused", () => {
    expect(() => sunTable(place, startsAt, 0, 3)).toThrow("stepMin must be above 0, found 0");
    expect(() => sunTable(place, startsAt, 5, 1.5)).toThrow("count must be 0 or more, found 1.5");
  });
});
