import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Backstop, backstop } from "../../scripts/shooting/backstop.ts";
import { groundProfile } from "../../scripts/shooting/groundProfile.ts";
import { rules } from "./rules.ts";

const REACH_M = 1500;

/** What is behind a shot over ground given by its height at a distance; 6 m is the muzzle over the ground of the seat. */
function behind(
  heightM: (distanceM: number) => number | null,
  rangeM: number,
  given: { muzzleHeightM?: number; gridErrorM?: number } = {},
): Backstop {
  const profile = groundProfile((_east, northM) => heightM(northM), 0, REACH_M, 1);
  return backstop(profile, { muzzleHeightM: 6, gridErrorM: 0, rangeM, ...given }, rules);
}

const flat = () => 0;
/** Flat out to a distance, then a bank of 45 degrees. */
const bank = (atM: number) => (m: number) => Math.max(0, m - atM);
/** Flat out to a distance, then 100 m lower. */
const cliff = (atM: number) => (m: number) => (m > atM ? -100 : 0);

describe("flat ground from 6 m up, aimed 0.8 m over the ground", () => {
  // similar triangles: 0.8 m falls away in 0.8 x range / 5.2 m; 7.69 m and 23.08 m, rounded in the safety catalogue to 8 and 23
  test.each([
    { rangeM: 50, beyondM: (0.8 * 50) / 5.2, rounded: 8 },
    { rangeM: 150, beyondM: (0.8 * 150) / 5.2, rounded: 23 },
  ])("at $rangeM m the line meets the ground $rounded m beyond", ({ rangeM, beyondM, rounded }) => {
    const found = behind(flat, rangeM);
    expect(found.beyondM).toBeCloseTo(beyondM, 9);
    expect(Math.round(found.beyondM!)).toBe(rounded);
    expect(found.downDeg).toBeCloseTo((Math.atan(5.2 / rangeM) * 180) / Math.PI, 9);
    expect(found.meetsAtDeg).toBeCloseTo(found.downDeg!, 9);
    expect(found).toMatchObject({ ground: "earth", isHidden: false, why: null });
  });

  test("level ground is earth as far as 50 m beyond and far from there on", () => {
    // 0.8 x range / 5.2 = 50 at 325 m
    expect(behind(flat, 324).ground).toBe("earth");
    expect(behind(flat, 326)).toMatchObject({ ground: "far", why: "too far behind" });
  });

  test("a grid that is 2 m off leaves level ground no backstop where the line would meet it 50 m farther", () => {
    // ground 2 m lower: 2.8 x range / 5.2 = 50 at 92.9 m; seat 2 m lower: 0.8 x range / 3.2 = 50 at 200 m
    expect(behind(flat, 92, { gridErrorM: 2 }).ground).toBe("earth");
    expect(behind(flat, 94, { gridErrorM: 2 })).toMatchObject({
      ground: "far",
      why: "within the grid error only",
    });
  });
});

describe("ground that is not level", () => {
  test("a bank close behind stops the shot also when the grid is 5 m off", () => {
    expect(behind(bank(110), 100, { gridErrorM: 5 }).ground).toBe("earth");
  });

  test("the edge of a cliff behind the animal leaves nothing", () => {
    // 100 m fall at 5.2 per 100 m: 1938 m beyond, farther than is looked
    expect(behind(cliff(100), 100)).toMatchObject({ ground: "none", beyondM: null, why: "no ground behind" });
  });

  test("ground that falls away where it is met is no backstop, however near", () => {
    const found = behind((m) => -0.02 * m, 50);
    expect(found.beyondM!).toBeLessThan(50);
    expect(found).toMatchObject({ ground: "far", why: "ground falls away" });
  });

  test("a hill as steep as the shot is never met", () => {
    // muzzle 6 m up and aim 0.8 m up over ground that falls 10 m in 100: the line falls 15.2 m in 100, so it meets; at 20 m in 100 too
    // much only when the ground falls faster than the line: a line of 5.2 m in 100 over a slope that steepens to 10 in 100 behind
    const steepens = (m: number) => (m <= 100 ? 0 : -0.1 * (m - 100));
    expect(behind(steepens, 100)).toMatchObject({ ground: "none", beyondM: null });
  });

  test("ground from 50 to 300 m beyond is far, farther is none but told", () => {
    const steps = (riseAtM: number) => (m: number) => (m <= 100 ? 0 : m < riseAtM ? -60 : 60);
    expect(behind(steps(399), 100).ground).toBe("far");
    const none = behind(steps(402), 100);
    expect(none.ground).toBe("none");
    expect(none.beyondM!).toBeGreaterThan(300);
  });

  test("a hump before the animal is told and does not make the ground behind better", () => {
    const hump = (m: number) => (m > 40 && m < 60 ? 8 : m > 100 ? -100 : 0);
    expect(behind(hump, 100)).toMatchObject({ isHidden: true, ground: "none" });
  });
});

describe("ground that is not known", () => {
  test("behind the animal is none", () => {
    expect(behind((m) => (m > 105 ? null : 0), 100)).toMatchObject({
      ground: "none",
      beyondM: null,
      why: "not known",
    });
  });

  test("under seat or animal leaves not even an angle", () => {
    expect(behind((m) => (m > 90 ? null : 0), 100)).toMatchObject({ ground: "none", downDeg: null });
    expect(behind((m) => (m < 10 ? null : 0), 100)).toMatchObject({ ground: "none", downDeg: null });
  });

  test("beyond a backstop does not matter", () => {
    expect(behind((m) => (m > 130 ? null : Math.max(0, m - 105)), 100).ground).toBe("earth");
  });
});

test("a range that is not over 0 is a mistake of the program", () => {
  expect(() => behind(flat, 0)).toThrow("rangeM must be over 0, found 0");
});

test("a less certain grid never makes a backstop better", () => {
  const rank = { earth: 0, far: 1, none: 2 };
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 20, maxLength: 20 }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.integer({ min: 25, max: 200 }),
      (bends, errorM, moreM, rangeM) => {
        const ground = (m: number) =>
          bends.slice(0, Math.floor(m / 20) + 1).reduce((sum, bend) => sum + bend, 0);
        const sure = behind(ground, rangeM, { gridErrorM: errorM });
        const unsure = behind(ground, rangeM, { gridErrorM: errorM + moreM });
        if (sure.ground !== "earth") expect(unsure.ground).toBe(sure.ground);
        expect(rank[unsure.ground]).toBeGreaterThanOrEqual(rank[sure.ground]);
      },
    ),
    { seed: 4, numRuns: 200 },
  );
});
