import { describe, expect, test } from "vitest";
import { type TrunkMeasures, trunkDiameters, trunkFit } from "../../scripts/safety/trunkFit.ts";
import { limits, stand } from "./limits.ts";

const tree = (parts: Partial<TrunkMeasures>): TrunkMeasures => ({ measuredAtHeightM: 1.3, ...parts });
const fits = (
  parts: Partial<TrunkMeasures> | null,
  platformHeightM: number | null = 5.3,
  other: Partial<typeof stand> = {},
) =>
  trunkFit(
    { subject: "s", stand: { ...stand, ...other }, tree: parts && tree(parts), platformHeightM },
    limits,
  );

describe("diameter of a trunk", () => {
  test("a girth of 974 mm is 310 mm through; 4 m up it has lost 20 to 60 mm", () => {
    const found = trunkDiameters(tree({ girthMm: 974 }), 5.3, limits);
    expect(found?.diameterAtMeasureMm).toBeCloseTo(974 / Math.PI, 9);
    expect(found?.diameterAtPlatformMm[0]).toBeCloseTo(974 / Math.PI - 60, 9);
    expect(found?.diameterAtPlatformMm[1]).toBeCloseTo(974 / Math.PI - 20, 9);
    expect(found?.taperMmPerM).toEqual([5, 15]);
  });

  test("a second girth takes the place of the taper", () => {
    const found = trunkDiameters(tree({ diameterMm: 310, girthAtPlatformMm: 800 }), 5.3, limits);
    expect(found).toEqual({
      diameterAtMeasureMm: 310,
      diameterAtPlatformMm: [800 / Math.PI, 800 / Math.PI],
      taperMmPerM: null,
    });
  });

  test("a platform below the measured height sits on thicker trunk, least first", () => {
    const [least, most] = trunkDiameters(
      tree({ diameterMm: 300, measuredAtHeightM: 3 }),
      1,
      limits,
    )!.diameterAtPlatformMm;
    expect([least, most]).toEqual([310, 330]);
  });

  test("a thin trunk never ends below nothing, a trunk without a measure is not known", () => {
    expect(trunkDiameters(tree({ diameterMm: 50 }), 10, limits)?.diameterAtPlatformMm[0]).toBe(0);
    expect(trunkDiameters(tree({}), 5, limits)).toBeNull();
  });
});

describe("C5, trunk and stand (200 to 500 mm), platform 4 m above the measure, taper 5 to 15 mm a metre", () => {
  test.each([
    { diameterMm: 260, result: "OK" }, // 200 mm up there at the most taper
    { diameterMm: 259.9, result: "STOP" },
    { diameterMm: 500, result: "OK" },
    { diameterMm: 500.1, result: "STOP" },
  ])("$diameterMm mm is $result", ({ diameterMm, result }) =>
    expect(fits({ diameterMm }).result).toBe(result),
  );

  test.each([
    { girthAtPlatformMm: Math.ceil(200 * Math.PI), result: "OK" },
    { girthAtPlatformMm: Math.floor(200 * Math.PI), result: "STOP" },
    { girthAtPlatformMm: Math.floor(500 * Math.PI), result: "OK" },
    { girthAtPlatformMm: Math.ceil(500 * Math.PI), result: "STOP" },
  ])("a girth of $girthAtPlatformMm mm at the platform is $result", ({ girthAtPlatformMm, result }) => {
    expect(fits({ diameterMm: 400, girthAtPlatformMm }).result).toBe(result);
  });

  test("the figures stand in the sentence and beside it", () => {
    expect(fits({ girthMm: 974 })).toEqual({
      id: "C5",
      result: "OK",
      subject: "s",
      text: "Trunk 310 mm at 1.3 m, about 250 to 290 mm at 5.3 m; stand takes 200 to 500 mm.",
      inputs: {
        girthMm: 974,
        diameterMm: null,
        measuredAtHeightM: 1.3,
        girthAtPlatformMm: null,
        platformHeightM: 5.3,
        trunkMinMm: 200,
        trunkMaxMm: 500,
        diameterAtPlatformMinMm: 250,
        diameterAtPlatformMaxMm: 290,
      },
    });
  });

  test("a guessed girth that fits is a caution, one that does not is still a stop", () => {
    expect(fits({ girthMm: 974, guessed: ["girthMm"] }).result).toBe("CAUTION");
    expect(fits({ girthMm: 700, guessed: ["girthMm"] })).toMatchObject({
      result: "STOP",
      text: "Trunk 223 mm at 1.3 m, about 163 to 203 mm at 5.3 m; stand takes at least 200 mm: does not fit.",
    });
  });

  test("without girth, tree, height or label it is not checked", () => {
    expect(fits({}).text).toBe("Trunk not checked: girth not entered.");
    expect(fits(null, null).text).toBe("Trunk not checked: tree and platform height not entered.");
    for (const check of [
      fits({}),
      fits(null),
      fits({ diameterMm: 300 }, null),
      fits({ diameterMm: 300 }, 5, { trunkMaxMm: null }),
    ]) {
      expect(check.result).toBe("NOT CHECKED");
    }
  });

  test("one known end of the label is enough for a stop", () => {
    expect(fits({ diameterMm: 190 }, 5, { trunkMaxMm: null }).result).toBe("STOP");
  });

  test("a stand that drops 3 mm for each mm of taper drops 180 mm over 60 mm at most", () => {
    expect(fits({ diameterMm: 310 }, 5.3, { dropMmPerMmTaper: 3 }).inputs.platformDropMaxMm).toBe(180);
  });
});
