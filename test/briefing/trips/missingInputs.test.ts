import { beforeAll, describe, expect, test } from "vitest";
import type { AreaContent } from "../../../scripts/content/areaContent.ts";
import type { PackTrip } from "../../../scripts/content/schema/packSchema.ts";
import { TREE_TICKS } from "../../../scripts/content/schema/siteSchema.ts";
import { type CachedArea, cachedArea, dayOf, oneDayOf } from "./cachedTrip.ts";

// Taking one input away must make nothing good that was not: no check OK, no site that suits. Left out, since a null there is
// an answer or a choice and not a gap: the owner's overdue minutes, the walk-in that a sit names, the temperature (the model
// has its own, with its spread, for a forecast without one), and whole rows of the forecast (the row before then holds on).
// Two things are no gain though they look like one. A STOP whose fact is taken away becomes NOT CHECKED: its site is ranked and
// its hunter has times again, so those are not compared. And without confirmed hours the whole session is judged, not its legal
// part: what the air then says of it stands beside C1, which is NOT CHECKED.

type Day = PackTrip["days"][number];

interface Removal {
  name: string;
  apply: (content: AreaContent) => void;
}

const cases = [
  {
    area: "turnpail-hollow",
    trip: "bow-clock-change",
    date: "2027-11-05",
    sites: ["lower-bench", "landing-west"],
  },
  {
    area: "brackwether-range",
    trip: "roar-clock-change",
    date: "2027-04-02",
    sites: ["billhook-forks", "flat-east"],
  },
];

describe.each(cases)("$area on $date", ({ area, trip, date, sites }) => {
  let cached: CachedArea;
  let content: AreaContent;
  let whole: Day;

  beforeAll(async () => {
    cached = await cachedArea(area);
    content = oneDayOf(cached, trip, date, sites);
    whole = dayOf(cached, content);
  }, 60_000);

  test("without any one input no check becomes OK and no site suits that did not", {
    timeout: 60_000,
  }, () => {
    const removals = removalsOf(content);
    expect(removals.length).toBeGreaterThan(60);
    const better = removals.flatMap(({ name, apply }) => {
      const copy = structuredClone(content);
      apply(copy);
      return improvements(whole, dayOf(cached, copy)).map((what) => `without ${name}: ${what}`);
    });
    expect(better).toEqual([]);
  });

  test("something does get worse: the inputs are read", () => {
    const copy = structuredClone(content);
    for (const { apply } of removalsOf(content)) apply(copy);
    const bare = dayOf(cached, copy);
    const okOf = (day: Day): number => day.checks.filter((check) => check.result === "OK").length;
    expect(okOf(bare)).toBeLessThan(okOf(whole) / 2);
    expect(bare.sessions.flatMap((session) => session.ranking ?? []).map((row) => row.verdict)).not.toContain(
      "suits",
    );
  });
});

function improvements(before: Day, after: Day): string[] {
  const key = (check: Day["checks"][number]): string =>
    [
      check.id,
      check.subject,
      check.inputs.session ?? "",
      check.inputs.site ?? "",
      Object.keys(check.inputs)[0],
    ].join(" ");
  // A hunter of two sits, or a site of two sessions, has several checks of one kind: as good as the best of them.
  const okBefore = new Set(before.checks.filter((check) => check.result === "OK").map(key));
  const stoppedSits = before.sessions.flatMap((session) =>
    session.assignment
      .filter((sit) => sit.reason.startsWith("STOP"))
      .map((sit) => `${sit.hunter} ${session.session} ${sit.site}`),
  );
  const isOfStopped = ({ subject, inputs }: Day["checks"][number]): boolean =>
    stoppedSits.includes(`${subject} ${inputs.session} ${inputs.site}`);
  const checks = after.checks
    .filter((check) => check.result === "OK" && !okBefore.has(key(check)) && !isOfStopped(check))
    .map((check) => `${key(check)} is OK: ${check.text}`);
  const suiting = (day: Day): string[] =>
    day.sessions.flatMap((session) =>
      (session.shootingLight.status === "confirmed" ? (session.ranking ?? []) : [])
        .filter((row) => row.verdict === "suits")
        .map((row) => `${row.site} suits in the ${session.session}`),
    );
  const wasStopped = before.sessions.flatMap((session) =>
    session.stopped.map((row) => `${row.site} suits in the ${session.session}`),
  );
  const known = [...suiting(before), ...wasStopped];
  return [...checks, ...suiting(after).filter((row) => !known.includes(row))];
}

function removalsOf({ sites, trips, facts }: AreaContent): Removal[] {
  const { hunters, forecast, from } = trips[0]!.facts;
  const hours = ["06:00", "08:00", "13:00", "15:00", "17:00"];
  const rows = forecast!.rows.flatMap((row, i) =>
    row.localDate === from && hours.includes(row.hour ?? "") ? [i] : [],
  );
  return [
    ...rows.flatMap((i) =>
      (["windFrom", "windSpeed", "gust", "cloudShare", "thunder", "freezingRain"] as const).map((field) => ({
        name: `${field} at ${forecast!.rows[i]!.hour}`,
        apply: (content: AreaContent) => {
          content.trips[0]!.facts.forecast!.rows[i]![field] = null;
        },
      })),
    ),
    ...hunters.flatMap((hunter, i) => [
      ...Object.keys(hunter.loadKg).map((part) => ({
        name: `${part} of ${hunter.id}`,
        apply: (content: AreaContent) => {
          content.trips[0]!.facts.hunters[i]!.loadKg[part as "body"] = null;
        },
      })),
      ...(["madeOn", "replaceBy", "fallen"] as const).map((part) => ({
        name: `harness ${part} of ${hunter.id}`,
        apply: (content: AreaContent) => {
          content.trips[0]!.facts.hunters[i]!.harness[part] = null;
        },
      })),
      {
        name: `stand of ${hunter.id}`,
        apply: (content: AreaContent) => {
          content.trips[0]!.facts.hunters[i]!.standId = null;
        },
      },
      {
        name: `contact of ${hunter.id}`,
        apply: (content: AreaContent) => {
          delete content.trips[0]!.facts.hunters[i]!.contact;
        },
      },
    ]),
    ...sites.flatMap((site, i) => [
      ...TREE_TICKS.map((tick) => ({
        name: `${tick} of ${site.id}`,
        apply: (content: AreaContent) => {
          content.sites[i]!.facts.tree!.condition[tick] = null;
        },
      })),
      {
        name: `date of the ticks of ${site.id}`,
        apply: (content: AreaContent) => {
          content.sites[i]!.facts.tree!.condition.checkedOn = null;
        },
      },
      {
        name: `girth of ${site.id}`,
        apply: (content: AreaContent) => {
          delete content.sites[i]!.facts.tree!.girthMm;
        },
      },
    ]),
    ...(["checkIn", "base"] as const).map((field) => ({
      name: field,
      apply: (content: AreaContent) => {
        delete content.trips[0]!.facts[field];
      },
    })),
    ...(["coverage", "radio"] as const).map((field) => ({
      name: field,
      apply: (content: AreaContent) => {
        delete content.facts.emergency[field];
      },
    })),
    {
      name: "rules of law",
      apply: (content: AreaContent) => {
        delete content.facts.shootingLight.law;
      },
    },
    ...facts.season.map((_, i) => ({
      name: `season ${i}`,
      apply: (content: AreaContent) => {
        content.facts.season = content.facts.season.filter((__, k) => k !== i);
      },
    })),
  ];
}
