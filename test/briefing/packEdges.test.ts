import { describe, expect, test } from "vitest";
import { composePack } from "../../scripts/briefing/composePack.ts";
import { OPTIONS } from "./composedAreas.ts";
import { packFaults } from "./packFaults.ts";
import { SHARED, SLOPING_SITE, type SmallArea, smallArea } from "./smallArea.ts";

const pack = (area: SmallArea, options: Partial<typeof OPTIONS> = {}) =>
  composePack(smallArea(area), SHARED, { ...OPTIONS, ...options });

/** A sloping site a few hundred metres from a centre. */
const siteNear = (centre: { lat: number; lon: number }, more: Record<string, unknown> = {}) => ({
  ...SLOPING_SITE,
  position: { lat: centre.lat + 0.001, lon: centre.lon + 0.001 },
  ...more,
});

const there = (lat: number, lon: number, timezone: string, trip?: [string, string]): SmallArea => ({
  facts: { centre: { lat, lon }, timezone },
  sites: [siteNear({ lat, lon })],
  trips: trip === undefined ? [] : [{ from: trip[0], to: trip[1] }],
});

const season = [
  {
    species: "deer",
    from: "2026-04-01",
    to: "2026-04-30",
    method: "rifle",
    land: "public",
    source: "x",
    checkedOn: "2026-01-01",
  },
];

describe("a pack at the edges of what an owner may write", { timeout: 30_000 }, () => {
  test.each<[string, SmallArea, string]>([
    ["without trips and season, south", there(-45.0312, 168.6626, "Pacific/Auckland"), "2026-04-15"],
    ["without trips and season, north", there(45.2, 7.3, "Europe/Rome"), "2026-10-15"],
    ["with a season and no trip", { facts: { season } }, "2026-04-15"],
    [
      "at 70 N under the midnight sun",
      there(70, 25, "Europe/Oslo", ["2026-06-20", "2026-06-21"]),
      "2026-06-20",
    ],
    ["at 70 N in the polar night", there(70, 25, "Europe/Oslo", ["2026-12-20", "2026-12-20"]), "2026-12-20"],
    [
      "at 66 N, where sunset comes after midnight",
      there(65.8, 24.1, "Europe/Helsinki", ["2026-06-10", "2026-06-10"]),
      "2026-06-10",
    ],
    [
      "13 h ahead of Greenwich",
      there(-21.2, -175.2, "Pacific/Tongatapu", ["2026-05-02", "2026-05-03"]),
      "2026-05-02",
    ],
    [
      "13 h 45 min ahead, at the date line",
      there(-43.95, -176.55, "Pacific/Chatham", ["2026-01-02", "2026-01-02"]),
      "2026-01-02",
    ],
    [
      "on the day clocks go back",
      there(36.303, -84.2458, "America/New_York", ["2026-11-01", "2026-11-01"]),
      "2026-11-01",
    ],
    [
      "on the day clocks go forward",
      there(36.303, -84.2458, "America/New_York", ["2026-03-08", "2026-03-08"]),
      "2026-03-08",
    ],
    [
      "on a day that begins at 01:00",
      there(-33.45, -70.66, "America/Santiago", ["2026-09-06", "2026-09-06"]),
      "2026-09-06",
    ],
    [
      "on a day half an hour longer",
      there(-31.55, 159.08, "Australia/Lord_Howe", ["2026-04-05", "2026-04-05"]),
      "2026-04-05",
    ],
    [
      "with a trip that runs into the next year",
      { trips: [{ from: "2026-12-30", to: "2027-01-02" }] },
      "2026-12-30",
    ],
    ["without a site", { sites: [] }, "2026-04-15"],
    [
      "with a ground of 2 degrees that faces nowhere",
      { sites: [{ ...SLOPING_SITE, slope: { slopeDeg: 2, aspectDeg: null, reason: "x" } }] },
      "2026-04-15",
    ],
  ])("%s", (_, area, tableDate) => {
    const whole = pack(area);
    expect(whole.pack.tableDate).toBe(tableDate);
    expect(packFaults(whole)).toEqual([]);
  });

  test("without a slope the phases are not known and only fresh wind is judged", () => {
    const { slope: _, ...bare } = SLOPING_SITE;
    const whole = pack({ sites: [bare] });
    expect(packFaults(whole)).toEqual([]);
    const [site] = whole.pack.sites!;
    expect([site!.phases, site!.slopeDeg, site!.slopeSource]).toEqual([null, null, null]);
    expect(site!.why.phases).toBe("no terrain file and no slope given");
    for (const row of site!.windTable) {
      expect([row.class, row.verdict === "not assessed"]).toEqual([row.class, row.class !== "fresh"]);
    }
  });

  test("a height that nobody gave is not known, and neither are the phases that hang on it", () => {
    const whole = pack({ facts: { elevationM: undefined } });
    expect(packFaults(whole)).toEqual([]);
    expect([whole.pack.area.elevationM, whole.pack.sites![0]!.phases]).toEqual([null, null]);
  });

  test("sessions that an area names run in its order, and one that ends before it starts does not take place", () => {
    const sessions = [
      { id: "dawn", from: { anchor: "firstLight" }, to: { anchor: "sunrise", offsetMin: 60 } },
      {
        id: "noon",
        from: { anchor: "solarNoon", offsetMin: -60 },
        to: { anchor: "solarNoon", offsetMin: 60 },
      },
      { id: "never", from: { anchor: "sunset" }, to: { anchor: "sunrise" } },
    ];
    const approaches = Object.fromEntries(
      sessions.map(({ id }) => [id, [{ id: "way", bearingsDeg: [200, 240], distanceM: [10, 100], use: 1 }]]),
    );
    const whole = pack({ facts: { sessions }, sites: [{ ...SLOPING_SITE, approaches }] });
    expect(packFaults(whole)).toEqual([]);
    expect(whole.details.sessions.map(({ id, from }) => [id, from === null])).toEqual([
      ["dawn", false],
      ["noon", false],
      ["never", true],
    ]);
    const [site] = whole.pack.sites!;
    const never = site!.windTable.filter((row) => row.session === "never");
    expect(new Set(never.map((row) => row.verdict))).toEqual(new Set(["not assessed"]));
    expect(site!.windTable.some((row) => row.session === "noon" && row.verdict !== "not assessed")).toBe(
      true,
    );
  });

  test("a year that is asked for has its almanac, and the trip days of another year stand beside it", () => {
    const whole = pack({ trips: [{ from: "2026-04-04", to: "2026-04-05" }] }, { year: 2028 });
    expect(packFaults(whole)).toEqual([]);
    expect(whole.pack.days).toHaveLength(366 + 2);
    expect(whole.pack.days[0]!.localDate).toBe("2026-04-04");
    expect(whole.pack.days.some((day) => day.localDate === "2028-02-29")).toBe(true);
  });

  test("only the trip that is asked for counts", () => {
    const trips = [
      { from: "2026-04-04", to: "2026-04-05" },
      { from: "2027-05-01", to: "2027-05-01" },
    ];
    const whole = pack({ trips }, { trip: "trip-2" });
    expect([whole.pack.year, whole.pack.tableDate, whole.pack.notValidAfter]).toEqual([
      2027,
      "2027-05-01",
      "2027-05-01",
    ]);
    expect(whole.pack.days.some((day) => day.localDate === "2026-04-04")).toBe(false);
  });

  // Rows of two forecasts in turn would be a sky that nobody forecast.
  test("where two trips share a day its slope air takes the sky of the first that has one, not of both", () => {
    const tripUnder = (cloudShares: number[]) => ({
      ...{ from: "2026-04-04", to: "2026-04-04" },
      forecast: {
        ...{ source: "x", issuedAt: "2026-04-03T18:00:00+13:00" },
        units: { speed: "mps", temp: "C", rain: "mm" },
        rows: cloudShares.map((cloudShare, i) => ({
          ...{ localDate: "2026-04-04", hour: `${String(i).padStart(2, "0")}:00`, cloudShare },
          ...{ windFrom: "NW", windSpeed: 2, gust: 4, temp: 10 },
        })),
      },
    });
    const airOf = (...trips: Record<string, unknown>[]) =>
      pack({ trips }).pack.sites![0]!.phases!.find((day) => day.localDate === "2026-04-04");
    const [cloudy, clear] = [tripUnder([0.9]), tripUnder([0.9, 0])];
    const underCloud = airOf(cloudy);
    expect(airOf({ from: "2026-04-04", to: "2026-04-04" }, clear)).not.toEqual(underCloud);
    expect(airOf(cloudy, clear)).toEqual(underCloud);
  });

  test("turning a site and its approach by a half circle on flat-lit ground turns nothing but the bearings", () => {
    // Without sun the drift knows no bearing but those of slope and wind: polar night, no sky difference.
    const at = there(70, 25, "Europe/Oslo", ["2026-12-20", "2026-12-20"]);
    const sessions = [
      { id: "noon", from: { anchor: "clock", at: "11:00" }, to: { anchor: "clock", at: "13:00" } },
    ];
    const turned = (byDeg: number) => {
      const approaches = {
        noon: [{ id: "way", bearingsDeg: [10 + byDeg, 50 + byDeg], distanceM: [10, 100], use: 1 }],
      };
      const slope = { slopeDeg: 18, aspectDeg: 45 + byDeg, reason: "x" };
      const site = siteNear({ lat: 70, lon: 25 }, { approaches, slope });
      const whole = pack({ ...at, facts: { ...at.facts, sessions }, sites: [site] });
      return whole.pack.sites![0]!.windTable.filter(
        (row) => row.class === "light" && row.phase === "falling",
      );
    };
    const [plain, half] = [turned(0), turned(180)];
    expect(plain.some((row) => row.verdict === "avoid")).toBe(true);
    plain.forEach((row, i) => {
      const other = half[(i + 8) % 16]!;
      expect([other.verdict, other.driftSpeedMps]).toEqual([row.verdict, row.driftSpeedMps]);
      expect(Math.abs(other.reachShare! - row.reachShare!)).toBeLessThanOrEqual(0.0001); // both are rounded to 4 decimals
    });
  });
});
