import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TREE_TICKS } from "../../scripts/content/schema/siteSchema.ts";
import type { Check } from "../../scripts/safety/check.ts";
import { contactGaps } from "../../scripts/safety/contactGaps.ts";
import { darkWalk } from "../../scripts/safety/darkWalk.ts";
import { factAge, forecastAge } from "../../scripts/safety/factAge.ts";
import { fireBan } from "../../scripts/safety/fireBan.ts";
import { haulLine } from "../../scripts/safety/haulLine.ts";
import { heightCheck } from "../../scripts/safety/heightCheck.ts";
import { hoursAwake } from "../../scripts/safety/hoursAwake.ts";
import { leaveTime } from "../../scripts/safety/leaveTime.ts";
import { loadCheck } from "../../scripts/safety/loadCheck.ts";
import { overdue } from "../../scripts/safety/overdue.ts";
import { positionFormats } from "../../scripts/safety/positionFormats.ts";
import { standDates } from "../../scripts/safety/standDates.ts";
import { startDown } from "../../scripts/safety/startDown.ts";
import { thunder } from "../../scripts/safety/thunder.ts";
import { treeTicks } from "../../scripts/safety/treeTicks.ts";
import { trunkFit } from "../../scripts/safety/trunkFit.ts";
import { freezingRain, windChill } from "../../scripts/safety/windChill.ts";
import { windOnTree } from "../../scripts/safety/windOnTree.ts";
import { standAge, wornDates } from "../../scripts/safety/wornDates.ts";
import { limits } from "./limits.ts";

// Values around every limit, each of which may be missing. Left out, since a null there is an answer and not a gap: the
// girth at the platform (it takes the place of the taper), the reason for a height, the hunter's own end of the sit, the
// way back from a sit before, the owner's own overdue minutes.
type Facts = Record<string, unknown>;
interface Case {
  name: string;
  facts: Record<string, fc.Arbitrary<unknown>>;
  check: (facts: never) => Check;
}

const zone = { subject: "x", timezone: "UTC" };
const flag = fc.boolean();
const day = fc.constantFrom(
  "2024-02-29",
  "2025-11-05",
  "2025-11-06",
  "2026-01-01",
  "2026-11-06",
  "2026-11-07",
  "2027-05-01",
);
const month = fc.oneof(day, fc.constantFrom("2025-11", "2026-10", "2026-11", "2026-12"));
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const instant = fc.integer({ min: 0, max: 48 }).map((hours) => new Date(Date.UTC(2026, 10, 5, hours)));
const onDate = "2026-11-06";
const ticks = Object.fromEntries(
  TREE_TICKS.map((name) => [name, fc.constantFrom("clear", "clear", "clear", "fault")]),
);
const nothing = <T>(value: T | null): T | undefined => value ?? undefined;

const cases: Case[] = [
  {
    name: "C5",
    facts: {
      girthMm: number(500, 1700),
      platformHeightM: number(0, 9),
      trunkMinMm: number(150, 300),
      trunkMaxMm: number(300, 500),
    },
    check: (f: {
      girthMm: number | null;
      platformHeightM: number | null;
      trunkMinMm: number | null;
      trunkMaxMm: number | null;
    }) =>
      trunkFit(
        {
          subject: "x",
          stand: f,
          tree: { girthMm: nothing(f.girthMm), measuredAtHeightM: 1.3 },
          platformHeightM: f.platformHeightM,
        },
        limits,
      ),
  },
  {
    name: "C6",
    facts: {
      body: number(60, 110),
      clothing: number(2, 10),
      harness: number(1, 4),
      pack: number(0, 20),
      weapon: number(0, 6),
      water: number(0, 4),
      rated: number(90, 150),
    },
    check: ({ rated, ...loadKg }: { rated: number | null } & Parameters<typeof loadCheck>[0]["loadKg"]) =>
      loadCheck({ subject: "x", loadKg, ratedLoadKg: rated }, limits),
  },
  {
    name: "C7",
    facts: { madeOn: month, replaceBy: month, fallen: flag },
    check: (item: Parameters<typeof wornDates>[0]["item"]) => wornDates({ subject: "x", item, onDate }),
  },
  {
    name: "C7 stand",
    facts: { replaceBy: month },
    check: (f: { replaceBy: string | null }) => standAge({ subject: "x", ...f, onDate }),
  },
  {
    name: "C8",
    facts: { platformHeightM: number(0, 12), maxPlatformHeightM: number(4, 10) },
    check: (f: { platformHeightM: number | null; maxPlatformHeightM: number | null }) =>
      heightCheck({ subject: "x", heightReason: null, ...f }, limits),
  },
  {
    name: "C9",
    facts: { haulLineM: number(4, 12), platformHeightM: number(2, 9) },
    check: (f: { haulLineM: number | null; platformHeightM: number | null }) =>
      haulLine({ subject: "x", ...f }, limits),
  },
  {
    name: "C10",
    facts: { windSpeedMps: number(0, 16), gustMps: number(0, 20) },
    check: (f: { windSpeedMps: number | null; gustMps: number | null }) =>
      windOnTree({ subject: "x", ...f }, limits),
  },
  {
    name: "C11",
    facts: { thunder: flag },
    check: (f: { thunder: boolean | null }) => thunder({ subject: "x", ...f }),
  },
  {
    name: "C12",
    facts: { darkInMin: number(0, 90), darkOutMin: number(0, 90), isAlone: flag },
    check: (f: { darkInMin: number | null; darkOutMin: number | null; isAlone: boolean | null }) =>
      darkWalk({ subject: "x", ...f }, limits),
  },
  {
    name: "C13",
    facts: {
      settledAt: instant,
      packUpMin: number(0, 20),
      walkMin: number(0, 200),
      coolDownMin: number(0, 20),
      setUpMin: number(0, 40),
      settleMin: number(0, 20),
    },
    check: ({
      settledAt,
      ...minutes
    }: { settledAt: Date | null } & Parameters<typeof leaveTime>[0]["minutes"]) =>
      leaveTime({ ...zone, localDate: onDate, settledAt, minutes, backAt: null }),
  },
  {
    name: "C14",
    facts: { legalEnd: instant, walkOutMin: number(0, 200), darkOutMin: number(0, 200) },
    check: (f: { legalEnd: Date | null; walkOutMin: number | null; darkOutMin: number | null }) =>
      startDown({ ...zone, ownLimit: null, marginMin: 0, ...f }, limits),
  },
  {
    name: "C15",
    facts: { outAt: instant, isAlone: flag },
    check: (f: { outAt: Date | null; isAlone: boolean | null }) =>
      overdue({ ...zone, askAfterMin: null, callAfterMin: null, ...f }, limits),
  },
  {
    name: "C18",
    facts: { phone: fc.constant("ridge"), radio: fc.constant("5") },
    check: (notes: Record<string, string | null>) => contactGaps({ subject: "x", notes }),
  },
  {
    name: "C19",
    facts: { wakeAt: instant, downAt: instant },
    check: (f: { wakeAt: Date | null; downAt: Date | null }) => hoursAwake({ ...zone, ...f }, limits),
  },
  {
    name: "C22",
    facts: {
      placedOn: day,
      removeBy: day,
      labelled: flag,
      from: day,
      ruleRemoveBy: day,
      labelRequired: flag,
    },
    check: (f: {
      placedOn: string | null;
      removeBy: string | null;
      labelled: boolean | null;
      from: string | null;
      ruleRemoveBy: string | null;
      labelRequired: boolean | null;
    }) => {
      const rules = {
        ...(f.from && { from: f.from }),
        ...(f.ruleRemoveBy && { removeBy: f.ruleRemoveBy }),
        ...(f.labelRequired !== null && { labelRequired: f.labelRequired }),
      };
      return standDates({ subject: "x", stand: f, standRules: rules, onDate });
    },
  },
  {
    name: "C23",
    facts: { ...ticks, leanDeg: number(0, 15), checkedOn: day, checkedBy: fc.constant("owner") },
    check: (condition: NonNullable<Parameters<typeof treeTicks>[0]["condition"]>) =>
      treeTicks({ subject: "x", condition, onDate }, limits),
  },
  {
    name: "C25",
    facts: {
      grid: fc.constantFrom("59G LL 15993 11006", "59G LL 15995 11006", "59G LL 25993 11006", "nowhere"),
    },
    check: (f: { grid: string | null }) =>
      positionFormats({ subject: "x", position: { lat: -45.03049, lon: 168.664101 }, ...f }, limits),
  },
  {
    name: "C26 fact",
    facts: { checkedOn: day },
    check: (f: { checkedOn: string | null }) => factAge({ subject: "x", shownOn: onDate, ...f }, limits),
  },
  {
    name: "C26 forecast",
    facts: { issuedAt: instant, sessionStart: instant },
    check: (f: { issuedAt: Date | null; sessionStart: Date | null }) =>
      forecastAge({ ...zone, ...f }, limits),
  },
  {
    name: "C28",
    facts: { isBanned: flag },
    check: (f: { isBanned: boolean | null }) => fireBan({ subject: "x", ...f }),
  },
  {
    name: "C29",
    facts: { tempC: number(-40, 20), windSpeedMps: number(0, 20) },
    check: (f: { tempC: number | null; windSpeedMps: number | null }) =>
      windChill({ subject: "x", ...f }, limits),
  },
  {
    name: "C29 ice",
    facts: { freezingRain: flag },
    check: (f: { freezingRain: boolean | null }) => freezingRain({ subject: "x", ...f }),
  },
];

const BADNESS = { OK: 0, CAUTION: 1, STOP: 2 } as const;

function isNoBetter(after: Check, before: Check): boolean {
  if (after.result === "NOT CHECKED") return true;
  if (before.result === "NOT CHECKED") return after.result === "STOP";
  return BADNESS[after.result] >= BADNESS[before.result];
}

function factsOf({ facts }: Case): fc.Arbitrary<Facts> {
  const maybe = Object.entries(facts).map(([key, values]) => [
    key,
    fc.option(values, { freq: 8, nil: null }),
  ]);
  return fc.record(Object.fromEntries(maybe));
}

describe("what is missing (seeded)", () => {
  test.each(cases)("taking one input away never makes $name look better", (one) => {
    const check = one.check as (facts: Facts) => Check;
    fc.assert(
      fc.property(factsOf(one), (facts) => {
        const before = check(facts);
        for (const key of Object.keys(one.facts)) {
          const after = check({ ...facts, [key]: null });
          expect(isNoBetter(after, before), `${key}: ${before.result} became ${after.result}`).toBe(true);
        }
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  test.each(cases)("with nothing known $name is not checked", (one) => {
    const none = Object.fromEntries(Object.keys(one.facts).map((key) => [key, null]));
    expect((one.check as (facts: Facts) => Check)(none).result).toBe("NOT CHECKED");
  });

  test.each(cases)("every sentence of $name is plain, short and has no broken figure", (one) => {
    fc.assert(
      fc.property(factsOf(one), (facts) => {
        const { text, inputs } = (one.check as (facts: Facts) => Check)(facts);
        expect(text).toMatch(/^[A-Z].*\.$/);
        expect(text).not.toMatch(/NaN|undefined|null|Infinity|object/);
        for (const sentence of text.split(/(?<=\.)\s+(?=[A-Z])/)) {
          expect(sentence.split(/\s+/).length).toBeLessThanOrEqual(25);
        }
        for (const value of Object.values(inputs)) expect(Number.isNaN(value)).toBe(false);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  test("every check of this room is among the cases", () => expect(cases.length).toBe(22));
});
