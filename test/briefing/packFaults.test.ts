import { beforeAll, describe, expect, test } from "vitest";
import type { ComposedPack } from "../../scripts/briefing/composePack.ts";
import { composePack } from "../../scripts/briefing/composePack.ts";
import { OPTIONS } from "./composedAreas.ts";
import { jsonSchemaFaults } from "./jsonSchemaFaults.ts";
import { packFaults } from "./packFaults.ts";
import { SHARED, SLOPING_SITE, smallArea } from "./smallArea.ts";

/** A part of a pack as text would hold it, to break at will. */
type Part = Record<string, unknown>;

describe("what a faulty pack is told", () => {
  let whole: ComposedPack;
  beforeAll(() => {
    const sky = { cloudShare: 0, temp: 10, gust: 4, windSpeed: 2, windFrom: "NW" };
    const rows = ["2026-04-04", "2026-04-05"].map((localDate) => ({ localDate, hour: "00:00", ...sky }));
    const units = { speed: "mps", temp: "C", rain: "mm" };
    const forecast = { source: "x", issuedAt: "2026-04-03T18:00:00+13:00", units, rows };
    const sits = [
      { localDate: "2026-04-04", session: "morning", hunter: "a", site: "site-1", walkIn: "way" },
    ];
    const walkIns = [{ id: "way", name: "Way", from: "camp", minutes: [20, 30] }];
    const camps = [{ id: "camp", name: "Camp", position: { lat: -45.03, lon: 168.66 } }];
    const area = smallArea({
      facts: { elevationM: 640, camps },
      sites: [
        { ...SLOPING_SITE, walkIns },
        { ...SLOPING_SITE, number: 2 },
      ],
      trips: [{ from: "2026-04-04", to: "2026-04-05", base: "camp", sits, forecast }],
    });
    whole = composePack(area, SHARED, OPTIONS);
  });

  /** The faults of the pack after one change to a copy of it. */
  const faultsAfter = (change: (pack: Part, details: Part) => void): string[] => {
    const { pack, details } = structuredClone({ pack: whole.pack, details: whole.details });
    change(pack as unknown as Part, details as unknown as Part);
    return packFaults({ ...whole, pack, details });
  };
  const at = (part: unknown, ...keys: (string | number)[]): Part =>
    keys.reduce((found, key) => (found as Record<string | number, unknown>)[key], part) as Part;

  test("the pack that is broken below is whole", () => {
    expect(faultsAfter(() => {})).toEqual([]);
  });

  test.each<[string, (pack: Part, details: Part) => void, RegExp]>([
    [
      "a null without its reason",
      (p) => delete at(p, "area", "why").terrain,
      /area\.terrain: null without a why/,
    ],
    [
      "a reason for what is known",
      (p) => Object.assign(at(p, "area", "why"), { name: "x" }),
      /the value is known/,
    ],
    ["a reason for no key", (p) => Object.assign(at(p, "area", "why"), { heigth: "x" }), /no such key/],
    ["NaN", (p) => Object.assign(at(p, "sites", 0), { elevationM: Number.NaN }), /NaN is no number/],
    ["minus zero", (p) => Object.assign(at(p, "sites", 0), { slopeDeg: -0 }), /minus zero/],
    ["an empty text", (p) => Object.assign(at(p, "area"), { name: " " }), /area\.name: an empty text/],
    [
      "a missing value in words",
      (p) => Object.assign(at(p, "area"), { name: "undefined m" }),
      /missing value/,
    ],
    ["a bearing of 360", (p) => Object.assign(at(p, "sites", 0), { aspectDeg: 360 }), /no bearing/],
    [
      "too many decimals",
      (p) => Object.assign(at(p, "sites", 0), { slopeDeg: 18.12345 }),
      /more than 3 decimals/,
    ],
    [
      "a share over 1",
      (p) => Object.assign(at(p, "days", 0, "moon"), { illuminated: 1.2 }),
      /outside 0 to 1/,
    ],
    ["a wrong offset", (p) => Object.assign(p, { asOf: "2026-10-14T00:00:00+12:00" }), /offset in force/],
    ["a part of a second", (p) => Object.assign(p, { asOf: "2026-10-14T00:00:00.5+13:00" }), /whole second/],
    ["keys in another order", (p) => Object.assign(p, { year: moved(p, "year") }), /keys /],
    ["a day that is missing", (p) => (p.days as unknown[]).splice(40, 1), /not every day/],
    [
      "a sunrise of another day",
      (p) => Object.assign(at(p, "days", 3), { sunrise: at(p, "days", 4).sunrise }),
      /sunrise/,
    ],
    [
      "a legal end inside a minute",
      (p) =>
        Object.assign(at(p, "days", 0, "shootingLight"), {
          ...{ start: "2026-01-01T06:00:01+13:00", end: "2026-01-01T20:00:00+13:00" },
          ...{ startLayer: "law", endLayer: "law", why: {} },
        }),
      /shootingLight: 2026-01-01T06:00:01/,
    ],
    [
      "a gap between spans",
      (p) => (at(p, "sites", 0, "phases", 0).spans as unknown[]).splice(1, 1),
      /gap or overlap/,
    ],
    [
      "a model time between steps",
      (p) => {
        const spans = at(p, "sites", 0, "phases", 0).spans as Part[];
        Object.assign(spans[0]!, { to: String(spans[0]!.to).replace(/\d:00([+-])/, "3:00$1") });
        Object.assign(spans[1]!, { from: spans[0]!.to });
      },
      /no step of 5 minutes/,
    ],
    [
      "a range beside its time",
      (p) => {
        const spans = at(p, "sites", 0, "phases", 0).spans as Part[];
        Object.assign(spans[0]!, { toRange: ["2026-01-01T00:00:00+13:00", "2026-01-01T00:05:00+13:00"] });
      },
      /does not hold it/,
    ],
    ["winds out of order", (p) => (at(p, "sites", 0).windTable as unknown[]).reverse(), /windTable: rows/],
    [
      "a session row that is missing",
      (p) => (at(p, "sites", 0).sessionTable as unknown[]).pop(),
      /sessionTable: rows/,
    ],
    [
      "a calm that suits",
      (p) => Object.assign((at(p, "sites", 0).windTable as Part[]).at(-1)!, { modelVerdict: "suits" }),
      /calm never/,
    ],
    [
      "a coverage row that leaves out a site that suits",
      (p) =>
        Object.assign((p.coverage as Part[]).find((row) => row.gap === false)!, { suits: [], gap: true }),
      /coverage/,
    ],
    [
      "a gap that is none",
      (p) => Object.assign(at(p, "coverage", 0), { gap: !at(p, "coverage", 0).gap }),
      /gap/,
    ],
    [
      "a trip day that is missing",
      (p) => (at(p, "trips", 0).days as unknown[]).pop(),
      /trip-1: not every day/,
    ],
    [
      "a session that is missing",
      (p) => (at(p, "trips", 0, "days", 0).sessions as unknown[]).pop(),
      /not the sessions of the area/,
    ],
    [
      "a site left out of a ranking",
      (p) => (at(p, "trips", 0, "days", 0, "sessions", 0).ranking as unknown[]).pop(),
      /neither ranked nor stopped/,
    ],
    [
      "a better site after a worse one",
      (p) => {
        const ranking = at(p, "trips", 0, "days", 0, "sessions", 0).ranking as Part[];
        Object.assign(ranking[0]!, { verdict: "avoid", cleanShare: 0 });
        Object.assign(ranking[1]!, { verdict: "suits", cleanShare: 1 });
      },
      /is better than/,
    ],
    [
      "a time ladder out of order",
      (p) => (at(p, "trips", 0, "days", 0, "sessions", 0).schedule as unknown[]).reverse(),
      /steps of a/,
    ],
    ["details of another site", (_, d) => Object.assign(at(d, "sites", 0), { id: "other" }), /details/],
  ])("%s", (_, change, told) => {
    expect(faultsAfter(change).filter((fault) => told.test(fault))).not.toEqual([]);
  });

  test("a pack that its published schema forbids", () => {
    const schema = { type: "object", properties: { a: { type: ["number", "null"] } }, required: ["a"] };
    expect(jsonSchemaFaults({ ...schema, additionalProperties: false }, { a: null })).toEqual([]);
    expect(jsonSchemaFaults({ ...schema, additionalProperties: false }, { a: 1, b: 1 })).toHaveLength(1);
    expect(jsonSchemaFaults(schema, {})).toHaveLength(1);
    expect(jsonSchemaFaults(schema, { a: "1" })).toHaveLength(1);
    expect(() => jsonSchemaFaults({ uniqueItems: true }, [])).toThrow(/uniqueItems/);
  });
});

/** Takes a key out, so that putting it back sets it last. */
function moved(part: Part, key: string): unknown {
  const value = part[key];
  delete part[key];
  return value;
}
