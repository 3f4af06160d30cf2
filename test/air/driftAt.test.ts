import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Drift, driftAt, type SlopeAir } from "../../scripts/air/driftAt.ts";
import { type Approach, reachPieces, reachShare } from "../../scripts/air/reachShare.ts";
import { siteVerdict } from "../../scripts/air/siteVerdict.ts";
import type { Cover, Phase } from "../../scripts/air/slopeSite.ts";
import { type SiteWind, windAtSite } from "../../scripts/air/windAtSite.ts";
import { approach, constants } from "./planeSite.ts";

interface Scene {
  wind: [fromDeg: number, speedMps: number];
  air: [phase: Phase, speedMps: number, toDeg: number];
  cover?: Cover;
  sxDeg?: number;
}

function scene({ wind, air, cover = "timber", sxDeg = 0 }: Scene): { drift: Drift; wind: SiteWind } {
  const open = { windFromDeg: wind[0], windSpeedMps: wind[1] };
  const site = windAtSite(open, { cover, sxDeg: new Array(16).fill(sxDeg) }, constants);
  if (!site) throw new Error("the wind is known");
  const slopeAir: SlopeAir = { phase: air[0], speedMps: air[1], toDeg: air[2], landform: "slope" };
  return { drift: driftAt(site, slopeAir, constants), wind: site };
}

function judged(
  of: Scene,
  approaches: readonly Approach[],
): { share: number; verdict: string; reason: string } {
  const { drift, wind } = scene(of);
  const share = reachShare(drift, reachPieces(approaches, constants));
  const facts = {
    drift,
    share,
    openMps: wind.openMps,
    isLee: wind.isLee,
    phase: of.air[0],
    approaches,
    constants,
  };
  return { share, ...siteVerdict(facts) };
}

// The still-air speed whose faded part is the speed of the worked example.
const unfaded = (speedMps: number, shelteredMps: number): number =>
  speedMps / Math.min(1, (7 - shelteredMps) / 5);

describe("worked drifts (tolerance: the last digit)", () => {
  test("wind from S and air falling E meet in a drift to NE; E of it is reached, S is not", () => {
    const of: Scene = { wind: [180, 2.5], air: ["falling", unfaded(0.5, 2.5), 90] };
    const { drift } = scene(of);
    expect(drift.windMps).toBeCloseTo(0.375, 6);
    expect(drift.meanToDeg).toBeCloseTo(53.13, 2);
    expect(drift.driftSpeedMps).toBeCloseTo(0.625, 4);
    expect(drift.sigmaMps).toBeCloseTo(0.3132, 3);
    expect(drift.kappa).toBeCloseTo(1.9952, 3);
    expect(judged(of, [approach(70, 110)]).share).toBeCloseTo(0.3778, 3);
    expect(judged(of, [approach(70, 110)]).verdict).toBe("avoid");
    expect(judged(of, [approach(160, 200)]).share).toBeCloseTo(0.0078, 3);
    expect(judged(of, [approach(160, 200)]).verdict).toBe("suits");
    const two = judged(of, [approach(20, 60, 0.5), approach(50, 110, 0.8)]);
    expect(Math.abs(two.share - 0.6786)).toBeLessThan(0.0005);
    expect(two.verdict).toBe("avoid");
  });

  test("the same wind with air that rises W", () => {
    const of: Scene = { wind: [180, 2.5], air: ["rising", unfaded(0.8, 2.5), 270] };
    const { drift } = scene(of);
    expect(drift.meanToDeg).toBeCloseTo(295.11, 1);
    expect(drift.driftSpeedMps).toBeCloseTo(0.8835, 3);
    expect(drift.sigmaMps).toBeCloseTo(0.382, 3);
    expect(drift.kappa).toBeCloseTo(2.3131, 3);
    expect(judged(of, [approach(70, 110)]).share).toBeCloseTo(0.0019, 3);
    expect(judged(of, [approach(70, 110)]).verdict).toBe("suits");
  });

  test("calm is never better than marginal", () => {
    const turning = judged({ wind: [0, 0], air: ["turning", 0, 90] }, [approach(70, 110)]);
    expect(turning.share).toBeCloseTo(60 / 360, 6);
    expect(turning.verdict).toBe("marginal");
    const falling: Scene = { wind: [0, 0], air: ["falling", 0.59, 90] };
    expect(scene(falling).drift.kappa).toBeCloseTo(1.9929, 3);
    expect(judged(falling, [approach(250, 290)]).share).toBeCloseTo(0.0039, 3);
    expect(judged(falling, [approach(250, 290)]).verdict).toBe("marginal");
  });

  test("wind from W over open ground suits an approach upwind; in the lee it swirls", () => {
    const open = { wind: [270, 8], air: ["falling", 0, 90], cover: "open" } as const;
    const crest: Scene = { ...open, wind: [270, 8], air: ["falling", 0, 90], sxDeg: -5 };
    expect(scene(crest).drift.windMps).toBeCloseTo(3.15, 6);
    expect(scene(crest).drift.kappa).toBeCloseTo(2.989, 3);
    expect(judged(crest, [approach(250, 290)]).verdict).toBe("suits");
    expect(judged(crest, [approach(250, 290)]).share).toBeCloseTo(0.0002, 3);
    const lee: Scene = { ...crest, sxDeg: 20 };
    expect(scene(lee).drift.kappa).toBeCloseTo(0.9376, 3);
    expect(judged(lee, [approach(250, 290)]).share).toBeCloseTo(0.0407, 3);
    expect(judged(lee, [approach(250, 290)]).verdict).toBe("marginal");
    expect(judged(lee, [approach(250, 290)]).reason).toMatch(/lee/);
  });
});

describe("verdicts that every hunter on a hill holds to (common practice, no source)", () => {
  // A slope that faces E: uphill is W. Light wind along the slope from N, so that neither phase is helped by it.
  const falling: Scene = { wind: [0, 1], air: ["falling", 0.55, 90] };
  const rising: Scene = { wind: [0, 1], air: ["rising", 0.85, 270] };

  test("an approach below the site fails while the air falls", () => {
    expect(judged(falling, [approach(70, 110)]).verdict).toBe("avoid");
    expect(judged(rising, [approach(70, 110)]).verdict).toBe("suits");
  });

  test("an approach above the site fails while the air rises", () => {
    expect(judged(rising, [approach(250, 290)]).verdict).toBe("avoid");
    expect(judged(falling, [approach(250, 290)]).verdict).toBe("suits");
  });

  test("an approach off to the upwind side survives both", () => {
    expect(judged(falling, [approach(-20, 20)]).verdict).toBe("suits");
    expect(judged(rising, [approach(-20, 20)]).verdict).toBe("suits");
  });
});

describe("what reaches an approach", () => {
  const angle = fc.double({ min: 0, max: 359.99, noNaN: true });
  const width = fc.double({ min: 1, max: 200, noNaN: true });
  const use = fc.double({ min: 0, max: 1, noNaN: true });
  const kappa = fc.double({ min: 0, max: 4, noNaN: true });
  const shareOf = (k: number, to: number, approaches: readonly Approach[]): number =>
    reachShare({ kappa: k, meanToDeg: to }, reachPieces(approaches, constants));

  test("lies in 0 to 1 and grows with width and with use", () => {
    fc.assert(
      fc.property(kappa, angle, angle, width, use, use, (k, to, from, w, a, b) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        const base = shareOf(k, to, [approach(from, from + w, less)]);
        expect(base).toBeGreaterThanOrEqual(0);
        expect(base).toBeLessThanOrEqual(1);
        expect(shareOf(k, to, [approach(from, from + w, more)])).toBeGreaterThanOrEqual(base - 1e-9);
        expect(shareOf(k, to, [approach(from, from + w + 30, less)])).toBeGreaterThanOrEqual(base - 1e-6);
        expect(
          shareOf(k, to, [approach(from, from + w, less), approach(to, to + 20, more)]),
        ).toBeGreaterThanOrEqual(base - 1e-6);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test("turns with the scene and mirrors with it", () => {
    fc.assert(
      fc.property(kappa, angle, angle, width, angle, (k, to, from, w, turn) => {
        const base = shareOf(k, to, [approach(from, from + w)]);
        expect(shareOf(k, (to + turn) % 360, [approach(from + turn, from + w + turn)])).toBeCloseTo(base, 6);
        expect(shareOf(k, (360 - to) % 360, [approach(360 - from - w, 360 - from)])).toBeCloseTo(base, 6);
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  test("without steadiness is the share of the circle, margin included", () => {
    expect(shareOf(0, 123, [approach(350, 30)])).toBeCloseTo(60 / 360, 6);
    expect(shareOf(0, 123, [approach(0, 360, 0.5)])).toBeCloseTo(0.5, 6);
    expect(shareOf(2, 123, [approach(10, 10)])).toBeGreaterThan(0);
  });

  test("does not count an approach beyond scent range", () => {
    const far: Approach = { id: "far", bearingsDeg: [70, 110], distanceM: [300, 400], use: 1 };
    expect(shareOf(3, 90, [far])).toBe(0);
    expect(() => reachPieces([{ ...far, use: 2 }], constants)).toThrow(/use must be 0 to 1/);
  });

  test("the spread of a drift is never under its floor", () => {
    fc.assert(
      fc.property(
        angle,
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.constantFrom<Cover>("open", "dense timber"),
        (from, speed, cover) => {
          const { drift } = scene({ wind: [from, speed], air: ["falling", 0.2, 90], cover });
          expect(drift.sigmaMps).toBeGreaterThanOrEqual(constants.spreadMinMps);
          expect(Number.isFinite(drift.meanToDeg)).toBe(true);
        },
      ),
      { seed: 6, numRuns: 200 },
    );
  });
});
