import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type StabilityBand,
  type StabilityQuestion,
  stabilityClass,
} from "../../scripts/air/stabilityClass.ts";

const midday: StabilityQuestion = { windMps: 2.5, cloudShare: 0, isNight: false, sunAltitudeDeg: 65 };
const classOf = (part: Partial<StabilityQuestion>) => stabilityClass({ ...midday, ...part }).stability;

describe("stability class", () => {
  // Pasquill 1961, in Vallero, table 19-3: strong, moderate, slight sun, cloudy night, clear night; no tolerance, letters.
  // Light wind by night is not defined in the table; F stands for it.
  test.each<[string, number[], StabilityBand[]]>([
    ["under 2 m/s", [0, 1, 1.99], ["A", "A-B", "B", "F", "F"]],
    ["2 to 3 m/s", [2, 2.99], ["A-B", "B", "C", "E", "F"]],
    ["3 to 5 m/s", [3, 4.99], ["B", "B-C", "C", "D", "E"]],
    ["5 to 6 m/s", [5, 6], ["C", "C-D", "D", "D", "D"]],
    ["over 6 m/s", [6.01, 20], ["C", "D", "D", "D", "D"]],
  ])("%s", (_, winds, row) => {
    for (const windMps of winds) {
      const sunny = [65, 45, 20].map((sunAltitudeDeg) => classOf({ windMps, sunAltitudeDeg }));
      const nights = [4 / 8, 3 / 8].map((cloudShare) => classOf({ windMps, cloudShare, isNight: true }));
      expect([...sunny, ...nights]).toEqual(row);
    }
  });

  test("is neutral under overcast, by day and night, at any speed", () => {
    for (const isNight of [true, false]) {
      for (const windMps of [0, 1, 2.5, 4, 9]) expect(classOf({ windMps, cloudShare: 1, isNight })).toBe("D");
    }
  });

  // the columns of the sun by altitude and the weakening by broken cloud: Turner 1970, from memory
  test("takes the sun by its height and by broken cloud", () => {
    expect(classOf({ sunAltitudeDeg: 60 })).toBe("B");
    expect(classOf({ sunAltitudeDeg: 35 })).toBe("C");
    expect(classOf({ sunAltitudeDeg: 3 })).toBe("C");
    expect(classOf({ cloudShare: 4 / 8 })).toBe("A-B");
    expect(classOf({ cloudShare: 6 / 8 })).toBe("B");
    expect(classOf({ sunAltitudeDeg: 45, cloudShare: 6 / 8 })).toBe("C");
  });

  test("says why it is not known", () => {
    for (const windMps of [Number.NaN, -1, Number.POSITIVE_INFINITY]) {
      expect(stabilityClass({ ...midday, windMps })).toEqual({
        stability: null,
        why: "the wind is not known",
      });
    }
    for (const cloudShare of [Number.NaN, -0.1, 1.1]) {
      expect(stabilityClass({ ...midday, cloudShare })).toEqual({
        stability: null,
        why: "the cloud is not known",
      });
    }
    const sunless = { ...midday, sunAltitudeDeg: Number.NaN };
    expect(stabilityClass({ ...midday, sunAltitudeDeg: -1 }).stability).toBeNull();
    expect(stabilityClass(sunless)).toEqual({ stability: null, why: "the height of the sun is not known" });
    expect(stabilityClass({ ...sunless, isNight: true }).stability).toBe("F");
  });

  test("comes no further from neutral as the wind rises", () => {
    const rank = (band: StabilityBand) =>
      Math.abs(
        [...band]
          .filter((c) => c !== "-")
          .reduce((sum, c, _i, all) => sum + ("ABCDEF".indexOf(c) - 3) / all.length, 0),
      );
    const wind = fc.double({ min: 0, max: 15, noNaN: true });
    fc.assert(
      fc.property(
        wind,
        wind,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.boolean(),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (one, other, cloudShare, isNight, sunAltitudeDeg) => {
          const at = (windMps: number) => rank(classOf({ windMps, cloudShare, isNight, sunAltitudeDeg })!);
          expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)));
        },
      ),
      { seed: 13 },
    );
  });
});
