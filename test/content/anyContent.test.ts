import fc from "fast-check";
import { expect, test } from "vitest";
import { AREA, area, features, map, readChanged, rule, site, told, trip } from "./contentFolder.ts";

const files: Record<string, object> = {
  [`${AREA}/area.json`]: {
    ...area,
    shootingLight: { law: [rule] },
    emergency: { nearestRoadAccess: area.centre, contacts: [{ name: "C" }] },
    sessions: [
      {
        id: "morning",
        from: { anchor: "clock", at: "05:00" },
        to: { anchor: "solarNoon", notAfter: "12:00" },
      },
    ],
    photos: [{ file: "photos/a.jpg", alt: "a", credit: "c" }],
  },
  [`${AREA}/sites/larch-bench.json`]: { ...site, slope: { slopeDeg: 10, aspectDeg: 20, reason: "r" } },
  [`${AREA}/trips/april.json`]: trip,
  [`${AREA}/map.geojson`]: map(features.trail, features.way, features.boundary),
};

type Path = (string | number)[];

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const keys = Array.isArray(value) ? value.keys() : Object.keys(value);
  return [
    path,
    ...[...keys].flatMap((key) => pathsOf((value as Record<string | number, unknown>)[key], [...path, key])),
  ];
}

function changed(value: unknown, path: Path, put: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return put;
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<
    string | number,
    unknown
  >;
  copy[step] = changed(copy[step], rest, put);
  return copy;
}

const names = Object.keys(files);
const oddValue = fc.oneof(
  fc.constantFrom(
    null,
    true,
    "",
    "NE",
    -1,
    0,
    1e308,
    200,
    "2027-02-30",
    "9999-12-31",
    [],
    {},
    [[]],
    [null],
    [1, "2"],
    { id: 1 },
  ),
  fc.jsonValue({ maxDepth: 2 }),
);
const change = fc
  .constantFrom(...names)
  .chain((name) =>
    fc.record({ name: fc.constant(name), path: fc.constantFrom(...pathsOf(files[name])), put: oddValue }),
  );

test("whatever stands in the place of a value, reading ends in whole sentences and throws nothing", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 3 }), async (changes) => {
      const written: Record<string, unknown> = { ...files };
      for (const { name, path, put } of changes) {
        try {
          written[name] = changed(written[name], path, put);
        } catch {
          // an earlier change took the place away
        }
      }
      const asText = Object.fromEntries(names.map((name) => [name, JSON.stringify(written[name])]));
      const { problems } = await readChanged(asText);
      const text = told(problems.map((problem) => ({ ...problem, found: "" })));
      expect(text).not.toMatch(/undefined|NaN|\[object/);
    }),
    { seed: 4, numRuns: 100 },
  );
}, 120_000);
