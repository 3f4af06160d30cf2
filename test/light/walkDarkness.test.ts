import { Body, Illumination, Observer, SearchAltitude, SearchRiseSet } from "astronomy-engine";
import { describe, expect, test } from "vitest";
import { walkDarkness } from "../../scripts/light/walkDarkness.ts";

const constants = { darkMoonShare: 0.25, firstLightSunDeg: -6 };
const position = { lat: 45, lon: 0 };
const observer = new Observer(45, 0, 0);
const at = (text: string) => new Date(`${text}:00Z`);
const walk = (from: string, to: string) => walkDarkness({ from: at(from), to: at(to), position }, constants);

describe("dark minutes of a walk", () => {
  test("before dawn without a moon every minute until the sun is at -6 degrees is dark", () => {
    // New moon 18 March 2026. An independent almanac library gives first light; minutes are judged at their middle.
    const firstLight = SearchAltitude(Body.Sun, observer, 1, at("2026-03-19T00:00"), 1, -6)!.date;
    const expected = (firstLight.getTime() - at("2026-03-19T04:30").getTime()) / 60_000;
    const found = walk("2026-03-19T04:30", "2026-03-19T06:30");
    expect(Math.abs(found.darkMin - expected)).toBeLessThanOrEqual(1);
    expect(found.moonlitMin).toBe(0);
    expect(found.dark).toHaveLength(1);
  });

  test("under a full moon that is up the night is not dark", () => {
    const found = walk("2026-04-02T00:00", "2026-04-02T01:00"); // full moon 2 April 2026 02:12 UTC
    expect(found).toMatchObject({
      darkMin: 0,
      moonlitMin: 60,
      dark: [],
      moon: { isUpAtStart: true, isUpAtEnd: true },
    });
    expect(
      Math.abs(found.moon.illuminated - Illumination(Body.Moon, at("2026-04-02T00:00")).phase_fraction),
    ).toBeLessThan(0.01);
  });

  test("darkness ends when a well lit moon rises", () => {
    const moonrise = SearchRiseSet(Body.Moon, observer, 1, at("2026-04-05T20:00"), 1)!.date;
    const from = new Date(moonrise.getTime() - 30 * 60_000);
    const to = new Date(moonrise.getTime() + 30 * 60_000);
    const found = walkDarkness({ from, to, position }, constants);
    expect(Math.abs(found.darkMin - 30)).toBeLessThanOrEqual(2); // moonrise to 1 min, minutes whole
    expect(found.moon).toMatchObject({ isUpAtStart: false, isUpAtEnd: true });
  });

  test("a thin moon above the horizon gives no light, the same moon does with a lower limit", () => {
    const evening = { from: at("2026-03-20T19:20"), to: at("2026-03-20T19:50"), position };
    const lit = Illumination(Body.Moon, evening.from).phase_fraction;
    expect(lit).toBeLessThan(0.1);
    expect(walkDarkness(evening, constants)).toMatchObject({ darkMin: 30, moon: { isUpAtStart: true } });
    expect(walkDarkness(evening, { ...constants, darkMoonShare: lit / 2 }).darkMin).toBe(0);
  });

  test("a walk by day is not dark, a walk of no length has no minutes", () => {
    expect(walk("2026-03-19T11:00", "2026-03-19T12:30").darkMin).toBe(0);
    expect(walk("2026-03-19T02:00", "2026-03-19T02:00").darkMin).toBe(0);
  });

  test("parts of a minute count as parts", () => {
    const to = new Date(at("2026-03-19T02:10").getTime() + 30_000);
    expect(walkDarkness({ from: at("2026-03-19T02:00"), to, position }, constants).darkMin).toBe(10.5);
  });

  test("a walk that ends before it starts, or lasts over a day, is refused", () => {
    expect(() => walk("2026-03-19T03:00", "2026-03-19T02:59")).toThrow(RangeError);
    expect(() => walk("2026-03-19T03:00", "2026-03-20T03:01")).toThrow(RangeError);
  });
});
