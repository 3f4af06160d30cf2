import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { blindSectorDeg } from "../../scripts/terrain/blindSector.ts";
import { hiddenBehindCover, leastPlatformHeightM } from "../../scripts/terrain/hiddenBehindCover.ts";

describe("ground behind cover", () => {
  test("an eye at 6 m loses 20 m of ground behind 1.5 m of cover at 60 m", () => {
    expect(hiddenBehindCover(6, 1.5, 60)).toEqual({ hiddenM: 20, why: null });
  });

  test("an eye no higher than the cover loses all of it, and says why", () => {
    expect(hiddenBehindCover(1.5, 1.5, 60)).toEqual({
      hiddenM: null,
      why: "the eye is not higher than the cover",
    });
    expect(hiddenBehindCover(1, 1.5, 60).hiddenM).toBeNull();
  });

  test("no cover hides nothing", () => {
    expect(hiddenBehindCover(6, 0, 60).hiddenM).toBe(0);
    expect(hiddenBehindCover(0, 0, 60).hiddenM).toBe(0);
  });

  test("from the least platform the ground at the target begins to show", () => {
    expect(
      leastPlatformHeightM(
        { coverHeightM: 1.5, coverDistanceM: 60, targetDistanceM: 80, targetHeightM: 0 },
        1.2,
      ),
    ).toBeCloseTo(4.8, 12);
    const height = fc.double({ min: 0.2, max: 4, noNaN: true });
    const distance = fc.double({ min: 5, max: 150, noNaN: true });
    fc.assert(
      fc.property(height, distance, distance, (coverHeightM, coverDistanceM, behindM) => {
        const lane = {
          coverHeightM,
          coverDistanceM,
          targetDistanceM: coverDistanceM + behindM,
          targetHeightM: 0,
        };
        const eyeM = leastPlatformHeightM(lane, 0);
        expect(hiddenBehindCover(eyeM, coverHeightM, coverDistanceM).hiddenM! / behindM).toBeCloseTo(1, 6);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test("a target taller than the cover shows from the ground", () => {
    const lane = { coverHeightM: 0.5, coverDistanceM: 20, targetDistanceM: 60, targetHeightM: 1 };
    expect(leastPlatformHeightM(lane, 1.5)).toBe(0);
  });

  test.each([
    () => hiddenBehindCover(-1, 1, 10),
    () => hiddenBehindCover(6, Number.NaN, 10),
    () =>
      leastPlatformHeightM({ coverHeightM: 1, coverDistanceM: 50, targetDistanceM: 50, targetHeightM: 0 }, 1),
  ])("lengths that can not be are refused", (call) => {
    expect(call).toThrow(RangeError);
  });
});

describe("blind sector behind the trunk", () => {
  test("a trunk of 15 cm radius 45 cm from the eye hides 28.96 degrees", () => {
    // 2 asin(0.15 / 0.6)
    expect(blindSectorDeg(0.15, 0.45)).toBeCloseTo(28.955, 3);
  });

  test("with the eye at the bark it hides half of everything, and less the farther away", () => {
    expect(blindSectorDeg(0.2, 0)).toBeCloseTo(180, 12);
    expect(blindSectorDeg(0.2, 0.3)).toBeGreaterThan(blindSectorDeg(0.2, 0.6));
    expect(blindSectorDeg(0.25, 0.5)).toBeGreaterThan(blindSectorDeg(0.15, 0.5));
  });

  test.each([
    [0, 0.5],
    [0.2, -0.1],
    [Number.NaN, 0.5],
  ])("radius %f, distance %f is refused", (radiusM, distanceM) => {
    expect(() => blindSectorDeg(radiusM, distanceM)).toThrow(RangeError);
  });
});
