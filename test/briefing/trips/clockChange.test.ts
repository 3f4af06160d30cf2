import { describe, expect, test } from "vitest";
import { civilAt } from "../../../scripts/time/civilTime.ts";
import {
  checkOf,
  FACTS,
  forecast,
  hoursOf,
  minutesBetween,
  oneDay,
  SOUND_SITE,
  smallTrip,
  timeOf,
} from "./smallTrips.ts";

// A walk of three hours, so that waking and leaving fall in the hour in which the clock changes.
const walkIns = [{ id: "path", name: "Path", from: "hut", minutes: [150, 180] as [number, number] }];
const south = { lat: -45.0312, lon: 168.6626 };
const north = { lat: 41.4263, lon: -77.8482 };
const tonga = { lat: -21.1789, lon: -175.1982 };

/** Minutes from one kept moment to the next, in real time: what each step takes, whatever the clock does. */
const STEPS = [
  ["wake", "leave", 45],
  ["leave", "at tree", 190],
  ["at tree", "aloft", 30],
  ["aloft", "settled", 10],
  ["start down", "out", 180],
  ["out", "ask", 30],
  ["ask", "call", 60],
] as const;

const PLACES = [
  {
    name: "the clock goes back in the south",
    zone: "Pacific/Auckland",
    at: south,
    date: "2026-04-05",
    offsets: ["+13:00", "+12:00"],
  },
  {
    name: "the clock goes forward in the south",
    zone: "Pacific/Auckland",
    at: south,
    date: "2026-09-27",
    offsets: ["+12:00", "+13:00"],
  },
  {
    name: "the clock goes back in the north",
    zone: "America/New_York",
    at: north,
    date: "2026-11-01",
    offsets: ["-04:00", "-05:00"],
  },
  {
    name: "the clock goes forward in the north",
    zone: "America/New_York",
    at: north,
    date: "2026-03-08",
    offsets: ["-05:00", "-04:00"],
  },
  {
    name: "the clock never changes, thirteen hours ahead",
    zone: "Pacific/Tongatapu",
    at: tonga,
    date: "2026-04-05",
    offsets: ["+13:00", "+13:00"],
  },
];

describe.each(PLACES)("a night on which $name", ({ zone, at, date, offsets }) => {
  const site = { ...SOUND_SITE, position: { lat: at.lat + 0.001, lon: at.lon + 0.001 }, walkIns };
  const area = {
    facts: { centre: at, timezone: zone, camps: FACTS.camps.map((camp) => ({ ...camp, position: at })) },
    sites: [site],
  };
  // The forecast leaves out the hours around the change, whose clock times are none or two.
  const rows = hoursOf(date, {}, 4);
  const sit = { localDate: date, session: "morning", hunter: "a", site: "site-1", walkIn: "path" };
  const trip = smallTrip(
    oneDay(date, offsets[0]!, { sits: [sit], forecast: forecast(`${date}T00:00:00${offsets[0]}`, rows) }),
    area,
  );
  const morning = trip.session(date, "morning");

  test("every step takes its own minutes", () => {
    for (const [from, to, minutes] of STEPS) {
      expect([from, to, minutesBetween(timeOf(morning, from), timeOf(morning, to))]).toEqual([
        from,
        to,
        minutes,
      ]);
    }
  });

  test("every time carries the offset in force then, and reads as the clock on the wall", () => {
    for (const { what, at: text } of morning.schedule) {
      const civil = civilAt(new Date(text), zone);
      expect([what, text.slice(0, 16), text.slice(19)]).toEqual([
        what,
        `${civil.localDate}T${civil.clock}`,
        civil.utcOffset,
      ]);
    }
    expect(timeOf(morning, "settled")!.slice(19)).toBe(offsets[1]);
  });

  test("settles before first light on the new clock, on the day itself", () => {
    expect(morning.from!.slice(0, 10)).toBe(date);
    expect(morning.from!.slice(19)).toBe(offsets[1]);
    const before = minutesBetween(timeOf(morning, "settled"), morning.from!);
    expect(before >= 30 && before < 31).toBe(true);
    expect(checkOf(trip.day(date), "C13", "a", "morning")!.text).not.toMatch(/midnight/);
  });
});

describe("a night on which the clock goes back", () => {
  const site = { ...SOUND_SITE, walkIns };
  const sits = (dates: string[]) =>
    dates.map((localDate) => ({
      localDate,
      session: "morning",
      hunter: "a",
      site: "site-1",
      walkIn: "path",
    }));
  const dates = ["2026-04-04", "2026-04-05"];
  const rows = dates.flatMap((date) => hoursOf(date, {}, 4));
  const trip = smallTrip(
    oneDay(dates[0]!, "+13:00", {
      to: dates[1],
      sits: sits(dates),
      forecast: forecast("2026-04-03T18:00:00+13:00", rows),
    }),
    { sites: [site] },
  );

  test("everything is about an hour earlier by the clock than the day before", () => {
    const [before, after] = dates.map((date) => {
      const at = timeOf(trip.session(date, "morning"), "settled")!;
      return Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16));
    });
    expect(before! - after!).toBeGreaterThanOrEqual(57); // the sun itself comes a minute or so later
    expect(before! - after!).toBeLessThanOrEqual(60);
  });

  test("the age of the forecast counts the hour that comes twice", () => {
    const check = (date: string) => checkOf(trip.day(date), "C26", "morning")!;
    const ageH = Number(/([\d.]+) h/.exec(check(dates[1]!).text)![1]);
    const start = Date.parse(trip.session(dates[1]!, "morning").from!);
    expect(ageH).toBeCloseTo((start - Date.parse("2026-04-03T18:00:00+13:00")) / 3_600_000, 1);
    expect(trip.session(dates[0]!, "morning").forecast!.old).toBe(false);
    expect(trip.session(dates[1]!, "morning").forecast!.old).toBe(true);
  });
});
