import { describe, expect, test } from "vitest";
import { type Lane, laneBearings, laneLengthM, linesOfFire } from "../../scripts/shooting/linesOfFire.ts";
import { rules } from "./rules.ts";

const lane: Lane = { id: "A", bearingDeg: 266, widthDeg: 8, maxRangeM: 190, isSeenOnGround: true };
const seat = { stepM: 2.5, muzzleHeightM: 6, gridErrorM: 2, laneLimitM: 200 };
/** Level, with a bank of 45 degrees on all sides that begins at a distance. */
const bowl = (atM: number) => (east: number, north: number) => Math.max(0, Math.hypot(east, north) - atM);

describe("degrees of a lane", () => {
  test.each([
    { given: "a whole lane", bearingDeg: 266, widthDeg: 8, first: 262, last: 270, count: 9 },
    {
      given: "half degrees, rounded outward",
      bearingDeg: 316,
      widthDeg: 15,
      first: 308,
      last: 324,
      count: 17,
    },
    { given: "a lane over north", bearingDeg: 1, widthDeg: 10, first: 356, last: 6, count: 11 },
    { given: "the narrowest lane", bearingDeg: 88, widthDeg: 1, first: 87, last: 89, count: 3 },
  ])("$given: $first to $last", ({ bearingDeg, widthDeg, first, last, count }) => {
    const found = laneBearings({ ...lane, bearingDeg, widthDeg });
    expect([found[0], found.at(-1), found.length]).toEqual([first, last, count]);
  });
});

describe("range steps", () => {
  const ranges = (maxRangeM: number, laneLimitM: number) =>
    linesOfFire({ ...lane, maxRangeM }, { ...seat, laneLimitM, heightAt: bowl(250) }, rules)[0]!.ranges.map(
      ({ rangeM }) => rangeM,
    );

  test("go by 25 m to the end of the lane, which is one", () => {
    expect(ranges(190, 200)).toEqual([25, 50, 75, 100, 125, 150, 175, 190]);
    expect(ranges(100, 200)).toEqual([25, 50, 75, 100]);
    expect(ranges(20, 200)).toEqual([20]);
  });

  test("are cut to the limit of the weapon", () => {
    expect(ranges(190, 30)).toEqual([25, 30]);
    expect(laneLengthM({ maxRangeM: 240 }, 200, rules)).toBe(200);
    expect(laneLengthM({ maxRangeM: 240 }, 500, rules)).toBe(200);
  });
});

test("a degree is as good as its worst range", () => {
  // level ground is earth to 92 m and far at 100 to 190 m with a grid 2 m off, but for the bank behind 175 and 190 m
  const [line] = linesOfFire(lane, { ...seat, heightAt: bowl(195) }, rules);
  expect(line!.ranges.map(({ ground }) => ground)).toEqual([
    "earth",
    "earth",
    "earth",
    "far",
    "far",
    "earth",
    "earth",
    "earth",
  ]);
  expect(line!.worst).toBe(line!.ranges[4]);
});

test("turning ground and lane together turns the answer", () => {
  // a bank to the east only, turned by 37 degrees
  const east = (e: number) => Math.max(0, e - 60);
  const turn = (37 * Math.PI) / 180;
  const turned = (e: number, n: number) => east(e * Math.cos(turn) - n * Math.sin(turn));
  const at = (bearingDeg: number, heightAt: (e: number, n: number) => number) =>
    linesOfFire({ ...lane, bearingDeg, widthDeg: 40 }, { ...seat, heightAt }, rules).map(({ worst }) => [
      worst.ground,
      worst.beyondM?.toFixed(6),
    ]);
  expect(at(90 + 37, turned)).toEqual(at(90, east));
});

test("a mirrored scene mirrors the answer", () => {
  const slope = (e: number, n: number) => 0.1 * e + 0.02 * n + Math.max(0, e - 90);
  const at = (bearingDeg: number, heightAt: (e: number, n: number) => number) =>
    linesOfFire({ ...lane, bearingDeg }, { ...seat, heightAt }, rules).map(({ worst }) =>
      worst.beyondM?.toFixed(6),
    );
  expect(at(300, (e, n) => slope(-e, n))).toEqual(at(60, slope).toReversed());
});
