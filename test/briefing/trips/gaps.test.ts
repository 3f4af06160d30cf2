import { describe, expect, test } from "vitest";
import { notChecked } from "../../../scripts/briefing/notChecked.ts";
import { smallContent } from "../smallArea.ts";
import { forecast, HUNTER, hoursOf, minutesBetween, oneDay, smallTrip, timeOf } from "./smallTrips.ts";

const DAY = "2026-05-06";

describe("what a trip could not check", () => {
  const trip = smallTrip(
    oneDay(DAY, "+12:00", { to: "2026-05-07", forecast: forecast(`${DAY}T00:00:00+12:00`, hoursOf(DAY)) }),
  ).trip;
  const rows = notChecked([], [trip], smallContent({}));

  test("is told by check and subject, with every day that has the gap on one row", () => {
    const fire = rows.filter((row) => row.check === "C28");
    expect(fire).toHaveLength(1);
    expect(fire[0]!.text).toMatch(/^2026-05-06, 2026-05-07: Fire ban today: not known/);
    expect(rows.find((row) => row.check === "C11" && row.subject === "morning")!.text).toMatch(
      /^2026-05-07: Thunder/,
    );
  });

  test("names the checks that no content feeds, each with what is missing", () => {
    const never = rows.filter((row) => row.subject === "small-area" && row.check !== "C28");
    expect(never.map((row) => row.check)).toEqual(["C16", "C17", "C20", "C21", "C24", "C27"]);
    expect(never[1]!.text).toMatch(/^No helicopter spot is entered/);
  });
});

describe("contacts", () => {
  const hunter = { ...HUNTER, contact: "Secret Sam, 555 0100" };
  const given = smallTrip(oneDay(DAY, "+12:00", { hunters: [hunter] }));

  test("are NOT CHECKED while one is blank, and name the blanks", () => {
    const check = given.day(DAY).checks.find(({ id }) => id === "C18")!;
    expect(check.result).toBe("NOT CHECKED");
    expect(check.text).toBe("Not entered: phone coverage, radio and check-in.");
  });

  test("of a hunter never leave the trip file", () => {
    expect(JSON.stringify(given.trip) + JSON.stringify(given.details)).not.toMatch(/Secret|555/);
  });
});

describe("the ways of a day", () => {
  const { details, session } = smallTrip(oneDay(DAY, "+12:00"));
  const [morning, evening] = details.days[0]!.sessions.map((entry) => entry.sites[0]!.walks[0]!);

  test("are dark in the morning and light in the afternoon on the way in", () => {
    // The walk of an hour ends 70 minutes before first light.
    expect(morning!.darkInMin! + morning!.moonlitInMin!).toBe(60);
    expect(evening!.darkInMin! + evening!.moonlitInMin!).toBe(0);
    expect(morning!.darkOutMin).toBe(0);
    expect(evening!.darkOutMin! + evening!.moonlitOutMin!).toBeGreaterThan(30);
  });

  test("have the times that the schedule has", () => {
    const written = session(DAY, "morning");
    expect(morning!.leaveAt).toBe(timeOf(written, "leave"));
    expect(morning!.outAt).toBe(timeOf(written, "out"));
    expect(minutesBetween(morning!.startDownAt, morning!.outAt!)).toBe(60);
    expect(written.ranking![0]!.leaveAt).toBe(morning!.leaveAt);
  });

  test("with the owner's minutes take no quiet stretch on top", () => {
    expect(morning).toMatchObject({ inMin: [40, 60], quietMin: 0, outMin: [40, 60], why: null });
  });
});
