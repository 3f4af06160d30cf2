import { describe, expect, test } from "vitest";
import { destination } from "../../scripts/geo/geodesic.ts";
import { boundaryCheck } from "../../scripts/safety/boundaryCheck.ts";
import { closedBearings } from "../../scripts/safety/closedBearings.ts";
import { groundBehind } from "../../scripts/safety/groundBehind.ts";
import { helicopterSpot } from "../../scripts/safety/helicopterSpot.ts";
import { partySeparation, type TakenSeat } from "../../scripts/safety/partySeparation.ts";
import { type SetbackFact, setbackCheck } from "../../scripts/safety/setbackCheck.ts";
import type { LineOfFire } from "../../scripts/shooting/linesOfFire.ts";
import { limits } from "./limits.ts";

// Limits here are defaults of the project or, for set-backs, made up: common practice, no source.

describe("C2 set-back", () => {
  const building: SetbackFact = { featureKind: "building", limitM: 137.2, waiver: "written", nearestM: 500 };
  const at = (...setbacks: SetbackFact[]) =>
    setbackCheck({ subject: "site", weapon: "rifle", setbacks }, limits);

  test.each([
    [137.1, "STOP"],
    [137.2, "CAUTION"],
    [147.1, "CAUTION"],
    [147.2, "OK"],
    [0, "STOP"],
    [null, "NOT CHECKED"],
  ] as const)("with a building at %s m of 137.2 is %s", (nearestM, result) => {
    expect(at({ ...building, nearestM }).result).toBe(result);
  });

  test("is the worst of all set-backs, and tells each", () => {
    const track = { ...building, featureKind: "track", limitM: 200, nearestM: 150 };
    const found = at(building, track);
    expect(found.result).toBe("STOP");
    expect(found.text).toBe(
      "Building at 500 m, the set-back is 137 m; track at 150 m: the set-back is 200 m without written leave.",
    );
    expect(found.inputs).toMatchObject({ "building nearestM": 500, "track limitM": 200, weapon: "rifle" });
  });

  test("without a weapon or a rule for it is NOT CHECKED", () => {
    expect(at().result).toBe("NOT CHECKED");
    expect(setbackCheck({ subject: "site", weapon: null, setbacks: null }, limits).result).toBe(
      "NOT CHECKED",
    );
  });
});

describe("C3 closed bearings", () => {
  const house = { fromDeg: 85, toDeg: 115, distanceM: 400, thingId: "house", reason: "building" };
  const of = (spans: (typeof house)[], leftToBackstop: (typeof house)[] = []) =>
    closedBearings({
      subject: "site",
      dangerM: 4800,
      closed: { spans, merged: [], leftToBackstop },
      lanes: [{ id: "A", bearingsDeg: [114, 115, 116] }],
    });

  test("is a CAUTION with any closed bearing, and names the lanes in it", () => {
    expect(of([house])).toMatchObject({ result: "CAUTION", inputs: { closedSpans: 1, nearestM: 400 } });
    expect(of([house]).text).toMatch(/building, the nearest at 400 m\. Lane A lies in part in them/);
  });

  test("is a CAUTION with a road that is left to the ground behind", () => {
    expect(of([], [{ ...house, reason: "road" }])).toMatchObject({ result: "CAUTION" });
  });

  test("is OK only with nothing protected in reach, NOT CHECKED without map or weapon", () => {
    expect(of([]).result).toBe("OK");
    const facts = { subject: "site", lanes: [] };
    expect(closedBearings({ ...facts, dangerM: 300, closed: null }).result).toBe("NOT CHECKED");
    expect(closedBearings({ ...facts, dangerM: null, closed: null }).result).toBe("NOT CHECKED");
  });
});

describe("C4 ground behind", () => {
  const line = (ground: "earth" | "far" | "none"): LineOfFire => {
    const worst = { rangeM: 50, ground, beyondM: 8, downDeg: 6, meetsAtDeg: 6, isHidden: false, why: null };
    return { lane: "A", bearingDeg: 90, worst, ranges: [worst], isSeenOnGround: true };
  };
  const of = (lines: LineOfFire[] | null, isSeenOnGround = true) =>
    groundBehind({ subject: "A", lines, isSeenOnGround, lengthM: 150, missing: "No terrain file" });

  test.each([
    { given: "earth on all degrees, seen", lines: [line("earth"), line("earth")], seen: true, result: "OK" },
    { given: "earth on all degrees, not seen", lines: [line("earth")], seen: false, result: "CAUTION" },
    { given: "one degree far", lines: [line("earth"), line("far")], seen: true, result: "CAUTION" },
    { given: "no ground behind", lines: [line("none")], seen: true, result: "CAUTION" },
    { given: "no ground data", lines: null, seen: true, result: "NOT CHECKED" },
    { given: "no degree", lines: [], seen: true, result: "NOT CHECKED" },
  ])("$given: $result", ({ lines, seen, result }) => {
    expect(of(lines, seen).result).toBe(result);
  });

  test("says not to shoot where nothing stops a bullet", () => {
    expect(of([line("none"), line("earth")]).text).toMatch(
      /^No backstop to 150 m on 1 of 2 degrees\. Do not shoot there: no ground behind\. Seen/,
    );
  });
});

describe("C30 boundary", () => {
  const of = (insideM: number, closedGround: string | null = null, what: "site" | "way" = "site") =>
    boundaryCheck({ subject: "site", what, place: { insideM, closedGround } }, limits);

  test.each([
    [-0.1, "STOP"],
    [0, "CAUTION"],
    [49.9, "CAUTION"],
    [50, "OK"],
  ] as const)("%s m inside is %s", (insideM, result) => {
    expect(of(insideM).result).toBe(result);
    expect(of(insideM, null, "way").result).toBe(result);
  });

  test("on closed ground is a STOP, however far inside", () => {
    expect(of(500, "Bird plot")).toMatchObject({ result: "STOP", text: "On closed ground: Bird plot." });
  });

  test("without a line is NOT CHECKED", () => {
    expect(boundaryCheck({ subject: "site", what: "site", place: null }, limits).result).toBe("NOT CHECKED");
  });
});

describe("C17 helicopter spot", () => {
  // 40 x 40 m preferred, 30 x 30 m least, 5 and 10 degrees: search and rescue guides, as read for the safety catalogue
  const of = (sizeM: number | null, slopeDeg: number | null, noWires: boolean | null) =>
    helicopterSpot({ subject: "spot", sizeM, slopeDeg, noWires }, limits).result;

  test.each([
    [40, 5, true, "OK"],
    [39.9, 5, true, "CAUTION"],
    [29.9, 5, true, "STOP"],
    [40, 5.1, true, "CAUTION"],
    [40, 10, true, "CAUTION"],
    [40, 10.1, true, "STOP"],
    [40, 3, false, "STOP"],
    [40, 3, null, "NOT CHECKED"],
    [null, 3, true, "NOT CHECKED"],
    [40, null, true, "NOT CHECKED"],
    [20, null, null, "STOP"],
  ] as const)("%s m wide, %s degrees, open %s: %s", (sizeM, slopeDeg, noWires, result) => {
    expect(of(sizeM, slopeDeg, noWires)).toBe(result);
  });
});

describe("C24 hunters apart", () => {
  const here = { lat: -42.7, lon: 172.12 };
  const seat = (given: Partial<TakenSeat> = {}): TakenSeat => ({
    hunterId: "a",
    hunterName: "A",
    siteId: "west",
    siteName: "West",
    position: here,
    lanes: [{ id: "A", bearingDeg: 88, widthDeg: 8 }],
    dangerM: 4800,
    isFirearm: true,
    ...given,
  });
  const other = (bearingDeg: number, distanceM: number, given: Partial<TakenSeat> = {}): TakenSeat =>
    seat({
      hunterId: "b",
      hunterName: "B",
      siteId: "east",
      siteName: "East",
      position: destination(here, bearingDeg, distanceM),
      lanes: [],
      ...given,
    });
  const of = (b: TakenSeat, a: TakenSeat = seat(), hasStrip = true) =>
    partySeparation([a, b], () => hasStrip, 50, limits)[0]!;

  test("one in the lane of the other is a STOP, whose lane it is does not matter", () => {
    expect(of(other(88, 345)).result).toBe("STOP");
    const facing = other(180, 345, { lanes: [{ id: "B", bearingDeg: 0, widthDeg: 10 }] });
    expect(of(facing).text).toMatch(/West lies in lane B of East/);
    expect(of(facing).result).toBe("STOP");
  });

  test("a lane that passes 50 m beside him holds him, one that passes farther does not", () => {
    // edge of the lane at 92; 50 m at 1000 m are 2.862 degrees
    expect(of(other(94.8, 1000)).result).toBe("STOP");
    expect(of(other(94.9, 1000)).result).toBe("OK");
  });

  test("across north too", () => {
    const north = seat({ lanes: [{ id: "A", bearingDeg: 358, widthDeg: 8 }] });
    expect(of(other(1, 900), north).result).toBe("STOP");
    expect(of(other(10, 900), north).result).toBe("OK");
  });

  test("within danger distance without a no-fire strip is a CAUTION, out of it none", () => {
    expect(of(other(180, 800), seat(), false).result).toBe("CAUTION");
    expect(of(other(180, 800), seat(), true).result).toBe("OK");
    expect(of(other(180, 4801), seat(), false)).toMatchObject({ result: "OK" });
    expect(of(other(88, 4801), seat(), false)).toMatchObject({ result: "OK" });
  });

  test("nearer than 200 m with firearms is a CAUTION always, with bows it is not", () => {
    expect(of(other(180, 199.9)).result).toBe("CAUTION");
    expect(of(other(180, 200.1)).result).toBe("OK");
    const bow = { dangerM: 300, isFirearm: false };
    expect(of(other(180, 150, bow), seat(bow)).result).toBe("OK");
  });

  test("an unknown weapon is NOT CHECKED, in a lane a STOP all the same", () => {
    const unknown = { dangerM: null, isFirearm: null };
    expect(of(other(180, 3000, unknown)).result).toBe("NOT CHECKED");
    expect(of(other(88, 3000), seat(unknown)).result).toBe("STOP");
  });

  test("two at one tree with a lane are a STOP", () => {
    expect(of(other(0, 0)).result).toBe("STOP");
  });

  test("three seats are three pairs, one seat none", () => {
    const seats = [seat(), other(180, 900), other(270, 900, { hunterId: "c" })];
    expect(partySeparation(seats, () => true, 50, limits)).toHaveLength(3);
    expect(partySeparation(seats.slice(0, 1), () => true, 50, limits)).toEqual([]);
  });
});
