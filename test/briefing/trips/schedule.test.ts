import { describe, expect, test } from "vitest";
import {
  checkOf,
  forecast,
  HUNTER,
  hoursOf,
  minutesBetween,
  oneDay,
  SOUND_SITE,
  smallTrip,
  timeOf,
} from "./smallTrips.ts";

const DAY = "2026-05-06"; // autumn, UTC+12, no clock change near
const whole = smallTrip(oneDay(DAY, "+12:00"));
const morning = whole.session(DAY, "morning");
const evening = whole.session(DAY, "evening");

describe("a schedule counted back from the start of a session", () => {
  test("is settled half an hour before the morning starts, with the minutes of each step before it", () => {
    // Planning constants of the model: settle 10, set up 20, cool down 10, pack up 10, wake 45; the owner's walk takes 60.
    const settled = timeOf(morning, "settled");
    expect(minutesBetween(settled, morning.from!)).toBeGreaterThanOrEqual(30);
    expect(minutesBetween(settled, morning.from!)).toBeLessThan(31);
    expect(minutesBetween(timeOf(morning, "aloft"), settled)).toBe(10);
    expect(minutesBetween(timeOf(morning, "at tree"), settled)).toBe(40);
    expect(minutesBetween(timeOf(morning, "leave"), settled)).toBe(110);
    expect(minutesBetween(timeOf(morning, "wake"), timeOf(morning, "leave"))).toBe(45);
  });

  test("has its rows in the order of pack.json, each a whole minute but first light", () => {
    expect(morning.schedule.map((row) => row.what)).toEqual([
      ...["wake", "leave", "at tree", "aloft", "settled", "first light", "shooting start", "sit until"],
      ...["start down", "out", "ask", "call"],
    ]);
    const odd = morning.schedule.filter((row) => row.at.slice(17, 19) !== "00").map((row) => row.what);
    expect(odd.filter((what) => what !== "first light")).toEqual([]);
  });

  test("marks estimates with about, and keeps times to keep bare", () => {
    const about = morning.schedule.filter((row) => row.about).map((row) => row.what);
    expect(about).toEqual(["at tree", "aloft", "settled", "sit until", "out"]);
  });

  test("starts down in the evening with the end of legal light, and wakes nobody for it", () => {
    expect(timeOf(evening, "start down")).toBe(evening.shootingLight.end);
    expect(timeOf(evening, "shooting end")).toBe(evening.shootingLight.end);
    expect(timeOf(evening, "wake")).toBeUndefined();
    expect(minutesBetween(timeOf(evening, "start down"), timeOf(evening, "out"))).toBe(60);
  });

  test("is earlier by 15 minutes for a newcomer, who needs 35 to set up", () => {
    const slow = smallTrip(oneDay(DAY, "+12:00", { hunters: [{ ...HUNTER, newcomer: true }] })).session(
      DAY,
      "morning",
    );
    expect(minutesBetween(timeOf(slow, "leave"), timeOf(morning, "leave"))).toBe(15);
    expect(timeOf(slow, "settled")).toBe(timeOf(morning, "settled"));
  });

  test("takes the planning minutes of the area where it has them", () => {
    const own = { seatBeforeMin: { morning: 45 }, settleMin: 5, setUpMin: 25, wakeMin: 60 };
    const found = smallTrip(oneDay(DAY, "+12:00"), { facts: own }).session(DAY, "morning");
    expect(minutesBetween(timeOf(found, "settled"), timeOf(morning, "settled"))).toBe(15);
    expect(minutesBetween(timeOf(found, "leave"), timeOf(found, "settled"))).toBe(110);
    expect(minutesBetween(timeOf(found, "wake"), timeOf(found, "leave"))).toBe(60);
  });

  test("leaves out what hangs on the walk when nobody knows its minutes, and says so", () => {
    const site = {
      ...SOUND_SITE,
      walkIns: [{ ...SOUND_SITE.walkIns[0], minutes: undefined, along: "no-such-line" }],
    };
    const found = smallTrip(oneDay(DAY, "+12:00"), { sites: [site] });
    const rows = found.session(DAY, "morning").schedule.map((row) => row.what);
    expect(rows).not.toContain("leave");
    expect(rows).not.toContain("out");
    expect(rows).not.toContain("call");
    expect(rows).toContain("settled");
    const checks = ["C12", "C13", "C14", "C15"].map(
      (id) => checkOf(found.day(DAY), id, "a", "morning")?.result,
    );
    expect(checks).toEqual(["NOT CHECKED", "NOT CHECKED", "NOT CHECKED", "NOT CHECKED"]);
    const ranked = found.session(DAY, "morning").ranking![0]!;
    expect(ranked).toMatchObject({ leaveAt: null, why: { leaveAt: "no route is drawn" } });
  });
});

describe("overdue times", () => {
  const pair = [HUNTER, { ...HUNTER, id: "b", name: "B" }];
  const secondSite = { ...SOUND_SITE, number: 2, position: { lat: -45.0315, lon: 168.6661 } };
  const sits = (hunters: string[]) =>
    hunters.map((hunter, i) => ({
      localDate: DAY,
      session: "evening",
      hunter,
      site: `site-${i + 1}`,
      walkIn: "path",
    }));
  const evenings = (given: Record<string, unknown>) =>
    smallTrip(oneDay(DAY, "+12:00", { hunters: pair, ...given }), {
      sites: [SOUND_SITE, secondSite],
    }).session(DAY, "evening");
  const minutes = (session: ReturnType<typeof evenings>) =>
    (["ask", "call"] as const).map((what) => minutesBetween(timeOf(session, "out"), timeOf(session, what)));

  test("are 60 and 180 minutes after the time out for two, 30 and 90 for one alone", () => {
    // defaults of this project, editable
    expect(minutes(evenings({ sits: sits(["a", "b"]) }))).toEqual([60, 180]);
    expect(minutes(evenings({ sits: sits(["a"]) }))).toEqual([30, 90]);
  });

  test("are those of a hunter alone when the other's sit is stopped", () => {
    const stopped = [
      HUNTER,
      { ...pair[1], harness: { madeOn: "2020-01", replaceBy: "2025-01", fallen: false } },
    ];
    const session = evenings({ hunters: stopped, sits: sits(["a", "b"]) });
    expect(session.assignment.map((row) => row.reason.slice(0, 7))).toEqual(["written", "STOP C7"]);
    expect(minutes(session)).toEqual([30, 90]);
  });

  test("are the trip's own minutes where it has them", () => {
    expect(minutes(evenings({ sits: sits(["a"]), askAfterMin: 45, callAfterMin: 100 }))).toEqual([45, 100]);
  });

  test("of two hunters with equal times stand on one row", () => {
    const session = evenings({ sits: sits(["a", "b"]) });
    expect(session.schedule.find((row) => row.what === "call")!.who).toEqual(["a", "b"]);
    expect(session.schedule.filter((row) => row.what === "at tree")).toHaveLength(2); // two trees
  });
});

describe("a plan that can not be kept", () => {
  const far = (minutes: number) => ({
    sites: [
      {
        ...SOUND_SITE,
        walkIns: [{ id: "path", name: "Path", from: "hut", minutes: [minutes - 10, minutes] }],
      },
    ],
  });
  const leave = (trip: ReturnType<typeof smallTrip>, session = "morning", day = DAY) =>
    checkOf(trip.day(day), "C13", "a", session)!;

  test("says that the hunter would have to leave before midnight", () => {
    const check = leave(smallTrip(oneDay(DAY, "+12:00"), far(400)));
    expect(check.result).toBe("CAUTION");
    expect(check.text).toMatch(/that is before midnight/);
  });

  test("says that the hunter would have to wake before midnight", () => {
    // Settled 06:36 less 50 and a walk of 310: leaves at 00:36, so wakes at 23:51 of the day before.
    const check = leave(smallTrip(oneDay(DAY, "+12:00"), far(310)));
    expect(check.text).toMatch(/waking at 23:\d\d is before midnight/);
    expect(check.result).toBe("CAUTION");
  });

  test("says that the morning's walk out is not over when the evening's leaving comes", () => {
    const trip = smallTrip(oneDay(DAY, "+12:00"), far(160));
    expect(leave(trip, "evening").text).toMatch(/back from the last sit only at 12:40/);
    expect(leave(trip, "evening").result).toBe("CAUTION");
  });

  test("says that the morning's waking comes before the evening before is over", () => {
    const next = "2026-05-07";
    const sit = { hunter: "a", site: "site-1", walkIn: "path" };
    const trip = oneDay(DAY, "+12:00", {
      to: next,
      sits: [
        { ...sit, localDate: DAY, session: "evening" },
        { ...sit, localDate: next, session: "morning" },
      ],
      forecast: forecast(`${DAY}T00:00:00+12:00`, [...hoursOf(DAY), ...hoursOf(next)]),
    });
    // Down about 17:55 and six hours out; up again at 23:15.
    const check = leave(smallTrip(trip, far(360)), "morning", next);
    expect(check.result).toBe("CAUTION");
    expect(check.text).toMatch(/before midnight/);
    expect(String(check.inputs.backAt) > String(check.inputs.wakeAt)).toBe(true);
  });

  test("says that the forecast is issued after the leaving", () => {
    const trip = oneDay(DAY, "+12:00", { forecast: forecast(`${DAY}T06:00:00+12:00`, hoursOf(DAY)) });
    const check = leave(smallTrip(trip));
    expect(check.text).toMatch(/before the forecast was issued at 06:00/);
    expect(check.result).toBe("CAUTION");
  });

  test("is not checked where the walk starts away from the base, or no base is entered", () => {
    const elsewhere = {
      camps: [
        ...[
          { id: "hut", name: "Hut" },
          { id: "fly", name: "Fly camp" },
        ].map((camp) => ({ ...camp, position: { lat: -45.03, lon: 168.66 } })),
      ],
    };
    const away = smallTrip(oneDay(DAY, "+12:00", { base: "fly" }), { facts: elsewhere });
    expect(leave(away).result).toBe("NOT CHECKED");
    expect(leave(away).text).toMatch(/the way there from Fly camp is not known/);
    expect(leave(smallTrip(oneDay(DAY, "+12:00", { base: undefined }))).text).toMatch(
      /no base of the trip is entered/,
    );
  });

  test("is stopped when the hunter would be awake for more than 17 hours at the climb down", () => {
    const long = smallTrip(oneDay(DAY, "+12:00", {}), far(260));
    const session = long.session(DAY, "evening");
    expect(session.assignment[0]!.reason).toMatch(/^STOP C19: Awake \d/);
    expect(session.schedule).toEqual([]);
    expect(checkOf(long.day(DAY), "C19", "a", "evening")!.result).toBe("STOP");
  });
});

test("hours awake are not known when nobody was woken for a sit that day", () => {
  const sit = { localDate: DAY, session: "evening", hunter: "a", site: "site-1", walkIn: "path" };
  const trip = smallTrip(oneDay(DAY, "+12:00", { sits: [sit] }));
  expect(checkOf(trip.day(DAY), "C19", "a", "evening")!.result).toBe("NOT CHECKED");
});
