import { beforeAll, describe, expect, test } from "vitest";
import type { PackTrip } from "../../scripts/content/schema/packSchema.ts";
import { type CachedArea, cachedArea, tripsOf } from "../briefing/trips/cachedTrip.ts";

// What a careful reader must find on the day sheets of both demonstration areas. Times with ~ in the demonstration's own table
// are given with the tolerance named beside them.

type Day = PackTrip["days"][number];
let hollow: CachedArea;
let range: CachedArea;
const days = new Map<string, Day>();

beforeAll(async () => {
  [hollow, range] = await Promise.all([cachedArea("turnpail-hollow"), cachedArea("brackwether-range")]);
  for (const trip of [...tripsOf(hollow), ...tripsOf(range)]) {
    for (const day of trip.days) days.set(day.localDate, day);
  }
}, 60_000);

const dayOf = (localDate: string): Day => days.get(localDate)!;
const sessionOf = (localDate: string, id: string) => dayOf(localDate).sessions.find((s) => s.session === id)!;
const checkOf = (localDate: string, id: string, subject: string) =>
  dayOf(localDate).checks.find((check) => check.id === id && check.subject === subject)!;
const clock = (at: string | null | undefined): string | undefined => at?.slice(11, 16);
const sitOf = (localDate: string, session: string, hunter: string) =>
  sessionOf(localDate, session).assignment.find((sit) => sit.hunter === hunter)!;

describe("Turnpail Hollow", () => {
  test("on Saturday 6 November the plan holds on W, and the sheet names 17:00 as the hour to come down", () => {
    const evening = sessionOf("2027-11-06", "evening");
    const best = evening.ranking![0]!;
    expect(best.verdict).toBe("suits");
    expect(best.reason).toMatch(/^Until about 17:00, then wind from S carries/);
    expect(clock(best.sitUntil)).toBe("17:00");
    // The owner's own choice ends then too.
    expect(sitOf("2027-11-06", "evening", "fenna")).toMatchObject({
      site: "hatch-gap",
      reason: "written in the trip",
    });
    const down = evening.schedule.find((row) => row.what === "start down")!;
    expect([down.where, clock(down.at)]).toEqual(["hatch-gap", "17:00"]);
  });

  test("on Sunday 7 November every time is an hour earlier and UTC-5 shows", () => {
    const [saturday, sunday] = ["2027-11-06", "2027-11-07"].map((date) => sessionOf(date, "morning"));
    expect(saturday!.from).toMatch(/-04:00$/);
    expect(sunday!.from).toMatch(/-05:00$/);
    const minutes = (at: string | null): number => Number(at!.slice(11, 13)) * 60 + Number(at!.slice(14, 16));
    // An hour less about a minute: the sun comes later from day to day.
    expect(minutes(saturday!.from) - minutes(sunday!.from)).toBeGreaterThanOrEqual(58);
    expect(minutes(saturday!.from) - minutes(sunday!.from)).toBeLessThanOrEqual(60);
  });

  test("thunder from 13:00 on Sunday 7 November stops every site of the evening, and the morning is out well before", () => {
    const evening = sessionOf("2027-11-07", "evening");
    expect(evening.ranking).toEqual([]);
    expect(evening.stopped.map((row) => row.check)).toEqual([
      "C11",
      "C11",
      "C23",
      "C11",
      "C11",
      "C11",
      "C11",
    ]);
    expect(sitOf("2027-11-07", "evening", "odell").reason).toBe("STOP C11: Thunder forecast: do not climb.");
    expect(evening.schedule).toEqual([]);
    const outs = sessionOf("2027-11-07", "morning").schedule.filter((row) => row.what === "out");
    expect(outs).toHaveLength(2);
    for (const out of outs) expect(clock(out.at)! < "13:00").toBe(true);
  });

  test("legal light ends by the land rule on 5 and 6 November, then by the state's", () => {
    const light = (date: string) => sessionOf(date, "evening").shootingLight;
    expect([light("2027-11-05"), light("2027-11-06")].map((l) => [clock(l.end), l.endLayer])).toEqual([
      ["18:15", "landRule"],
      ["18:15", "landRule"],
    ]);
    expect([clock(light("2027-11-07").end), light("2027-11-07").endLayer]).toEqual(["17:29", "law"]);
  });

  test("rifles have 06:28 to 16:53 on 13 November under a rule marked old, no hours before it, and no Sunday", () => {
    const light = (date: string) => sessionOf(date, "morning").shootingLight;
    expect([clock(light("2027-11-13").start), clock(light("2027-11-13").end)]).toEqual(["06:28", "16:53"]);
    expect(checkOf("2027-11-13", "C26", "rifle-2027").result).toBe("CAUTION");
    expect(light("2027-11-12").status).toBe("not entered");
    expect(checkOf("2027-11-12", "C1", "morning").result).toBe("NOT CHECKED");
    expect(checkOf("2027-11-14", "C1", "morning")).toMatchObject({ result: "STOP" });
    expect(checkOf("2027-11-14", "C1", "morning").text).toMatch(/closes Sundays/);
    expect(sessionOf("2027-11-14", "evening").ranking).toEqual([]);
  });

  test("Orchard Corner and Landing East have no lane for a bow, and no bow is sent to Landing East", () => {
    const { content } = hollow.context.area;
    const without = content.sites.filter((site) => site.facts.lanes.every((lane) => lane.maxRangeM > 30));
    expect(without.map(({ id }) => id)).toEqual(["orchard-corner", "landing-east"]);
    const bowSits = content.trips.find(({ id }) => id === "bow-clock-change")!.facts.sits;
    expect(bowSits.map((sit) => sit.site)).not.toContain("landing-east");
  });

  test("the dead limb of Orchard Corner stops it on every day, whoever chose it", () => {
    for (const date of ["2027-11-05", "2027-11-13", "2027-11-15"]) {
      expect(sessionOf(date, "evening").stopped).toContainEqual({
        site: "orchard-corner",
        check: "C23",
        reason: "Tree: dead limb overhead.",
      });
    }
    expect(sitOf("2027-11-05", "evening", "fenna").reason).toMatch(/^STOP C23/);
  });

  test("Garrick may not use the light stand: 118 kg over its 113, and his harness has no date", () => {
    expect(checkOf("2027-11-12", "C6", "garrick")).toMatchObject({
      result: "STOP",
      inputs: { sumKg: 118, ratedLoadKg: 113 },
    });
    expect(checkOf("2027-11-12", "C7", "garrick").result).toBe("NOT CHECKED");
    for (const [date, session] of [
      ["2027-11-12", "morning"],
      ["2027-11-13", "evening"],
    ] as const) {
      expect(sitOf(date, session, "garrick")).toMatchObject({ site: "hatch-gap", by: "owner" });
      expect(sitOf(date, session, "garrick").reason).toMatch(/^STOP C6/);
      expect(sessionOf(date, session).schedule.flatMap((row) => row.who)).not.toContain("garrick");
    }
  });

  test("Lower Bench's tree is NOT CHECKED on the day it is chosen", () => {
    expect(checkOf("2027-11-05", "C23", "lower-bench").result).toBe("NOT CHECKED");
  });

  test("Monday 8th is an old forecast with a wind to be careful of, Monday 15th has none", () => {
    expect(sessionOf("2027-11-08", "morning").forecast!.old).toBe(true);
    // 19 mph is 30.6 km/h: over the 29 at which small trees sway
    expect(checkOf("2027-11-08", "C10", "morning")).toMatchObject({
      result: "CAUTION",
      inputs: { windSpeedKmh: 30.6 },
    });
    for (const session of dayOf("2027-11-15").sessions) {
      expect(session).toMatchObject({ forecast: null, ranking: null });
      expect(session.assignment).toHaveLength(1);
    }
  });

  test("Landing West and Landing East are never taken together with rifles", () => {
    const rifle = tripsOf(hollow).find(({ id }) => id === "rifle-first-week")!;
    for (const { assignment } of rifle.days.flatMap((day) => day.sessions)) {
      expect(assignment.filter((sit) => sit.site.startsWith("landing-")).length).toBeLessThan(2);
    }
  });
});

describe("Brackwether Range", () => {
  test("on Saturday 3 April, E all afternoon is a gap and SE from 18:00 leaves the forks at best", () => {
    const { ranking } = sessionOf("2027-04-03", "evening");
    const rowOf = (site: string) => ranking!.find((row) => row.site === site)!;
    expect(ranking!.map((row) => row.verdict)).not.toContain("suits");
    expect(ranking![0]).toMatchObject({ site: "billhook-forks", verdict: "marginal" });
    expect(clock(rowOf("billhook-forks").sitFrom)! >= "17:00").toBe(true);
    expect(clock(rowOf("billhook-forks").sitUntil)).toBe("19:35");
    for (const site of ["tin-saddle", "flat-east"]) expect(rowOf(site).verdict).toBe("avoid");
    // the only other site that could be sat at all is over when the wind changes
    expect(clock(rowOf("flat-west").sitUntil)).toBe("18:00");
  });

  test("on Monday 5 April thunder and gusts over 50 stop the evening", () => {
    const evening = sessionOf("2027-04-05", "evening");
    expect(evening.ranking).toEqual([]);
    expect(checkOf("2027-04-05", "C10", "evening")).toMatchObject({
      result: "STOP",
      inputs: { gustKmh: 52 },
    });
    expect(checkOf("2027-04-05", "C11", "evening").result).toBe("STOP");
    expect(sitOf("2027-04-05", "evening", "marrit").reason).toMatch(/^STOP C10/);
    expect(sessionOf("2027-04-05", "morning").stopped.map((row) => row.site)).toEqual(["wallow-side"]);
  });

  test("Sunday's and Monday's forecast is old; Friday's is not", () => {
    const old = (date: string) => dayOf(date).sessions.map((session) => session.forecast!.old);
    expect(old("2027-04-02")).toEqual([false, false]);
    expect(old("2027-04-04")).toEqual([true, true]);
    expect(old("2027-04-05")).toEqual([true, true]);
  });

  test("on Sunday 4 April clocks went back: legal 06:21 to 18:33 at UTC+12, the end by club rule", () => {
    const { start, end, startLayer, endLayer } = sessionOf("2027-04-04", "morning").shootingLight;
    expect([start, end]).toEqual(["2027-04-04T06:21:00+12:00", "2027-04-04T18:33:00+12:00"]);
    expect([startLayer, endLayer]).toEqual(["law", "clubRule"]);
    const saturday = sessionOf("2027-04-03", "morning").shootingLight;
    expect([clock(saturday.start), clock(saturday.end)]).toEqual(["07:20", "19:35"]);
    const leave = sessionOf("2027-04-04", "morning").schedule.find((row) => row.what === "leave")!;
    expect(leave.at).toMatch(/\+12:00$/);
  });

  test("Flat West's tree is NOT CHECKED, and a newcomer may sit Flat East", () => {
    expect(checkOf("2027-04-02", "C23", "flat-west")).toMatchObject({ result: "NOT CHECKED" });
    expect(sitOf("2027-04-16", "morning", "isla")).toMatchObject({
      site: "flat-east",
      reason: "written in the trip",
    });
    const [isla, marrit] = ["2027-04-16", "2027-04-02"].map((date, i) =>
      sessionOf(date, "morning").schedule.find(
        (row) => row.what === "at tree" && row.who.includes(["isla", "marrit"][i]!),
      ),
    );
    expect([isla!.where, marrit!.where]).toEqual(["flat-east", "flat-east"]);
  });

  test("Flat West and Flat East, which face each other, are never taken together", () => {
    for (const { assignment } of tripsOf(range).flatMap((trip) => trip.days.flatMap((day) => day.sessions))) {
      expect(assignment.filter((sit) => sit.site.startsWith("flat-")).length).toBeLessThan(2);
    }
  });

  test("Teague's harness holds on Saturday 3 April and stops him from Sunday", () => {
    expect(checkOf("2027-04-03", "C7", "teague").result).toBe("OK");
    expect(checkOf("2027-04-04", "C7", "teague").result).toBe("STOP");
    expect(sitOf("2027-04-03", "morning", "teague").reason).toBe("written in the trip");
    expect(sitOf("2027-04-04", "morning", "teague").reason).toMatch(/^STOP C7/);
    expect(sessionOf("2027-04-04", "morning").schedule.flatMap((row) => row.who)).not.toContain("teague");
  });

  test("Marrit's light stand does not fit the forks; Warm Foot's trunk fits the long stand alone", () => {
    expect(sitOf("2027-04-02", "evening", "marrit").reason).toMatch(
      /^STOP C5: At Billhook Forks: Trunk 430 mm/,
    );
    expect(sitOf("2027-04-02", "morning", "teague")).toMatchObject({
      site: "billhook-forks",
      reason: "written in the trip",
    });
    const { checks } = range.sites.find(({ site }) => site.id === "warm-foot")!.site;
    const fits = checks.filter((check) => check.id === "C5").map((check) => [check.subject, check.result]);
    expect(Object.fromEntries(fits)).toEqual({
      "stand-broad": "STOP",
      "stand-light": "STOP",
      "stand-long": "OK",
    });
  });

  test("a hunter left alone in a session is known to be alone, and one too long awake is stopped", () => {
    expect(checkOf("2027-04-04", "C12", "marrit").inputs.isAlone).toBe(true);
    expect(sitOf("2027-04-03", "evening", "marrit").reason).toMatch(/^STOP C19: Awake 18\.\d h/);
  });
});
