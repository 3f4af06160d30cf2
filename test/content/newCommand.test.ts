import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { newCommand } from "../../scripts/content/newCommand.ts";
import { isWarning } from "../../scripts/content/problem.ts";
import { readContent } from "../../scripts/content/readContent.ts";
import { nextNumber } from "../../scripts/content/scaffold.ts";
import { slug } from "../../scripts/content/slug.ts";
import { AREA, type Files, inFolder, site, told, wholeContent } from "./contentFolder.ts";

const data: Files = Object.fromEntries(
  Object.entries(wholeContent).filter(([path]) => path.startsWith("data/")),
);

interface Run {
  status: number;
  out: string;
  err: string;
}

async function run(folder: string, ...words: string[]): Promise<Run> {
  const texts = { out: "", err: "" };
  const status = await newCommand([...words, "--content", join(folder, "content")], {
    out: { write: (text) => (texts.out += text) },
    err: { write: (text) => (texts.err += text) },
    dataDir: join(folder, "data"),
    today: "2027-04-02",
  });
  return { status, ...texts };
}

const json = async (folder: string, path: string): Promise<unknown> =>
  JSON.parse(await readFile(join(folder, path), "utf8"));

describe("a new area, site and trip", () => {
  test("pass the check as they are, with warnings where a position is to be replaced", async () => {
    await inFolder(data, async (folder) => {
      expect(await run(folder, "area", "Zwölfer", "Höhe")).toMatchObject({ status: 0, err: "" });
      expect(await run(folder, "site", "zwolfer-hohe", "North", "bench")).toMatchObject({ status: 0 });
      expect(await run(folder, "site", "zwolfer-hohe", "South bench")).toMatchObject({ status: 0 });
      expect(await run(folder, "trip", "zwolfer-hohe", "First trip")).toMatchObject({ status: 0 });
      const { areas, problems } = await readContent(join(folder, "content"), join(folder, "data"));
      expect(told(problems.filter((problem) => !isWarning(problem)))).toBe("");
      expect(problems.map(({ code, field }) => `${code} ${field}`)).toEqual([
        "placeholder-position centre",
        "placeholder-position position",
        "placeholder-position position",
      ]);
      const [area] = areas;
      expect(area?.facts.name).toBe("Zwölfer Höhe");
      expect(area?.sites.map(({ id, facts }) => [id, facts.number])).toEqual([
        ["north-bench", 1],
        ["south-bench", 2],
      ]);
      expect(area?.trips[0]?.facts).toMatchObject({ from: "2027-04-02", to: "2027-04-02" });
    });
  });

  test("make up no fact that a check could take for a good one", async () => {
    await inFolder(data, async (folder) => {
      await run(folder, "area", "A");
      await run(folder, "site", "a", "S");
      await run(folder, "trip", "a", "T");
      const written = (await json(folder, "content/areas/a/area.json")) as object;
      expect(Object.keys(written)).toEqual([
        "$schema",
        "name",
        "summary",
        "centre",
        "timezone",
        "elevationM",
      ]);
      const newSite = (await json(folder, "content/areas/a/sites/s.json")) as object;
      for (const key of ["tree", "stand", "lanes", "approaches", "walkIns", "slope"])
        expect(newSite).not.toHaveProperty(key);
      const newTrip = (await json(folder, "content/areas/a/trips/t.json")) as {
        hunters: [{ harness: object; loadKg: object }];
      };
      expect(Object.values(newTrip.hunters[0].harness)).toEqual([null, null, null]);
      expect(Object.values(newTrip.hunters[0].loadKg)).toEqual([null, null, null, null, null, null]);
    });
  });

  test("a site gets one more than the highest number in use", async () => {
    await inFolder(
      { ...wholeContent, [`${AREA}/sites/far.json`]: { ...site, number: 41, grid: undefined } },
      async (folder) => {
        const { out } = await run(folder, "site", "larch-valley", "Ridge");
        expect(out).toContain("Site number 42");
        expect(await json(folder, `${AREA}/sites/ridge.json`)).toMatchObject({
          number: 42,
          position: { lat: -45.0312, lon: 168.6626 },
        });
      },
    );
  });

  test("never write over a file", async () => {
    await inFolder(wholeContent, async (folder) => {
      const before = await readFile(join(folder, AREA, "sites/larch-bench.json"), "utf8");
      const { status, err } = await run(folder, "site", "larch-valley", "Larch Bench");
      expect(status).toBe(1);
      expect(err).toContain("exists; nothing was written");
      expect(await readFile(join(folder, AREA, "sites/larch-bench.json"), "utf8")).toBe(before);
    });
  });

  test("are not written into an area with problems, where the numbers in use are not known", async () => {
    await inFolder({ ...wholeContent, [`${AREA}/sites/broken.json`]: "{" }, async (folder) => {
      const { status, err } = await run(folder, "site", "larch-valley", "Ridge");
      expect(status).toBe(1);
      expect(err).toContain("json-broken");
      expect(err).toContain("Nothing was written");
    });
  });

  test.each([
    [["sit", "a", "b"], "did you mean site?"],
    [["area"], "a name is missing"],
    [["site", "larch-valley"], "a name is missing"],
    [["area", "???"], "holds no letter"],
    [[], "area, site or trip"],
    [["area", "x", "--contents", "y"], "did you mean --content?"],
  ])("%j is wrong usage", async (words, message) => {
    await inFolder(wholeContent, async (folder) => {
      const { status, err } = await run(folder, ...words);
      expect(status).toBe(2);
      expect(err).toContain(message);
    });
  });
});

test("numbers: one more than the highest, a gap when 99 is taken, none when all are", () => {
  expect(nextNumber([])).toBe(1);
  expect(nextNumber([3, 7])).toBe(8);
  expect(nextNumber([1, 99])).toBe(2);
  expect(nextNumber(Array.from({ length: 99 }, (_, i) => i + 1))).toBeNull();
});

test.each([
  ["Zwölfer Höhe (North)", "zwolfer-hohe-north"],
  ["Hunter's  Rest--7", "hunters-rest-7"],
  ["  -x- ", "x"],
  [`${"a".repeat(39)} b`, "a".repeat(39)],
  ["森", null],
])("the id of %j is %j", (name, id) => {
  expect(slug(name)).toBe(id);
});
