import { describe, expect, test } from "vitest";
import { checkOf, forecast, hoursOf, oneDay, smallTrip, smallTrips } from "./smallTrips.ts";

const DAY = "2026-05-06";
const given = (rows: Record<string, unknown>[], issuedAt = `${DAY}T00:00:00+12:00`) =>
  smallTrip(oneDay(DAY, "+12:00", { forecast: forecast(issuedAt, rows) }));
const morningOf = (trip: ReturnType<typeof smallTrip>) => trip.session(DAY, "morning");

describe("a session with a forecast", () => {
  const whole = given(hoursOf(DAY));

  test("has the row in force at its start, in metres a second", () => {
    const rows = hoursOf(DAY).map((row) => ({ ...row, windSpeed: Number(String(row.hour).slice(0, 2)) / 2 }));
    const found = given(rows);
    const hour = Number(morningOf(found).from!.slice(11, 13));
    expect(morningOf(found).forecast).toMatchObject({
      windFromDeg: 135,
      windSpeedMps: hour / 2,
      source: "made up",
    });
  });

  test("ranks the site with reason, sit and time to leave", () => {
    expect(morningOf(whole).ranking).toHaveLength(1);
    expect(morningOf(whole).ranking![0]).toMatchObject({
      site: "site-1",
      verdict: "suits",
      walkIn: "path",
      why: {},
    });
    expect(morningOf(whole).ranking![0]!.reason).toMatch(/until/i);
    expect(morningOf(whole).why).toEqual({});
  });

  test("names the change of wind that ends the sit", () => {
    const rows = hoursOf(DAY).map((row) => (String(row.hour) >= "16:00" ? { ...row, windFrom: "NW" } : row));
    const evening = given(rows).session(DAY, "evening");
    expect(evening.ranking![0]!.reason).toMatch(
      /^Until about 16:00, then wind from NW carries to the approach/,
    );
    expect(evening.ranking![0]!.sitUntil!.slice(11, 16)).toBe("16:00");
    expect(evening.schedule.find((row) => row.what === "start down")!.at.slice(11, 16)).toBe("16:00");
  });

  test("keeps the details of the day: hours in metric units, no look-up", () => {
    const day = whole.details.days[0]!;
    expect(day.hours).toHaveLength(24);
    expect(day.hours[7]).toMatchObject({
      wind: "from",
      windFromDeg: 135,
      windSpeedMps: 5,
      tempC: 8,
      thunder: false,
    });
    expect(day.sessions.map((session) => session.lookUp)).toEqual([null, null]);
  });
});

describe("a session without a forecast", () => {
  const none = smallTrip(oneDay(DAY, "+12:00", { forecast: undefined }));

  test("has no ranking and says so, and its weather is not checked", () => {
    expect(morningOf(none)).toMatchObject({ forecast: null, ranking: null });
    expect(Object.keys(morningOf(none).why)).toEqual(["forecast", "ranking"]);
    const results = ["C10", "C11", "C26", "C29"].map((id) => checkOf(none.day(DAY), id, "morning")!.result);
    expect(new Set(results)).toEqual(new Set(["NOT CHECKED"]));
  });

  test("has the 33 winds of the very day to look up for each site that nothing bars", () => {
    const lookUp = none.details.days[0]!.sessions[0]!.lookUp!;
    expect(lookUp).toHaveLength(33);
    expect(lookUp.find((row) => row.windFrom === "SE" && row.class === "fresh")!.verdict).toBe("suits");
    expect(lookUp.every((row) => row.sitFrom === null || row.sitFrom.startsWith(DAY))).toBe(true);
  });

  test("keeps the owner's sit and its times, down at the end of the session or of legal light", () => {
    expect(morningOf(none).assignment[0]!.reason).toBe("written in the trip");
    expect(morningOf(none).schedule.find((row) => row.what === "sit until")).toBeUndefined();
    expect(
      morningOf(none)
        .schedule.find((row) => row.what === "start down")!
        .at.slice(11, 16),
    ).toBe("10:00");
  });

  test("a forecast for another session alone leaves this one without", () => {
    const rows = hoursOf(DAY).filter((row) => String(row.hour) >= "14:00");
    expect(morningOf(given(rows)).ranking).toBeNull();
    expect(given(rows).session(DAY, "evening").ranking).toHaveLength(1);
  });
});

describe("a forecast with gaps", () => {
  test("leaves a site at best marginal when a part of the wind is not known", () => {
    const rows = [...hoursOf(DAY), { ...hoursOf(DAY)[9], hour: "09:45", windFrom: "variable" }];
    expect(morningOf(given(rows)).ranking![0]!.verdict).toBe("marginal");
    expect(morningOf(given(rows)).ranking![0]!.reason).toMatch(/Part of the wind is not known\.$/);
  });

  test("leaves a site at best marginal when the cloud is not known, for the slope air hangs on it", () => {
    const rows = hoursOf(DAY, { cloudShare: null });
    expect(morningOf(given(rows)).ranking![0]!.verdict).toBe("marginal");
    expect(morningOf(given(rows)).forecast).toMatchObject({
      cloudShare: null,
      why: { cloudShare: "not in the forecast given" },
    });
  });

  test("does not assess a site when most of the wind is not known", () => {
    expect(morningOf(given(hoursOf(DAY, { windFrom: null }))).ranking![0]!.verdict).toBe("not assessed");
  });

  test("is not checked for thunder when the climb up has no row", () => {
    const rows = hoursOf(DAY).filter((row) => String(row.hour) >= "07:00");
    expect(checkOf(given(rows).day(DAY), "C11", "morning")!.result).toBe("NOT CHECKED");
    expect(checkOf(given(hoursOf(DAY)).day(DAY), "C11", "morning")!.result).toBe("OK");
  });
});

describe("an old forecast", () => {
  test("is marked from over 24 hours before the session starts, not at 24 hours", () => {
    const start = morningOf(given(hoursOf(DAY))).from!;
    const issuedAhead = (hours: number, seconds: number) =>
      new Date(Date.parse(start) - hours * 3_600_000 - seconds * 1000).toISOString();
    expect(morningOf(given(hoursOf(DAY), issuedAhead(24, -2))).forecast!.old).toBe(false);
    expect(morningOf(given(hoursOf(DAY), issuedAhead(24, 2))).forecast!.old).toBe(true);
    expect(checkOf(given(hoursOf(DAY), issuedAhead(24, 2)).day(DAY), "C26", "morning")!.result).toBe(
      "CAUTION",
    );
  });

  test("is as old as its oldest row in the session", () => {
    const rows = hoursOf(DAY).map((row) =>
      row.hour === "08:00" ? { ...row, issuedAt: "2026-05-03T00:00:00+12:00" } : row,
    );
    expect(morningOf(given(rows)).forecast!.old).toBe(true);
  });
});

test("two trips on one day are judged each by its own forecast", () => {
  const rows = hoursOf(DAY, { windFrom: "NW", cloudShare: 1 });
  const other = oneDay(DAY, "+12:00", { forecast: forecast(`${DAY}T00:00:00+12:00`, rows) });
  const { trips } = smallTrips([oneDay(DAY, "+12:00"), other]);
  const verdicts = trips.map((trip) => trip.days[0]!.sessions[0]!.ranking![0]!.verdict);
  expect(verdicts).toEqual(["suits", "avoid"]);
  const alone = smallTrip(oneDay(DAY, "+12:00")).session(DAY, "morning");
  expect(trips[0]!.days[0]!.sessions[0]).toEqual(alone);
});
