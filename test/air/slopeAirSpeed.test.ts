import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cloudCoolingShare, cloudGlobalShare } from "../../scripts/air/radiation.ts";
import {
  fallGrowthShare,
  risingSpeedMps,
  type SlopeAirDrive,
  slopeAirFade,
  steadyFallingSpeedMps,
  steepnessFactor,
} from "../../scripts/air/slopeAirSpeed.ts";
import { COVERS, type Cover } from "../../scripts/air/slopeSite.ts";
import { constants } from "./planeSite.ts";

function drive(clearNetWm2: number, slopeDeg: number, cover: Cover, cloud = 0): SlopeAirDrive {
  const globalShare = cloudGlobalShare(cloud, constants);
  const coolingShare = cloudCoolingShare(cloud, constants);
  const steepness = steepnessFactor("slope", slopeDeg, constants);
  return { landform: "slope", steepness, cover, clearNetWm2, globalShare, coolingShare };
}

describe("speed of the slope air", () => {
  test("worked examples of rising air (tolerance: the last digit)", () => {
    const faded = (cloud: number): number =>
      risingSpeedMps(drive(300, 20, "timber", cloud), constants) * slopeAirFade(2.5, constants);
    expect([0, 0.5, 1].map((c) => faded(c).toFixed(4))).toEqual(["0.7784", "0.7231", "0.1946"]);
    expect(risingSpeedMps(drive(300, 20, "open"), constants)).toBeCloseTo(1.9219, 4);
    expect(slopeAirFade(7, constants)).toBe(0);
  });

  test("worked examples of falling air (tolerance: the last digit)", () => {
    const open = steadyFallingSpeedMps(drive(-75, 20, "open"), constants) * fallGrowthShare(90, constants);
    expect(open).toBeCloseTo(1.3, 4);
    const timber = steadyFallingSpeedMps(drive(-75, 10, "timber"), constants) * slopeAirFade(2.5, constants);
    expect(timber).toBeCloseTo(0.42, 4);
    const first = steadyFallingSpeedMps(drive(10, 20, "timber"), constants) * fallGrowthShare(0, constants);
    expect(first).toBeCloseTo(0.1495, 4);
  });

  test("cloud and wind only ever weaken it, and it stays under 2.7 m/s (handbooks: 0 to 6)", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: -150, max: 900, noNaN: true }),
        fc.double({ min: 3, max: 60, noNaN: true }),
        fc.constantFrom(...COVERS),
        share,
        share,
        (net, slope, cover, a, b) => {
          const [less, more] = a < b ? [a, b] : [b, a];
          for (const speed of [risingSpeedMps, steadyFallingSpeedMps]) {
            const clear = speed(drive(net, slope, cover, less), constants);
            expect(speed(drive(net, slope, cover, more), constants)).toBeLessThanOrEqual(clear + 1e-12);
            expect(clear).toBeGreaterThanOrEqual(0);
            expect(clear).toBeLessThan(2.7);
          }
          expect(slopeAirFade(more * 10, constants)).toBeLessThanOrEqual(slopeAirFade(less * 10, constants));
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });

  test("crest and flat ground have no slope air of their own", () => {
    for (const landform of ["crest", "flat"] as const) {
      const level = {
        ...drive(300, 2, "open"),
        landform,
        steepness: steepnessFactor(landform, 2, constants),
      };
      expect(risingSpeedMps(level, constants)).toBe(0);
      expect(steadyFallingSpeedMps(level, constants)).toBe(0);
    }
  });
});
