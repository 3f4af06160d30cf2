import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import type { AreaContent } from "../../../scripts/content/areaContent.ts";
import { type PackTrip, packFile } from "../../../scripts/content/schema/packSchema.ts";
import { TREE_TICKS } from "../../../scripts/content/schema/siteSchema.ts";
import { type CachedArea, cachedArea, dayOf, oneDayOf, tripsOf } from "./cachedTrip.ts";
import { stopFaults } from "./plainStops.ts";

let hollow: CachedArea;
let range: CachedArea;

beforeAll(async () => {
  [hollow, range] = await Promise.all([cachedArea("turnpail-hollow"), cachedArea("brackwether-range")]);
}, 60_000);

describe("a STOP wins", () => {
  test("on every day of both demonstration areas", () => {
    for (const cached of [hollow, range]) {
      const { content } = cached.context.area;
      const trips = tripsOf(cached);
      expect(trips.length).toBe(2);
      const faults = trips.flatMap((trip) => {
        const written = content.trips.find(({ id }) => id === trip.id)!;
        return trip.days.flatMap((day) => stopFaults(content, written, day));
      });
      expect(faults).toEqual([]);
      const stops = trips.flatMap((trip) =>
        trip.days.flatMap((day) => day.sessions.flatMap((s) => s.assignment)),
      );
      expect(stops.filter((sit) => sit.reason.startsWith("STOP")).length).toBeGreaterThan(2);
    }
  });

  test("whatever of the content is changed, 500 times", { timeout: 120_000 }, () => {
    const bases = [
      { cached: hollow, trip: "bow-clock-change", date: "2027-11-06", sites: ["landing-west", "hatch-gap"] },
      { cached: range, trip: "roar-clock-change", date: "2027-04-03", sites: ["flat-east", "flat-west"] },
    ];
    const seen = { stopped: 0, kept: 0 };
    fc.assert(
      fc.property(
        fc.constantFrom(...bases),
        fc.array(change, { maxLength: 4 }),
        ({ cached, trip, date, sites }, changes) => {
          const content = oneDayOf(cached, trip, date, sites);
          for (const apply of changes) apply(content);
          const day = dayOf(cached, content);
          expect(stopFaults(content, content.trips[0]!, day)).toEqual([]);
          for (const { reason } of day.sessions.flatMap((session) => session.assignment)) {
            seen[reason.startsWith("STOP") ? "stopped" : "kept"]++;
          }
        },
      ),
      { seed: 20261, numRuns: 500 },
    );
    // Else the property says nothing: both kinds must be common.
    expect(seen.stopped).toBeGreaterThan(200);
    expect(seen.kept).toBeGreaterThan(200);
  });
});

type Change = (content: AreaContent) => void;

const pick = fc.nat();
const at = <T>(list: readonly T[], n: number): T => list[n % list.length]!;

/** One change to trip, site or area, good or bad, known or not. */
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(pick, fc.constantFrom("thunder", "freezingRain"), fc.constantFrom(true, false, null)).map(
    ([n, key, value]): Change =>
      (content) => {
        at(dayRows(content), n)[key as "thunder"] = value;
      },
  ),
  fc
    .tuple(pick, fc.constantFrom("windSpeed", "gust"), fc.option(fc.double({ min: 0, max: 60, noNaN: true })))
    .map(
      ([n, key, value]): Change =>
        (content) => {
          at(dayRows(content), n)[key as "gust"] = value;
        },
    ),
  fc
    .tuple(pick, fc.constantFrom(...TREE_TICKS), fc.constantFrom("fault" as const, "clear" as const, null))
    .map(
      ([n, tick, value]): Change =>
        (content) => {
          at(content.sites, n).facts.tree!.condition[tick] = value;
        },
    ),
  fc.tuple(pick, fc.double({ min: 400, max: 2000, noNaN: true })).map(
    ([n, girthMm]): Change =>
      (content) => {
        at(content.sites, n).facts.tree!.girthMm = girthMm;
      },
  ),
  fc.tuple(pick, fc.double({ min: 2, max: 8, noNaN: true })).map(
    ([n, heightM]): Change =>
      (content) => {
        at(content.sites, n).facts.platformHeightM = heightM;
      },
  ),
  fc.tuple(pick, fc.constantFrom("stand-light", "stand-broad", "stand-long", null)).map(
    ([n, standId]): Change =>
      (content) => {
        at(content.trips[0]!.facts.hunters, n).standId = standId;
      },
  ),
  fc.tuple(pick, fc.option(fc.double({ min: 40, max: 160, noNaN: true }))).map(
    ([n, body]): Change =>
      (content) => {
        at(content.trips[0]!.facts.hunters, n).loadKg.body = body;
      },
  ),
  fc
    .tuple(
      pick,
      fc.constantFrom("2027-04-02", "2027-04", "2027-11-05", "2027-10", "2031-01", null),
      fc.constantFrom(true, false, null),
    )
    .map(
      ([n, replaceBy, fallen]): Change =>
        (content) => {
          Object.assign(at(content.trips[0]!.facts.hunters, n).harness, { replaceBy, fallen });
        },
    ),
  fc.tuple(pick, fc.constantFrom("2027-03-31", "2027-04-03", "2027-11-05", "2027-12-31"), fc.boolean()).map(
    ([n, to, withdrawn]): Change =>
      (content) => {
        Object.assign(at(content.facts.permission, n), { to, withdrawn });
      },
  ),
  fc.constantFrom("sat", "sun").map(
    (weekday): Change =>
      (content) => {
        for (const rule of content.facts.shootingLight.law ?? [])
          rule.applies.closedWeekdays = [weekday as "sat"];
      },
  ),
);

function dayRows(content: AreaContent) {
  const { facts } = content.trips[0]!;
  return facts.forecast!.rows.filter((row) => row.localDate === facts.from);
}

test("the trips of both areas keep to the schema of pack.json", () => {
  for (const cached of [hollow, range]) {
    const found = packFile.shape.trips.safeParse(tripsOf(cached) satisfies PackTrip[]);
    expect(found.error?.issues ?? []).toEqual([]);
  }
});
