import { describe, expect, test } from "vitest";
import { daylight } from "../../../scripts/light/daylight.ts";
import {
  checkOf,
  FACTS,
  forecast,
  HALF_HOUR_RULE,
  HUNTER,
  hoursOf,
  oneDay,
  SOUND_SITE,
  smallTrip,
  type TripSession,
} from "./smallTrips.ts";

const DAY = "2026-05-06"; // a Wednesday
const whole = (given: Record<string, unknown> = {}, area = {}) =>
  smallTrip(oneDay(DAY, "+12:00", given), area);
const tree = SOUND_SITE.tree;
const withTree = (condition: Record<string, unknown>) => ({
  sites: [{ ...SOUND_SITE, tree: { ...tree, condition: { ...tree.condition, ...condition } } }],
});
const withHour = (hour: string, row: Record<string, unknown>) => ({
  forecast: forecast(
    `${DAY}T00:00:00+12:00`,
    hoursOf(DAY).map((given) => (given.hour === hour ? { ...given, ...row } : given)),
  ),
});

/** A session in which nobody goes anywhere: the site is stopped, the choice kept with its reason, and no schedule. */
function expectStopped(session: TripSession, check: string, reason: RegExp): void {
  expect(session.ranking ?? []).toEqual([]);
  expect(session.stopped).toMatchObject([{ site: "site-1", check }]);
  expect(session.stopped[0]!.reason).toMatch(reason);
  expect(session.assignment).toMatchObject([{ hunter: "a", site: "site-1", by: "owner" }]);
  expect(session.assignment[0]!.reason).toMatch(new RegExp(`^STOP ${check}: `));
  expect(session.schedule).toEqual([]);
}

test("a whole day of which everything is known has no STOP and a schedule for both sessions", () => {
  const day = whole().day(DAY);
  expect(day.checks.filter((check) => check.result === "STOP")).toEqual([]);
  expect(day.sessions.map((session) => session.stopped)).toEqual([[], []]);
  expect(day.sessions.map((session) => session.schedule.length > 8)).toEqual([true, true]);
});

describe("a STOP of the site", () => {
  test("is a fault of its tree, on every day", () => {
    const trip = whole({}, withTree({ deadLimbs: "fault" }));
    for (const id of ["morning", "evening"]) expectStopped(trip.session(DAY, id), "C23", /dead limb/);
  });

  test("is judged for the day of the trip: a stand that is to be gone by then", () => {
    const stand = { standId: "stand-broad", labelled: true, placedOn: "2026-04-20", removeBy: "2026-05-06" };
    const facts = {
      standRules: {
        text: "made up",
        source: "made up",
        checkedOn: "2026-01-05",
        from: "2026-04-01",
        removeBy: "2026-12-01",
        labelRequired: true,
      },
    };
    const sites = [{ ...SOUND_SITE, stand }];
    const next = "2026-05-07";
    const trip = smallTrip(oneDay(DAY, "+12:00", { to: next }), { facts, sites });
    expect(trip.session(DAY, "morning").stopped).toEqual([]);
    expect(trip.session(next, "morning").stopped).toMatchObject([{ site: "site-1", check: "C22" }]);
    expect(checkOf(trip.day(DAY), "C22", "site-1")!.result).toBe("OK");
  });

  test("is a permission that is over, told under the boundary's id in its own words", () => {
    const permission = {
      id: "east",
      kind: "permit",
      block: "east",
      from: "2026-01-01",
      to: "2026-05-05",
      source: "made up",
      checkedOn: "2026-01-05",
    };
    const facts = {
      permission: [permission],
      blocks: [{ id: "east", name: "East block", centre: { lat: -45.03, lon: 168.66 } }],
    };
    const trip = whole({}, { facts, sites: [{ ...SOUND_SITE, block: "east" }] });
    expectStopped(trip.session(DAY, "morning"), "C30", /^Permission for East block ended on 2026-05-05\.$/);
    const held = whole(
      {},
      {
        facts: { ...facts, permission: [{ ...permission, to: DAY }] },
        sites: [{ ...SOUND_SITE, block: "east" }],
      },
    );
    expect(held.session(DAY, "morning").stopped).toEqual([]);
  });
});

describe("a STOP of the weather takes every site off its session alone", () => {
  test.each([
    { name: "thunder", row: { thunder: true }, check: "C11" },
    { name: "gusts of 50 km/h", row: { gust: 50 / 3.6 }, check: "C10" },
    { name: "a mean wind of 39 km/h", row: { windSpeed: 39 / 3.6, gust: 39 / 3.6 }, check: "C10" },
    { name: "freezing rain", row: { freezingRain: true }, check: "C29" },
    { name: "a wind chill of -27", row: { temp: -27, windSpeed: 0, gust: 0 }, check: "C29" },
  ])("$name", ({ row, check }) => {
    const trip = whole(withHour("16:00", row));
    expectStopped(trip.session(DAY, "evening"), check, /./);
    expect(trip.session(DAY, "morning").stopped).toEqual([]);
    expect(trip.session(DAY, "morning").schedule.length).toBeGreaterThan(8);
  });

  test("also while the hunter climbs up before the session, or down after it", () => {
    const climbing = whole(withHour("06:00", { thunder: true })).session(DAY, "morning");
    expect(climbing.from!.slice(11, 13)).toBe("07");
    expectStopped(climbing, "C11", /do not climb/);
    expectStopped(whole(withHour("10:00", { thunder: true })).session(DAY, "morning"), "C11", /do not climb/);
  });

  test("but not when it comes hours later", () => {
    expect(whole(withHour("12:00", { thunder: true })).session(DAY, "morning").stopped).toEqual([]);
  });
});

describe("a STOP of the hunter keeps the choice without times, and the site for others", () => {
  const session = (hunter: Record<string, unknown>) =>
    whole({ hunters: [{ ...HUNTER, ...hunter }] }).session(DAY, "morning");
  const expectHunterStopped = (found: TripSession, check: string) => {
    expect(found.assignment[0]!.reason).toMatch(new RegExp(`^STOP ${check}: `));
    expect(found.schedule).toEqual([]);
    expect(found.ranking).toHaveLength(1);
  };

  test("a load over the label", () => {
    expectHunterStopped(session({ loadKg: { ...HUNTER.loadKg, body: 123 } }), "C6");
    expect(session({ loadKg: { ...HUNTER.loadKg, body: 122 } }).schedule.length).toBeGreaterThan(8);
  });

  test("a harness past its date, or one that has held a fall", () => {
    expectHunterStopped(session({ harness: { ...HUNTER.harness, replaceBy: "2026-05-05" } }), "C7");
    expectHunterStopped(session({ harness: { ...HUNTER.harness, fallen: true } }), "C7");
    expect(session({ harness: { ...HUNTER.harness, replaceBy: DAY } }).schedule.length).toBeGreaterThan(8);
  });

  test("a trunk that the hunter's own stand does not fit, though another stand would", () => {
    const thick = { ...SOUND_SITE, tree: { ...tree, girthMm: 1350 } }; // 430 mm: over the 420 of the light stand
    const trip = whole({ hunters: [{ ...HUNTER, standId: "stand-light" }] }, { sites: [thick] });
    expectHunterStopped(trip.session(DAY, "morning"), "C5");
    expect(whole({}, { sites: [thick] }).session(DAY, "morning").schedule.length).toBeGreaterThan(8);
  });

  test("is asked of the stand that is left at the site, not of the hunter's own", () => {
    const stand = { standId: "stand-long", labelled: true, placedOn: null, removeBy: null };
    const heavy = { ...HUNTER, loadKg: { ...HUNTER.loadKg, body: 130 } }; // 144 kg: over 136, under the 150 of the stand there
    const trip = whole(
      { hunters: [heavy] },
      { sites: [{ ...SOUND_SITE, stand, tree: { ...tree, girthMm: 1200 } }] },
    );
    expect(checkOf(trip.day(DAY), "C6", "a")!.inputs.ratedLoadKg).toBe(150);
    expect(trip.session(DAY, "morning").assignment[0]!.reason).toBe("written in the trip");
  });

  test("is none at a ground seat, which nobody climbs", () => {
    const { tree: _, ...ground } = { ...SOUND_SITE, platformHeightM: 0 };
    const fallen = { ...HUNTER, harness: { ...HUNTER.harness, fallen: true } };
    const found = whole({ hunters: [fallen] }, { sites: [ground] }).session(DAY, "morning");
    expect(found.assignment[0]!.reason).toBe("written in the trip");
  });
});

describe("legal light of the trip's own hunt", () => {
  const law = (given: Record<string, unknown>) => ({
    facts: { shootingLight: { law: [{ ...HALF_HOUR_RULE, ...given }] } },
  });
  const legal = (area: object) => checkOf(whole({}, area).day(DAY), "C1", "morning")!;

  // Rules as jurisdictions write them: offsets at each end, in minutes, and a land rule by the clock.
  test.each([
    { start: -30, end: 30 },
    { start: -30, end: 0 },
    { start: -60, end: 60 },
    { start: -90, end: 90 },
    { start: 0, end: 20 },
  ])("from sunrise $start to sunset $end is cut to whole minutes inside", ({ start, end }) => {
    const windows = [
      { start: { anchor: "sunrise", offsetMin: start }, end: { anchor: "sunset", offsetMin: end } },
    ];
    const { shootingLight } = whole({}, law({ windows })).session(DAY, "morning");
    const { sunrise, sunset } = daylight(DAY, { lat: -45.0312, lon: 168.6626 }, "Pacific/Auckland");
    const first = Date.parse(shootingLight.start!) - (sunrise!.getTime() + start * 60_000);
    const last = sunset!.getTime() + end * 60_000 - Date.parse(shootingLight.end!);
    for (const inwardMs of [first, last]) expect(inwardMs >= 0 && inwardMs < 60_000).toBe(true);
    expect(shootingLight).toMatchObject({ status: "confirmed", startLayer: "law", endLayer: "law" });
  });

  test("ends with the land's rule where that is sooner, and the sit with it", () => {
    const landRule = [
      {
        ...HALF_HOUR_RULE,
        id: "gate",
        windows: [{ start: { anchor: "clock", at: "00:00" }, end: { anchor: "clock", at: "17:30" } }],
      },
    ];
    const area = { facts: { shootingLight: { law: [HALF_HOUR_RULE], landRule } } };
    const evening = whole({}, area).session(DAY, "evening");
    expect(evening.shootingLight).toMatchObject({ endLayer: "landRule", end: `${DAY}T17:30:00+12:00` });
    expect(evening.schedule.find((row) => row.what === "start down")!.at).toBe(`${DAY}T17:30:00+12:00`);
    expect(evening.ranking![0]!.reason).toMatch(/Sit until the end of legal light, 17:30\./);
  });

  test("closed that weekday stops every site, and is told under C1", () => {
    const applies = { species: ["any"], method: ["any"], land: ["any"], closedWeekdays: ["wed"] };
    expectStopped(whole({}, law({ applies })).session(DAY, "morning"), "C1", /closes Wednesdays/);
    expect(legal(law({ applies })).result).toBe("STOP");
  });

  test("closed for the trip's weapon alone stops that trip, not one with another", () => {
    const applies = { species: ["any"], land: ["any"] };
    const rules = [
      { ...HALF_HOUR_RULE, id: "bow", applies: { ...applies, method: ["bow"] } },
      { ...HALF_HOUR_RULE, id: "rifle", applies: { ...applies, method: ["rifle"], closedDates: [DAY] } },
    ];
    const season = ["rifle", "bow"].map((method) => ({ ...FACTS.season[0], method }));
    const area = { facts: { season, shootingLight: { law: rules } } };
    expectStopped(whole({ method: "rifle" }, area).session(DAY, "morning"), "C1", /closes 2026-05-06/);
    expect(whole({ method: "bow" }, area).session(DAY, "morning").stopped).toEqual([]);
  });

  test("that no rule confirms keeps the plan, is not checked, and stands in no schedule", () => {
    for (const [area, status] of [
      [{ facts: { shootingLight: {} } }, "not entered"],
      [law({ valid: { from: "2025-01-01", to: "2026-05-05" } }), "lapsed"],
      [law({ source: { ...HALF_HOUR_RULE.source, status: "unconfirmed" } }), "unconfirmed"],
    ] as const) {
      const trip = whole({}, area);
      const evening = trip.session(DAY, "evening");
      expect(evening.shootingLight.status).toBe(status);
      expect(legal(area).result).toBe("NOT CHECKED");
      expect(checkOf(trip.day(DAY), "C14", "a", "evening")!.result).toBe("NOT CHECKED");
      expect(evening.schedule.map((row) => row.what)).not.toContain("shooting end");
      expect(evening.schedule.map((row) => row.what)).toContain("start down");
    }
  });

  test("a rule that has lapsed still ends the sit no later than it says", () => {
    const evening = whole(
      {},
      law({
        valid: { from: "2025-01-01", to: "2026-05-05" },
        windows: [{ start: { anchor: "sunrise" }, end: { anchor: "sunset", offsetMin: -30 } }],
      }),
    ).session(DAY, "evening");
    expect(evening.schedule.find((row) => row.what === "start down")!.at).toBe(evening.shootingLight.end);
  });

  test("an old rule is marked with its date", () => {
    const old = law({ source: { ...HALF_HOUR_RULE.source, checkedOn: "2025-05-05" } });
    expect(checkOf(whole({}, old).day(DAY), "C26", "half-hour")!.result).toBe("CAUTION");
    const fresh = law({ source: { ...HALF_HOUR_RULE.source, checkedOn: "2025-05-06" } });
    expect(checkOf(whole({}, fresh).day(DAY), "C26", "half-hour")!.result).toBe("OK");
  });
});

test("a session that does not take place keeps the owner's choice, with a STOP and no times", () => {
  const sessions = [
    { id: "morning", from: { anchor: "clock", at: "11:00" }, to: { anchor: "clock", at: "10:00" } },
  ];
  const found = whole(
    { sits: [{ localDate: DAY, session: "morning", hunter: "a", site: "site-1" }] },
    { facts: { sessions } },
  );
  const session = found.session(DAY, "morning");
  expect(session).toMatchObject({
    from: null,
    to: null,
    forecast: null,
    ranking: null,
    stopped: [],
    schedule: [],
  });
  expect(Object.keys(session.why)).toEqual(["from", "to", "forecast", "ranking"]);
  expect(session.assignment[0]!.reason).toMatch(/^STOP: No morning session that day/);
});

describe("the sites of a trip", () => {
  const second = { ...SOUND_SITE, number: 2, position: { lat: -45.0315, lon: 168.6661 } };
  const sites = [SOUND_SITE, second];

  test("are those it allows, by verdict, clean share, then number", () => {
    const both = whole({}, { sites }).session(DAY, "morning");
    expect(both.ranking!.map((row) => row.site)).toEqual(["site-1", "site-2"]);
    const one = whole({ allowedSites: ["site-2"], sits: [] }, { sites }).session(DAY, "morning");
    expect(one.ranking!.map((row) => row.site)).toEqual(["site-2"]);
  });

  test("leave a site that only a sit names out of the ranking, and keep its schedule", () => {
    const found = whole({ allowedSites: ["site-2"] }, { sites }).session(DAY, "morning");
    expect(found.ranking!.map((row) => row.site)).toEqual(["site-2"]);
    expect(found.assignment).toMatchObject([{ site: "site-1", reason: "written in the trip" }]);
    expect(found.schedule.length).toBeGreaterThan(8);
  });

  test("are reached by the walk that the sit names, else by the quickest from the base", () => {
    const walkIns = [
      { id: "far", name: "Far", from: "hut", minutes: [50, 90] },
      { id: "near", name: "Near", from: "hut", minutes: [30, 40] },
      { id: "other", name: "Other", from: "fly", minutes: [5, 10] },
    ];
    const camps = ["hut", "fly"].map((id) => ({ id, name: id, position: { lat: -45.03, lon: 168.66 } }));
    const area = { facts: { camps }, sites: [{ ...SOUND_SITE, walkIns }] };
    const sit = { localDate: DAY, session: "morning", hunter: "a", site: "site-1" };
    const walk = (given: Record<string, unknown>) =>
      whole(given, area).session(DAY, "morning").ranking![0]!.walkIn;
    expect(walk({ sits: [{ ...sit, walkIn: "far" }] })).toBe("far");
    expect(walk({ sits: [sit] })).toBe("near");
    expect(walk({ sits: [] })).toBe("near");
    expect(walk({ sits: [], base: undefined })).toBe("other");
  });
});
