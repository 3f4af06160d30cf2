import { describe, expect, test } from "vitest";
import { areaFile } from "../../scripts/content/schema/areaSchema.ts";
import { mapFile } from "../../scripts/content/schema/mapFeaturesSchema.ts";
import { siteFile } from "../../scripts/content/schema/siteSchema.ts";
import { forecastRow } from "../../scripts/content/schema/tripSchema.ts";
import { checkedBySchema } from "../../scripts/content/schemaProblems.ts";

const site = {
  number: 1,
  name: "North bench",
  overlooks: "wallow",
  position: { lat: -45.03, lon: 168.66 },
  platformHeightM: 5,
  facingDeg: 20,
  cover: "timber",
};

const problemsOf = (change: object) =>
  checkedBySchema(siteFile, { ...site, ...change }, "north-bench.json").problems;
const only = (change: object) => {
  const problems = problemsOf(change);
  expect(problems).toHaveLength(1);
  return problems[0]!;
};

describe("a site against its schema", () => {
  test("that is right has no problem, and defaults are filled in", () => {
    const { facts, problems } = checkedBySchema(siteFile, site, "north-bench.json");
    expect(problems).toEqual([]);
    expect(facts).toMatchObject({ seated: true, lanes: [], shareable: true });
  });

  test("an aspect by its compass word is told with the bearing to write", () => {
    expect(only({ slope: { slopeDeg: 12, aspectDeg: "NE", reason: "clinometer" } })).toEqual({
      code: "value-type",
      file: "north-bench.json",
      field: "slope.aspectDeg",
      found: '"NE"',
      expected: "a number, 0 ≤ bearing < 360, degrees clockwise from true north; or null when not known",
      fix: 'write "aspectDeg": 45',
    });
  });

  // 202.5 = 9 x 22.5, the 16-point rose counted from north
  test.each([
    ["south-south-west", null],
    ["SSW", 202.5],
    ["north east", 45],
    ["45°", 45],
    ["1,5", 1.5],
    ["360", 0],
    ["about 40", null],
    [360, 0],
    [-10, 350],
    [400, 40],
    [true, null],
  ])("a facing of %j is refused and mended where the meaning is plain", (facingDeg, meant) => {
    const { fix } = only({ facingDeg });
    if (meant === null) expect(fix).toBe("write the value as it was measured, or null if it is not known");
    else expect(fix).toBe(`write "facingDeg": ${meant}`);
  });

  test.each([NaN, Number.POSITIVE_INFINITY])("a height of %s is refused", (platformHeightM) => {
    expect(only({ platformHeightM }).code).toBe("value-type");
  });

  test.each([
    [{ ovrlooksName: "x" }, "value-unknown-key", "ovrlooksName", 'did you mean "overlooksName"?'],
    [{ overlooks: "walow" }, "value-choice", "overlooks", 'write "overlooks": "wallow"'],
    [{ cover: "Dense-Timber" }, "value-choice", "cover", 'write "cover": "dense timber"'],
    [{ block: "East Block" }, "value-form", "block", 'write "block": "east-block"'],
    [{ platformHeightM: "5 m" }, "value-type", "platformHeightM", 'write "platformHeightM": 5'],
    [{ platformHeightM: "17 ft" }, "value-type", "platformHeightM", "write it as expected"],
    [{ platformHeightM: 31 }, "value-range", "platformHeightM", "write it as expected"],
    [{ name: "  " }, "value-range", "name", "write it as expected"],
    [{ name: "" }, "value-range", "name", "write the value; it is needed"],
    [{ heightReason: null }, "value-type", "heightReason", "delete the line if it is not known"],
    [{ name: undefined }, "value-missing", "name", 'add "name": and its value'],
    [{ facingDeg: undefined }, "value-missing", "facingDeg", 'add "facingDeg": null if it is not known'],
    [{ lanes: {} }, "value-type", "lanes", "write it as expected, or delete the line if it is not known"],
    [
      { position: { lat: 168.66, lon: -45.03 } },
      "value-range",
      "position.lat",
      'lat and lon look exchanged: write { "lat": -45.03, "lon": 168.66 }',
    ],
    [
      { approaches: { "Early Sit": [] } },
      "value-form",
      "approaches.Early Sit",
      'write the key as "early-sit"',
    ],
    [
      {
        walkIns: [
          {
            id: "creek",
            name: "Creek",
            from: "hut",
            along: [
              { lat: 1, lon: "2" },
              { lat: 1, lon: 3 },
            ],
          },
        ],
      },
      "value-type",
      "walkIns.0.along.0.lon",
      'write "lon": 2',
    ],
    [
      { walkIns: [{ id: "creek", name: "Creek", from: "hut" }] },
      "value-rule",
      "walkIns.0.along",
      "give along, or minutes",
    ],
    [
      {
        localNotes: [
          { session: "morning", turnsAt: "7.30 am", note: "n", seenBy: "o", seenOn: "2026-03-01" },
        ],
      },
      "value-form",
      "localNotes.0.turnsAt",
      'write "turnsAt": "07:30"',
    ],
  ] as [object, string, string, string][])(
    "%j is told with code, field and fix",
    (change, code, field, fix) => {
      expect(only(change)).toMatchObject({ code, field, fix });
    },
  );

  test("a rule between two fields is told even when other fields are wrong", () => {
    const tree = { species: 7, condition: {} };
    const fields = problemsOf({ tree }).map((problem) => problem.field);
    expect(fields).toContain("tree.species");
    expect(fields).toContain("tree.condition.hollow");
    expect(fields).toContain("tree.girthMm");
  });

  test("what is right in a wrong file stays usable, at its place in the list", () => {
    const walkIns = [
      { id: "Bad Id", name: "x", from: "hut", minutes: [1, 2] },
      { id: "creek", name: "y", from: "hut", minutes: [1, 2] },
    ];
    const { facts, loose } = checkedBySchema(siteFile, { ...site, walkIns }, "f.json");
    expect(facts).toBeNull();
    expect(loose?.walkIns?.map((walkIn) => walkIn?.id)).toEqual([undefined, "creek"]);
  });

  test.each([[[]], ["text"], [null], [5]])("a file that is no object but %j is one problem", (value) => {
    const { facts, loose, problems } = checkedBySchema(siteFile, value, "f.json");
    expect(facts).toBeNull();
    expect(loose).toBeNull();
    expect(problems).toMatchObject([{ code: "value-type", field: "" }]);
  });
});

describe("other files against their schema", () => {
  test.each(["2026-02-30", "30/9/2026", "2026-9-1", "2025-02-29"])("the date %s is none", (from) => {
    const area = {
      name: "A",
      summary: "B",
      centre: { lat: 1, lon: 2 },
      timezone: "UTC",
      season: [
        {
          species: "deer",
          from,
          to: "2026-12-01",
          method: "bow",
          land: "public",
          source: "s",
          checkedOn: "2026-01-01",
        },
      ],
    };
    const { problems } = checkedBySchema(areaFile, area, "area.json");
    expect(problems).toMatchObject([
      { code: "value-form", field: "season.0.from", expected: 'a calendar date that exists, "YYYY-MM-DD"' },
    ]);
  });

  test("an unknown anchor of a session gets the list of anchors and the nearest one", () => {
    const area = {
      name: "A",
      summary: "B",
      centre: { lat: 1, lon: 2 },
      timezone: "UTC",
      sessions: [{ id: "morning", from: { anchor: "firstlight" }, to: { anchor: "clock", at: "24:00" } }],
    };
    const { problems } = checkedBySchema(areaFile, area, "area.json");
    expect(problems).toMatchObject([
      { code: "value-choice", field: "sessions.0.from.anchor", fix: 'write "anchor": "firstLight"' },
      { code: "value-form", field: "sessions.0.to.at" },
    ]);
    expect(problems[0]!.expected).toContain('"sunrise"');
  });

  test("an object whose kind is not known is not used further, since nothing in it was judged", () => {
    const sessions = [{ id: "morning", from: { anchor: "clok", notAfter: [] }, to: { anchor: "solarNoon" } }];
    const written = { name: "A", summary: "B", centre: { lat: 1, lon: 2 }, timezone: "UTC", sessions };
    const { loose } = checkedBySchema(areaFile, written, "area.json");
    expect(loose?.sessions?.[0]?.from).toBeUndefined();
    expect(loose?.sessions?.[0]?.to).toEqual({ anchor: "solarNoon" });
  });

  test("a latitude in front is told with the order to write", () => {
    const map = {
      type: "FeatureCollection",
      features: [
        {
          type: "Feature",
          geometry: { type: "Point", coordinates: [-45.03, 168.66] },
          properties: { id: "a", kind: "gate" },
        },
      ],
    };
    const { problems } = checkedBySchema(mapFile, map, "map.geojson");
    expect(problems).toMatchObject([
      { field: "features.0.geometry.coordinates.1", fix: "longitude comes first: write [168.66, -45.03]" },
    ]);
  });

  test("a wind direction takes degrees, a point of the rose, calm or variable", () => {
    const row = { localDate: "2027-04-02", hour: "05:00", windSpeed: 3, gust: 5, cloudShare: 0.2, temp: 4 };
    for (const windFrom of [0, 360, 337.5, "NNW", "calm", "variable", null]) {
      expect(checkedBySchema(forecastRow, { ...row, windFrom }, "f").problems).toEqual([]);
    }
    expect(checkedBySchema(forecastRow, { ...row, windFrom: 361 }, "f").problems).toMatchObject([
      { code: "value-range" },
    ]);
    expect(checkedBySchema(forecastRow, { ...row, windFrom: "variabel" }, "f").problems).toMatchObject([
      { fix: 'write "windFrom": "variable"' },
    ]);
  });
});
