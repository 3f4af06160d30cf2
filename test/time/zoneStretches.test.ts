import { describe, expect, test } from "vitest";
import { addDays, civilAt, isoInZone, startOfDay } from "../../scripts/time/civilTime.ts";
import { stretchesBetween } from "../../scripts/time/zoneRules.ts";
import { type ZoneStretch, zoneStretches } from "../../scripts/time/zoneStretches.ts";

const HOUR_MS = 3_600_000;

describe("stretches of one offset", () => {
  // Clock changes: IANA time zone database, 2025 edition.
  test("a year in Denver has three, cut at its two clock changes", () => {
    const [from, to] = [Date.UTC(2026, 0, 1), Date.UTC(2027, 0, 1)];
    const stretches = stretchesBetween("America/Denver", from, to);
    expect(stretches.map(({ utcOffset }) => utcOffset)).toEqual(["-07:00", "-06:00", "-07:00"]);
    expect(stretches.map(({ fromMs }) => new Date(fromMs).toISOString())).toEqual([
      "2026-01-01T00:00:00.000Z",
      "2026-03-08T09:00:00.000Z",
      "2026-11-01T08:00:00.000Z",
    ]);
    expect(stretches.map(({ startsAtChange }) => startsAtChange)).toEqual([false, true, true]);
    expect(stretches.map(({ toMs }) => toMs)).toEqual([stretches[1]!.fromMs, stretches[2]!.fromMs, to]);
  });

  test("a change on the very first instant is told from a cut", () => {
    const change = Date.parse("2026-03-08T09:00:00Z");
    expect(stretchesBetween("America/Denver", change, change + HOUR_MS)).toMatchObject([
      { startsAtChange: true, utcOffset: "-06:00" },
    ]);
  });

  // Offset of New York before 1883, IANA time zone database: 4 h 56 min 2 s.
  test("an offset with seconds keeps them on the clock and drops them in ISO text", () => {
    const at = new Date("1880-01-01T12:00:00Z");
    expect(civilAt(at, "America/New_York")).toMatchObject({ clock: "07:03", utcOffset: "-04:56:02" });
    expect(isoInZone(at, "America/New_York")).toBe("1880-01-01T07:03:58-04:56");
  });
});

describe("what was read once", () => {
  const stretch = (fromMs: number, toMs: number): ZoneStretch => ({
    fromMs,
    toMs,
    startsAtChange: false,
    offsetMs: 0,
    utcOffset: "+00:00",
    isoOffset: "+00:00",
  });

  test("a zone's year is read once however often and in whatever order it is asked for", () => {
    const asked: string[] = [];
    const stretchAt = zoneStretches((timezone, fromMs, toMs) => {
      asked.push(timezone);
      return [stretch(fromMs, toMs)];
    });
    for (let hour = 0; hour < 366 * 24; hour += 7) {
      stretchAt(hour * HOUR_MS, "A");
      stretchAt((366 * 24 - 1 - hour) * HOUR_MS, "B");
    }
    expect(asked).toEqual(["A", "B"]);
  });

  test("what was dropped to stay small is read again and is the same", () => {
    const stretchAt = zoneStretches((_, fromMs, toMs) => [stretch(fromMs, toMs)]);
    const first = stretchAt(0, "A");
    for (let year = 1; year < 500; year++) stretchAt(year * 366 * 24 * HOUR_MS, "A");
    expect(stretchAt(0, "A")).toEqual(first);
  });
});

describe("clocks against the machine's own", () => {
  const zones = [
    "America/Denver",
    "Africa/Casablanca",
    "Africa/Cairo",
    "America/Nuuk",
    "America/Santiago",
    "Antarctica/Troll",
    "Asia/Kathmandu",
    "Australia/Lord_Howe",
    "Europe/Dublin",
    "Pacific/Apia",
    "Pacific/Chatham",
    "UTC",
  ];

  test.each(zones)("every third hour of 2026 reads the same in %s", (timezone) => {
    const clock = new Intl.DateTimeFormat("en-CA", {
      timeZone: timezone,
      hourCycle: "h23",
      dateStyle: "short",
      timeStyle: "short",
    });
    const differing: string[] = [];
    for (let ms = Date.UTC(2026, 0, 1); ms < Date.UTC(2027, 0, 1); ms += 3 * HOUR_MS) {
      const at = new Date(ms);
      const { localDate, clock: ours } = civilAt(at, timezone);
      if (clock.format(at) !== `${localDate}, ${ours}`)
        differing.push(`${at.toISOString()} ${localDate} ${ours}`);
    }
    expect(differing).toEqual([]);
  });

  test.each(zones)("every day of 2025 to 2028 begins with a new date in %s", (timezone) => {
    for (let date = "2025-01-01"; date < "2029-01-01"; date = addDays(date, 1)) {
      const start = startOfDay(date, timezone);
      expect(civilAt(start, timezone).localDate).toBe(date);
      expect(civilAt(new Date(start.getTime() - 1), timezone).localDate).toBe(addDays(date, -1));
    }
  });
});
