import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { areaFrame } from "../../../scripts/briefing/pages/areaFrame.ts";
import type { AreaPack } from "../../../scripts/briefing/pages/sheetParts.ts";
import { type DaySheet, daySheets } from "../../../scripts/briefing/pages/trips/daySheet.ts";
import { packedTrips } from "../../../scripts/briefing/pages/trips/packedTrips.ts";
import type { SharedData } from "../../../scripts/content/areaContent.ts";
import { larchTripArea, tripCheck } from "../../fixtures/packs/larchTrip.ts";
import { shared } from "../../fixtures/packs/larchValley.ts";
import { composed, loadDemo } from "../composedAreas.ts";

const sheets = (area: AreaPack, data: SharedData = shared): DaySheet[] =>
  daySheets(areaFrame(area, data, {}), packedTrips(area), data);
const names = (sheet: DaySheet, session: number): string[] =>
  (sheet.sessions[session]?.ranking ?? []).flatMap((group) => group.rows.map((row) => row.site));

describe("a day sheet", () => {
  test("there is one for each day of the trip", () => {
    expect(sheets(larchTripArea()).map((sheet) => sheet.permalink)).toEqual([
      "areas/larch-valley/trips/april/day-2026-04-04.html",
      "areas/larch-valley/trips/april/day-2026-04-05.html",
    ]);
  });

  test("answers who sits where, the wind expected and back by, and never offers a stopped choice", () => {
    const [day] = sheets(larchTripArea());
    expect(day?.answer).toEqual({
      core: "Morning: Ann at 3. Evening: Bo STOP at 8.",
      rest: "Expected wind from NW. Back by about 11:00.",
    });
    expect(day?.exception).toMatch(/^Not if light wind comes: morning at 3, from /);
  });

  test("ranks with reason, sit until rounded down to a quarter hour, sit from up, leaving down to 5 min", () => {
    const [day] = sheets(larchTripArea());
    expect(day?.sessions[0]?.ranking).toEqual([
      {
        verdict: "suits",
        rows: [
          {
            verdict: "suits",
            site: "3 Larch bench",
            number: 3,
            sit: "about 07:45 until about 09:15",
            leave: "about 05:20 by Creek path",
            reason: "Drift goes ENE until the turn.",
            localNote: false,
          },
        ],
      },
    ]);
    expect(day?.sessions[0]?.stopped).toEqual([{ sites: "8 Dead spruce", reason: "Dead limb overhead." }]);
  });

  test("the schedule runs by the clock, deadlines are framed, legal ends outside the sit are left out", () => {
    const [day] = sheets(larchTripArea());
    expect(day?.sessions[0]?.schedule).toEqual([
      { time: "05:23", who: "Ann", where: "Creek hut", task: "leave for 3 by Creek path", framed: false },
      {
        time: "about 06:20",
        who: "Ann",
        where: "site 3",
        task: "at the tree: lists before the climb",
        framed: false,
      },
      { time: "07:37", who: "Ann", where: "all", task: "legal hours start", framed: false },
      { time: "07:38", who: "Ann", where: "all", task: "first light", framed: false },
      {
        time: "about 09:15",
        who: "Ann",
        where: "site 3",
        task: "sit until now; then leave quietly",
        framed: true,
      },
      {
        time: "10:00",
        who: "Ann",
        where: "site 3",
        task: "unload, lower the weapon, start down tied on",
        framed: false,
      },
      { time: "about 11:00", who: "Ann", where: "Creek hut", task: "back by", framed: true },
      { time: "11:30", who: "home", where: "phone", task: "start asking: ring Ann", framed: true },
      {
        time: "12:30",
        who: "home",
        where: "phone",
        task: "call for help for Ann: read the emergency page aloud",
        framed: true,
      },
    ]);
  });

  test("legal hours name whose rule and source; no rule entered is not confirmed and has no window", () => {
    const [first, second] = sheets(larchTripArea());
    expect(first?.legal).toMatchObject([
      { title: "Legal hours", legal: { window: "07:37 to 20:00", confirmed: true } },
    ]);
    expect(first?.legal[0]?.source).toMatch(/^Set by the law\. Invented act s\.4/);
    expect(second?.legal[0]?.legal).toMatchObject({ window: "LEGAL HOURS NOT CONFIRMED", confirmed: false });
    expect(second?.charts).toEqual([]);
  });

  test("on the night of a clock change the change and the offset after it are told", () => {
    const [first, second] = sheets(larchTripArea());
    expect(first?.clock).toBe("24-hour clock, UTC+13.");
    expect(second?.clock).toBe("Clocks go back on 5 Apr at 03:00 to 02:00, then UTC+12. At noon UTC+12.");
  });

  test("without a forecast it says so and gives the winds of that day to look up, a stopped site as STOP", () => {
    const [, day] = sheets(larchTripArea());
    expect(day?.sessions[0]?.noForecast).toMatch(/^No forecast for this day/);
    expect(day?.sessions[0]?.ranking).toBeNull();
    expect(day?.lookup.map((matrix) => matrix.rows.length)).toEqual([17, 17]);
    expect(day?.lookup[0]?.sites).toEqual([
      { number: 3, name: "Larch bench", barred: null },
      { number: 8, name: "Dead spruce", barred: "STOP" },
    ]);
    const northWest = day?.lookup[0]?.rows.find((row) => row.wind === "NW");
    expect(northWest?.groups[0]?.cells).toEqual([{ verdict: "suits", localNote: false }]);
    expect(day?.lookup[1]?.rows[0]?.groups[0]?.cells[0]?.verdict).toBe("not assessed");
  });

  test("an old forecast is a Note unless its check already is a Warning", () => {
    const area = larchTripArea();
    area.pack.trips![0]!.days[0]!.sessions[0]!.forecast!.old = true;
    expect(sheets(area)[0]?.cautions.map((box) => `${box.level}: ${box.title}`)).toEqual([
      "note: old forecast, morning and evening",
    ]);
    expect(sheets(area)[0]?.sessions[0]?.forecast?.source).toMatch(/OLD FORECAST/);
    area.pack.trips![0]!.days[0]!.checks.push(
      tripCheck("C26", "CAUTION", "Old forecast, issued 30 h before.", "morning"),
    );
    expect(sheets(area)[0]?.cautions.map((box) => `${box.level}: ${box.title}`)).toEqual([
      "warning: Age of facts, morning: CAUTION",
    ]);
  });

  test("checks stand worst first with blanks where nothing was checked, OK ones apart", () => {
    const [day] = sheets(larchTripArea());
    expect(day?.checks).toEqual([
      { title: "Load, Bo", result: "NOT CHECKED", text: "Load not known.", pen: true },
      {
        title: "Fire ban",
        result: "NOT CHECKED",
        text: "Fire ban today: not known, ask and write it in.",
        pen: true,
      },
    ]);
    expect(day?.fine).toMatchObject([{ title: "Load", text: "Ann: Load 85 kg; the stand carries 136 kg." }]);
    expect(day?.fineElsewhere).toBe("Start down, Ann.");
  });

  test("a day outside every season says that the season is not confirmed", () => {
    const area = larchTripArea();
    expect(sheets(area)[0]?.seasonNote).toBeNull();
    area.content.facts.season = [];
    expect(sheets(area)[0]?.seasonNote).toBe("Season not confirmed for this day.");
  });

  test("home contacts are in the owner edition alone, the phones of the hunters are blanks", () => {
    const area = larchTripArea();
    expect(sheets(area)[0]?.contacts).toEqual([
      { label: "Ann", value: null },
      { label: "Bo", value: null },
      { label: "Home of Ann", value: "Her brother, number at home" },
    ]);
    area.pack.edition = "party";
    expect(sheets(area)[0]?.contacts.map((row) => row.label)).toEqual(["Ann", "Bo"]);
  });

  test("a session without times of its own says why there is none", () => {
    const area = larchTripArea();
    Object.assign(area.pack.trips![0]!.days[0]!.sessions[0]!, {
      from: null,
      to: null,
      why: { from: "the sun stays down" },
    });
    expect(sheets(area)[0]?.sessions[0]?.title).toBe("Morning: no session, the sun stays down");
  });

  test("a trip day without light in pack.json is refused", () => {
    const area = larchTripArea();
    area.pack.days = [];
    expect(() => sheets(area)).toThrow(/no light for the trip day 2026-04-04/);
  });
});

describe("a STOP wins over every choice and ranking", () => {
  test("a STOP of the whole session leaves no site, no schedule and nobody aloft", () => {
    const area = larchTripArea();
    area.pack.trips![0]!.days[0]!.checks.push(
      tripCheck("C11", "STOP", "Thunder forecast: do not climb.", "morning"),
    );
    const [day] = sheets(area);
    expect(day?.answer.core).toBe("Morning: STOP, nobody climbs. Evening: Bo STOP at 8.");
    expect(day?.answer.rest).not.toMatch(/Back by/);
    expect(day?.exception).toBeNull();
    expect(day?.sessions[0]?.stop).toBe("STOP: Thunder forecast: do not climb.");
    expect(names(day!, 0)).toEqual([]);
    expect(day?.sessions[0]?.schedule).toEqual([]);
    expect(day?.sessions[0]?.sits[0]?.stop).toBe("Thunder forecast: do not climb.");
  });

  test("a site whose own tree is stopped is out even when the ranking still has it", () => {
    const area = larchTripArea();
    const session = area.pack.trips![0]!.days[0]!.sessions[0]!;
    session.stopped = [];
    session.ranking!.push({ ...session.ranking![0]!, site: "dead-spruce" });
    expect(names(sheets(area)[0]!, 0)).toEqual(["3 Larch bench"]);
    expect(sheets(area)[0]?.sessions[0]?.stopped[0]?.sites).toBe("8 Dead spruce");
  });

  test("a site on ground without permission is out", () => {
    const area = larchTripArea();
    const session = area.pack.trips![0]!.days[0]!.sessions[0]!;
    session.ranking!.push({ ...session.ranking![0]!, site: "west-spur" });
    expect(names(sheets(area)[0]!, 0)).toEqual(["3 Larch bench"]);
  });

  describe("in the demonstration trips", () => {
    let areas: AreaPack[];
    let demoShared: SharedData;
    beforeAll(async () => {
      const loaded = await Promise.all([loadDemo("turnpail-hollow"), loadDemo("brackwether-range")]);
      demoShared = loaded[0]!.shared;
      areas = loaded.map((area) => composed(area));
    }, 60_000);

    test("no page offers a site of the stopped list, whichever sites a seeded draw stops", () => {
      const draw = fc.tuple(fc.nat(1), fc.nat(7), fc.nat(3), fc.nat(1), fc.nat(9), fc.boolean());
      fc.assert(
        fc.property(draw, ([a, t, d, s, n, isWhole]) => {
          const whole = areas[a]!;
          const area = { ...whole, pack: { ...whole.pack, trips: structuredClone(whole.pack.trips) } };
          const trip = area.pack.trips![t % area.pack.trips!.length]!;
          const day = trip.days[d % trip.days.length]!;
          const session = day.sessions[s % day.sessions.length]!;
          const site = area.pack.sites![n % area.pack.sites!.length]!;
          area.pack.trips = [{ ...trip, days: [day] }];
          if (whole)
            day.checks.push(tripCheck("C10", "STOP", "Gusts 60 km/h: do not climb.", session.session));
          else session.stopped.push({ site: site.id, check: "C23", reason: "drawn" });
          const [sheet] = sheets(area, demoShared);
          const shown = sheet!.sessions.find((entry) =>
            entry.title.toLowerCase().startsWith(session.session),
          )!;
          const offered = (shown.ranking ?? []).flatMap((group) => group.rows.map((row) => row.number));
          const open = shown.sits.filter((sit) => sit.stop === null).map((sit) => sit.number);
          if (isWhole) expect([offered, open, shown.schedule]).toEqual([[], [], []]);
          if (!isWhole) {
            expect(offered).not.toContain(site.number);
            expect(open).not.toContain(String(site.number));
            const places = shown.schedule.map((row) => row.where);
            const numbers = places.flatMap((place) => (/^sites? (.*)$/.exec(place)?.[1] ?? "").split(", "));
            expect(numbers).not.toContain(String(site.number));
          }
        }),
        { seed: 7, numRuns: 120 },
      );
    }, 60_000);

    test("the answer line has at most 22 words and every estimate of a schedule says about", () => {
      for (const area of areas) {
        for (const sheet of sheets(area, demoShared)) {
          const answer = `${sheet.answer.core} ${sheet.answer.rest ?? ""}`;
          expect(answer.split(/\s+/).filter((word) => /\w/.test(word)).length, answer).toBeLessThanOrEqual(
            22,
          );
          for (const session of sheet.sessions) {
            for (const row of session.schedule)
              expect(row.time).toMatch(/^(about )?\d\d:\d\d( \(UTC[^)]*\))?$/);
            const backs = session.schedule.filter((row) => row.task === "back by");
            expect(backs.every((row) => row.time.startsWith("about "))).toBe(true);
          }
        }
      }
    }, 60_000);

    test("a thunder day keeps everybody on the ground, a day without forecast has its own winds", () => {
      const days = sheets(areas[0]!, demoShared);
      const thunder = days.find((sheet) => sheet.permalink.endsWith("bow-clock-change/day-2027-11-07.html"));
      expect(thunder?.answer.core).toMatch(/Evening: STOP, nobody climbs\.$/);
      expect(thunder?.clock).toMatch(/^Clocks go back on Nov 7 at 02:00 to 01:00, then UTC-5/);
      const blind = days.find((sheet) => sheet.permalink.endsWith("rifle-first-week/day-2027-11-15.html"));
      expect(blind?.lookup.length).toBe(2);
      expect(blind?.sessions.every((session) => session.noForecast !== null)).toBe(true);
    }, 60_000);
  });
});
