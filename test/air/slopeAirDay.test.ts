import { describe, expect, test } from "vitest";
import { memberAirAt } from "../../scripts/air/memberAir.ts";
import { type SlopeAirDay, slopeAirDay, slopePhases } from "../../scripts/air/slopeAirDay.ts";
import { slopeAirYear } from "../../scripts/air/slopeAirYear.ts";
import { CLEAR_SKY, type Phase, type SlopeSite } from "../../scripts/air/slopeSite.ts";
import {
  constants,
  OCTOBER_END,
  OCTOBER_START,
  octoberAt,
  octoberClock,
  octoberDay,
  octoberSun,
  planeSite,
  sunOfDay,
} from "./planeSite.ts";

const MINUTE_MS = 60_000;
const RADIAN = Math.PI / 180;

/** The beginnings and ends of a phase, "HH:MM", midnight as "24:00" or "00:00". */
function times(day: SlopeAirDay, phase: Phase): string[] {
  const clock = (at: Date): string => (at.getTime() === day.end.getTime() ? "24:00" : octoberClock(at));
  return day.spans.filter((s) => s.phase === phase).flatMap((s) => [clock(s.from), clock(s.to)]);
}

function minutes(clock: string): number {
  return Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
}

/** Worked times were made with the same sun; the tolerance of 2 min is that of their rounding. */
function expectTimes(found: readonly string[], expected: readonly string[]): void {
  expect(found, found.join(" ")).toHaveLength(expected.length);
  found.forEach((clock, i) => {
    expect(
      Math.abs(minutes(clock) - minutes(expected[i] as string)),
      `${clock} for ${expected[i]}`,
    ).toBeLessThanOrEqual(2);
  });
}

function rangeOf(day: SlopeAirDay, phase: Phase, from: string): string[] {
  const span = day.spans.find(
    (s) => s.phase === phase && Math.abs(minutes(octoberClock(s.from)) - minutes(from)) < 3,
  );
  return (span?.fromRange ?? []).map(octoberClock);
}

describe("worked days on a 20 deg plane in timber, clear October sky", () => {
  test("east slope: falls to 07:51, rises 08:30 to 17:09, falls from 17:39", () => {
    const day = octoberDay(planeSite(90));
    expectTimes(times(day, "falling"), ["00:00", "07:51", "17:39", "24:00"]);
    expectTimes(times(day, "rising"), ["08:30", "17:09"]);
    expectTimes(rangeOf(day, "rising", "08:30"), ["08:11", "09:05"]);
    expectTimes(rangeOf(day, "falling", "17:39"), ["17:02", "18:11"]);
    expectTimes(
      [day.sunOn, day.sunLeaves].map((t) => octoberClock(t as Date)),
      ["07:46", "17:23"],
    );
    expect(day.spans.map((s) => s.driftToDeg)).toEqual([90, null, 270, null, 90]);
    expect(day.spans.some((s) => s.mayNotHappen)).toBe(false);
  });

  test("west slope: falls to 09:32, rises 09:57 to 18:36, falls from 19:20", () => {
    const day = octoberDay(planeSite(270));
    expectTimes(times(day, "falling"), ["00:00", "09:32", "19:20", "24:00"]);
    expectTimes(times(day, "rising"), ["09:57", "18:36"]);
    expectTimes(rangeOf(day, "rising", "09:57"), ["09:32", "11:04"]);
    expectTimes(rangeOf(day, "falling", "19:20"), ["19:04", "19:45"]);
    expectTimes(
      [day.sunOn, day.sunLeaves].map((t) => octoberClock(t as Date)),
      ["09:23", "19:00"],
    );
  });

  test("half cloud delays both turns, overcast stops the falling in the plain run", () => {
    const half = octoberDay(planeSite(90), 0.5);
    expectTimes(times(half, "rising").slice(0, 1), ["08:48"]);
    expectTimes(times(half, "falling").slice(2, 3), ["17:51"]);
    const overcast = octoberDay(planeSite(90), 1);
    expectTimes(times(overcast, "rising").slice(0, 1), ["09:20"]);
    expect(times(overcast, "falling")).toEqual([]);
    expect(overcast.why.falling).toMatch(/cloud: the slope air hardly moves; 8 of 17 runs/);
    const open = octoberDay(planeSite(90, { cover: "open" }));
    expectTimes(times(open, "rising").slice(0, 1), ["08:17"]);
    expectTimes(times(open, "falling").slice(2, 3), ["17:29"]);
  });

  test("flat crest and valley floor", () => {
    const crest = octoberDay(planeSite(90, { landform: "crest", horizonDeg: null }));
    expectTimes(times(crest, "rising").slice(0, 1), ["08:54"]);
    expectTimes(times(crest, "falling").slice(2, 3), ["19:00"]);
    expect(crest.spans.every((s) => s.driftToDeg === null)).toBe(true);
    const floor = octoberDay(planeSite(90, { landform: "floor", floorDriftToDeg: 130 }));
    expectTimes(times(floor, "falling"), ["00:00", "08:56", "20:25", "24:00"]);
    expectTimes(times(floor, "rising").slice(0, 1), ["09:34"]);
    expectTimes(rangeOf(floor, "falling", "20:25"), ["19:48", "21:47"]);
    expect(floor.spans[0]?.driftToDeg).toBe(130);
  });
});

describe("a clear day worked again by hand", () => {
  test("the minute-by-minute east slope, written out here on its own, turns at the same minutes", () => {
    // Formulas of Kasten and Young, Meinel, Haurwitz and FAO-56 with the plain constants as literals.
    const net = (at: Date): { net: number; direct: number } => {
      const i = (at.getTime() - octoberSun.startsAt.getTime()) / (5 * MINUTE_MS);
      const mix = (row: Float64Array): number =>
        (row[Math.floor(i)] as number) * (1 - (i % 1)) + (row[Math.ceil(i)] as number) * (i % 1);
      const [h, azimuth] = [mix(octoberSun.altitudeDeg), mix(octoberSun.azimuthDeg)];
      const vapour = 0.7 * 0.6108 * Math.exp(172.7 / 247.3);
      const sky = (1 + Math.cos(20 * RADIAN)) / 2;
      const loss = 5.670374e-8 * 283.15 ** 4 * (0.34 - 0.14 * Math.sqrt(vapour)) * sky;
      if (h <= 0) return { net: -loss, direct: 0 };
      const sin = Math.sin(h * RADIAN);
      const r = 1 + 0.033 * Math.cos((2 * Math.PI * 288) / 365);
      const m = Math.exp(-700 / 8435) / (sin + 0.50572 * (h + 6.07995) ** -1.6364);
      const beam = 1361 * r * 0.7 ** (m ** 0.678);
      const global = 1098 * r * sin * Math.exp(-0.059 / sin);
      const cos =
        Math.cos(20 * RADIAN) * sin +
        Math.sin(20 * RADIAN) * Math.cos(h * RADIAN) * Math.cos((azimuth - 90) * RADIAN);
      const horizon = Math.max(
        0,
        Math.atan(Math.tan(20 * RADIAN) * Math.cos((azimuth - 270) * RADIAN)) / RADIAN,
      );
      const direct = cos > 0 && h >= horizon ? beam * cos : 0;
      return { net: 0.85 * (direct + sky * Math.max(global - beam * sin, 0.06 * global)) - loss, direct };
    };
    const first = (from: string, holds: (x: { net: number; direct: number }) => boolean): number => {
      let ms = octoberAt(from).getTime();
      while (!holds(net(new Date(ms)))) ms += MINUTE_MS;
      return ms;
    };
    const falls = (x: { net: number; direct: number }): boolean => x.net <= 40 && x.direct < 20;
    const rises = (x: { net: number; direct: number }): boolean => x.net >= 25 && x.direct >= 20;
    const expected = [
      first("05:00", (x) => !falls(x)),
      first("05:00", rises) + 20 * MINUTE_MS,
      first("12:00", (x) => !rises(x)),
      first("12:00", falls) + 25 * MINUTE_MS,
    ].map((ms) => octoberClock(new Date(ms)));
    const day = octoberDay(planeSite(90));
    // One minute: the skyline between whole bearings is a straight line in the model.
    const found = [
      ...times(day, "falling").slice(1, 2),
      ...times(day, "rising"),
      ...times(day, "falling").slice(2, 3),
    ];
    found.forEach((clock, i) => {
      expect(
        Math.abs(minutes(clock) - minutes(expected[i] as string)),
        `${clock} ${expected[i]}`,
      ).toBeLessThanOrEqual(1);
    });
  });
});

test.each(["slope", "floor", "crest"] as const)(
  "the phases alone are those of the whole day (%s)",
  (landform) => {
    const site: SlopeSite = { ...planeSite(90), landform, floorDriftToDeg: landform === "floor" ? 90 : null };
    const question = {
      site,
      sun: octoberSun,
      dayStart: OCTOBER_START,
      dayEnd: OCTOBER_END,
      dayOfYear: 288,
      weather: { ...CLEAR_SKY, cloudShare: 0.3 },
      constants,
    };
    const { members: _, ...day } = slopeAirDay(question);
    expect(slopePhases(question)).toEqual(day);
  },
);

describe("what must hold of any day", () => {
  const aspects = [0, 45, 90, 135, 180, 225, 270, 315];
  const seasons: [string, number][] = [
    ["2026-03-20", 79],
    ["2026-06-21", 172],
    ["2026-10-15", 288],
    ["2026-12-21", 355],
  ];
  const dayOf = (site: SlopeSite, date: string, n: number, lat: number, cloudShare = 0): SlopeAirDay => {
    const dayStart = new Date(`${date}T00:00:00Z`);
    const dayEnd = new Date(dayStart.getTime() + 24 * 60 * MINUTE_MS);
    const sun = sunOfDay(dayStart, { lat, lon: 0 });
    const weather = { ...CLEAR_SKY, cloudShare };
    return slopeAirDay({ site, sun, dayStart, dayEnd, dayOfYear: n, weather, constants });
  };
  const firstOf = (day: SlopeAirDay, phase: Phase, afterHour = 0): number =>
    day.spans
      .find((s) => s.phase === phase && s.from.getTime() >= day.start.getTime() + afterHour * 60 * MINUTE_MS)
      ?.from.getTime() ?? Number.POSITIVE_INFINITY;

  test("spans cover the day without gap, rising and falling never touch, ranges hold the plain time", {
    timeout: 30_000,
  }, () => {
    for (const [date, n] of seasons) {
      for (const lat of [-46, 0, 36, 62]) {
        for (const aspect of aspects) {
          for (const landform of ["slope", "floor"] as const) {
            const day = dayOf(
              planeSite(aspect, { landform, floorDriftToDeg: 10 }),
              date,
              n,
              lat,
              aspect === 90 ? 0.6 : 0,
            );
            let at = day.start.getTime();
            day.spans.forEach((span, i) => {
              expect(span.from.getTime()).toBe(at);
              expect(span.to.getTime()).toBeGreaterThan(at);
              at = span.to.getTime();
              const next = day.spans[i + 1];
              if (next) expect(`${span.phase} ${next.phase}`).toMatch(/turning/);
              for (const [range, time] of [
                [span.fromRange, span.from],
                [span.toRange, span.to],
              ] as const) {
                if (!range) continue;
                expect(range[0].getTime()).toBeLessThanOrEqual(time.getTime());
                expect(range[1].getTime()).toBeGreaterThanOrEqual(time.getTime());
              }
              expect(span.speedMps === null).toBe(span.phase === "turning");
              if (!span.fromRange) expect(span.why.fromRange).toBe("midnight");
            });
            expect(at).toBe(day.end.getTime());
          }
        }
      }
    }
  });

  test("an east slope turns before a west slope, morning and evening", () => {
    for (const [date, n] of seasons) {
      const east = dayOf(planeSite(90), date, n, 36);
      const west = dayOf(planeSite(270), date, n, 36);
      expect(firstOf(east, "rising")).toBeLessThan(firstOf(west, "rising"));
      expect(firstOf(east, "falling", 12)).toBeLessThan(firstOf(west, "falling", 12));
    }
  });

  test("every slope falls before the valley floor, and a slope with early sun rises before it", () => {
    for (const [date, n] of seasons) {
      const floor = dayOf(planeSite(0, { landform: "floor" }), date, n, 36);
      for (const aspect of aspects) {
        const slope = dayOf(planeSite(aspect), date, n, 36);
        expect(firstOf(slope, "falling", 12)).toBeLessThan(firstOf(floor, "falling", 12));
      }
      expect(firstOf(dayOf(planeSite(90), date, n, 36), "rising")).toBeLessThan(firstOf(floor, "rising"));
    }
  });

  test("deep in a valley a slope rises later and falls earlier than high on the same face", () => {
    for (const aspect of [90, 180, 270]) {
      const high = octoberDay(planeSite(aspect));
      const own = planeSite(aspect).horizonDeg;
      const horizonDeg = Float64Array.from({ length: 360 }, (_, b) => Math.max(own?.[b] ?? 0, 25));
      const deep = octoberDay(planeSite(aspect, { horizonDeg }));
      expect(firstOf(deep, "rising")).toBeGreaterThanOrEqual(firstOf(high, "rising"));
      expect(firstOf(deep, "falling", 12)).toBeLessThanOrEqual(firstOf(high, "falling", 12));
      // The far wall takes the morning of an east slope, the evening of a west slope, and both of a south slope.
      if (aspect !== 270) expect(firstOf(deep, "rising")).toBeGreaterThan(firstOf(high, "rising"));
      if (aspect !== 90) expect(firstOf(deep, "falling", 12)).toBeLessThan(firstOf(high, "falling", 12));
    }
  });

  test("a pole-facing 20 deg slope at 45 N does not rise in December, and the page can say why", () => {
    const day = dayOf(planeSite(0), "2026-12-21", 355, 45);
    expect(day.spans.some((s) => s.phase === "rising")).toBe(false);
    expect(day.why.rising).toMatch(/sun/);
  });

  test("a cloudier day rises inside the clear one and is never faster", () => {
    for (const cloud of [0.2, 0.5, 0.8, 1]) {
      for (const aspect of aspects) {
        const clear = octoberDay(planeSite(aspect));
        const cloudy = octoberDay(planeSite(aspect), cloud);
        for (const span of cloudy.spans.filter((s) => s.phase === "rising")) {
          const outer = clear.spans.find(
            (s) => s.phase === "rising" && s.from <= span.from && s.to >= span.to,
          );
          expect(outer, `aspect ${aspect}, cloud ${cloud}`).toBeDefined();
        }
        for (let ms = OCTOBER_START.getTime(); ms < OCTOBER_END.getTime(); ms += 30 * MINUTE_MS) {
          const a = memberAirAt(clear.members, 0, new Date(ms));
          const b = memberAirAt(cloudy.members, 0, new Date(ms));
          if (a.phase === b.phase) expect(b.speedMps).toBeLessThanOrEqual(a.speedMps + 1e-12);
        }
      }
    }
  });

  test("north and south of the equator mirror each other half a year apart", () => {
    // Sun given by hand: the equation of time and the orbit are left out of it.
    const sunAt = (lat: number, dec: number) => {
      const startsAt = new Date("2026-01-01T00:00:00Z");
      const count = 38 * 12 + 1;
      const [altitudeDeg, azimuthDeg] = [new Float64Array(count), new Float64Array(count)];
      for (let i = 0; i < count; i++) {
        const hour = ((i * 5 - 600) / 4 - 180) * RADIAN;
        const [p, d] = [lat * RADIAN, dec * RADIAN];
        const sinH = Math.sin(p) * Math.sin(d) + Math.cos(p) * Math.cos(d) * Math.cos(hour);
        altitudeDeg[i] = Math.asin(sinH) / RADIAN;
        const east = -Math.cos(d) * Math.sin(hour);
        const north = Math.cos(p) * Math.sin(d) - Math.sin(p) * Math.cos(d) * Math.cos(hour);
        azimuthDeg[i] = (Math.atan2(east, north) / RADIAN + 360) % 360;
      }
      return { startsAt, stepMin: 5, altitudeDeg, azimuthDeg };
    };
    const day = (lat: number, dec: number, aspect: number): SlopeAirDay =>
      slopeAirDay({
        site: planeSite(aspect),
        sun: sunAt(lat, dec),
        dayStart: new Date("2026-01-01T10:00:00Z"),
        dayEnd: new Date("2026-01-02T10:00:00Z"),
        dayOfYear: 91,
        weather: CLEAR_SKY,
        constants,
      });
    for (const aspect of [20, 90, 200, 290]) {
      const north = day(40, -10, aspect);
      const south = day(-40, 10, (540 - aspect) % 360);
      expect(north.spans.map((s) => s.from)).toEqual(south.spans.map((s) => s.from));
      // And the east slope's morning is the west slope's evening.
      const mirrored = day(40, -10, 360 - aspect);
      const on = (north.sunOn as Date).getTime() - north.start.getTime();
      const off = mirrored.end.getTime() - (mirrored.sunLeaves as Date).getTime();
      expect(Math.abs(on - off)).toBeLessThanOrEqual(MINUTE_MS);
    }
  });

  test("the wind-up and wind-down of rising air lie opposite to falling air, which leaves the way the slope faces", () => {
    const day = octoberDay(planeSite(140));
    const drift = (phase: Phase): number | null | undefined =>
      day.spans.find((s) => s.phase === phase)?.driftToDeg;
    expect(drift("falling")).toBe(140);
    expect(drift("rising")).toBe(320);
  });

  test("a forecast that clears at noon is cloudy before and clear after", () => {
    const rows = [
      { at: octoberAt("00:00"), cloudShare: 1, airTempC: null, relativeHumidity: null },
      { at: octoberAt("12:00"), cloudShare: 0, airTempC: null, relativeHumidity: null },
    ];
    const question = { site: planeSite(90), sun: octoberSun, dayStart: OCTOBER_START, dayEnd: OCTOBER_END };
    const mixed = slopeAirDay({ ...question, dayOfYear: 288, weather: rows, constants });
    expectTimes(
      times(mixed, "rising").slice(0, 1),
      times(octoberDay(planeSite(90), 1), "rising").slice(0, 1),
    );
    expectTimes(times(mixed, "falling"), ["17:39", "24:00"]);
  });

  test("the year at 5 min steps agrees with the day at 1 min steps to the minute", () => {
    const question = { site: planeSite(90), sun: octoberSun, dayStart: OCTOBER_START, dayEnd: OCTOBER_END };
    const year = slopeAirYear({ ...question, dayOfYear: 288, weather: CLEAR_SKY, constants });
    const day = slopeAirDay({ ...question, dayOfYear: 288, weather: CLEAR_SKY, constants });
    year.spans.forEach((own, m) => {
      const fromYear = own.map((s) => year.startsAt.getTime() + s.fromMin * MINUTE_MS);
      expect(fromYear).toEqual(day.members.spans[m]?.map((s) => s.fromMs));
    });
  });

  test("a slope without an aspect, a short sun table and a skyline with a hole are refused", () => {
    expect(() => octoberDay(planeSite(90, { aspectDeg: null }))).toThrow(/aspectDeg/);
    expect(() => octoberDay(planeSite(90, { slopeDeg: 91.2 }))).toThrow(
      "slopeDeg must be 0 to 90, found 91.2",
    );
    expect(() => octoberDay(planeSite(90), 1.2)).toThrow(/cloudShare must be 0 to 1/);
    expect(() => octoberDay(planeSite(90, { horizonDeg: new Float64Array(360).fill(Number.NaN) }))).toThrow(
      /horizonDeg/,
    );
    const sun = { ...octoberSun, startsAt: octoberAt("01:00") };
    const question = { site: planeSite(90), sun, dayStart: OCTOBER_START, dayEnd: OCTOBER_END };
    expect(() => slopeAirDay({ ...question, dayOfYear: 288, weather: CLEAR_SKY, constants })).toThrow(
      /sun must reach/,
    );
  });
});
