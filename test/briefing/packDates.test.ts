import { describe, expect, test } from "vitest";
import {
  almanacDates,
  notValidAfter,
  packYear,
  phaseDates,
  tableDate,
  tripDates,
} from "../../scripts/briefing/packDates.ts";
import { smallContent } from "./smallArea.ts";

const season = (from: string, to: string) => ({
  ...{ species: "deer", from, to, method: "rifle", land: "public", source: "x", checkedOn: "2026-01-01" },
});
const bare = smallContent({});
const north = smallContent({ facts: { centre: { lat: 45, lon: 7 }, timezone: "Europe/Rome" } });
const seasons = smallContent({
  facts: { season: [season("2026-10-01", "2026-11-30"), season("2026-12-01", "2027-02-10")] },
});
const dated = smallContent({ facts: { notValidAfter: "2026-05-31" } });
const trips = smallContent({
  trips: [
    { from: "2027-03-30", to: "2027-04-02" },
    { from: "2026-11-14", to: "2026-11-16" },
    { from: "2026-11-15", to: "2026-11-17" },
  ],
}).trips;

describe("the year of a pack", () => {
  test.each([
    ["the one asked for", packYear(seasons, trips, 2031, "2026-05-01"), 2031],
    ["that of the earliest trip", packYear(seasons, trips, null, "2025-05-01"), 2026],
    ["that of the first season", packYear(seasons, [], null, "2025-05-01"), 2026],
    ["that of the as-of date", packYear(bare, [], null, "2025-05-01"), 2025],
  ])("%s", (_, found, expected) => {
    expect(found).toBe(expected);
  });
});

describe("the day of date-free tables", () => {
  test.each([
    ["the first day of the earliest trip", tableDate(seasons, trips, 2030), "2026-11-14"],
    ["the middle day of the first season: day 31 of 61", tableDate(seasons, [], 2030), "2026-10-31"],
    ["15 April south of the equator", tableDate(bare, [], 2026), "2026-04-15"],
    ["15 October north of it", tableDate(north, [], 2026), "2026-10-15"],
  ])("%s", (_, found, expected) => {
    expect(found).toBe(expected);
  });

  test("a season of one day is its own middle", () => {
    const one = smallContent({ facts: { season: [season("2026-10-01", "2026-10-01")] } });
    expect(tableDate(one, [], 2026)).toBe("2026-10-01");
  });
});

describe("the last day a pack may be relied on", () => {
  test.each([
    ["the owner's own", notValidAfter(dated, trips, "2026-05-01"), "2026-05-31"],
    [
      "the last trip day, not that of the last trip written",
      notValidAfter(seasons, trips, "2026-05-01"),
      "2027-04-02",
    ],
    ["the last season day", notValidAfter(seasons, [], "2026-05-01"), "2027-02-10"],
    ["a year after the as-of date", notValidAfter(bare, [], "2026-05-01"), "2027-05-01"],
  ])("%s", (_, found, expected) => {
    expect(found).toBe(expected);
  });
});

describe("the days that are computed", () => {
  test("trip days that two trips share count once, in order", () => {
    expect(tripDates(trips)).toEqual([
      ...["2026-11-14", "2026-11-15", "2026-11-16", "2026-11-17"],
      ...["2027-03-30", "2027-03-31", "2027-04-01", "2027-04-02"],
    ]);
  });

  test("the almanac has the whole year, a leap day, and trip days outside it once", () => {
    const days = almanacDates(trips, 2028);
    expect(days).toHaveLength(366 + 8);
    expect(days).toContain("2028-02-29");
    expect(almanacDates(trips, 2026)).toHaveLength(365 + 4);
    expect(days).toEqual(days.toSorted());
  });

  test("slope air is shown for the 1st and 16th of each month, the table's day and trip days", () => {
    expect(phaseDates([], 2026, "2026-04-15")).toHaveLength(25);
    expect(phaseDates([], 2026, "2026-04-16")).toHaveLength(24);
    expect(phaseDates(trips, 2026, "2026-11-14")).toHaveLength(24 + 7);
    expect(phaseDates([], 2026, "2026-04-15").slice(6, 9)).toEqual([
      "2026-04-01",
      "2026-04-15",
      "2026-04-16",
    ]);
  });
});
