import { spawnSync } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { computedStore, type StoredArea } from "../../scripts/publish/computedStore.ts";

const project = fileURLToPath(new URL("../..", import.meta.url));
const TEXT = { pack: '{ "pack": 1 }\n', details: '{ "details": 2 }\n' };
let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "store-"));
  await mkdir(join(folder, "area", "sites"), { recursive: true });
  await mkdir(join(folder, "data"));
  await write("area/area.json", "{}");
  await write("area/sites/one.json", "{}");
  await write("data/model.json", "[]");
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const write = (name: string, text: string): Promise<void> => writeFile(join(folder, name), text);
const area = (): StoredArea => ({
  id: "hollow",
  folder: join(folder, "area"),
  facts: {} as StoredArea["facts"],
});
const store = (decides: readonly string[] = ["program 1"]) =>
  computedStore(join(folder, "cache"), join(folder, "data"), () => decides);
const entries = () => readdir(join(folder, "cache"));

describe("what was computed of an area", () => {
  test("is found again while nothing changes", async () => {
    expect(await store().find(area())).toBeNull();
    await store().keep(area(), TEXT);
    expect(await store().find(area())).toEqual(TEXT);
  });

  test.each([
    ["a fact", "area/area.json", '{ "name": "x" }'],
    ["a site", "area/sites/one.json", '{ "number": 2 }'],
    ["a new file", "area/sites/two.json", "{}"],
    ["a constant that all areas share", "data/model.json", "[1]"],
  ])("is not taken after a change of %s", async (_, name, text) => {
    await store().keep(area(), TEXT);
    await write(name, text);
    expect(await store().find(area())).toBeNull();
  });

  test("is not taken for another program or other options", async () => {
    await store().keep(area(), TEXT);
    expect(await store(["program 2"]).find(area())).toBeNull();
  });

  test("is not taken when one byte of the entry is wrong, or its end is missing", async () => {
    await store().keep(area(), TEXT);
    const [name] = await entries();
    const whole = await readFile(join(folder, "cache", name!), "utf8");
    await write(`cache/${name}`, whole.replace('"pack": 1', '"pack": 7'));
    expect(await store().find(area())).toBeNull();
    await write(`cache/${name}`, whole.slice(0, -3));
    expect(await store().find(area())).toBeNull();
  });

  test("does not pile up, and costs nothing but time where it can not be kept", async () => {
    for (let state = 0; state < 9; state++) {
      await write("area/area.json", `{ "state": ${state} }`);
      await store().keep(area(), TEXT);
    }
    expect((await entries()).length).toBeLessThanOrEqual(4);
    await rm(join(folder, "cache"), { recursive: true });
    await write("cache", "a file where the folder should be");
    await store().keep(area(), TEXT);
    expect(await store().find(area())).toBeNull();
  });
});

test("a pack from what was kept has the same bytes as one computed, but for the time of the build", async () => {
  const run = (args: string[], epoch: string, more: Record<string, string> = {}) => {
    const env = { ...process.env, SOURCE_DATE_EPOCH: epoch, ...more };
    const made = spawnSync(process.execPath, [join(project, "scripts", "start.mjs"), ...args], {
      env,
      encoding: "utf8",
    });
    expect(made.status, made.stderr).toBe(0);
    return made.stdout;
  };
  const content = join(folder, "content");
  const asOf = ["--as-of", "2027-01-15T08:00:00Z"];
  const pack = (out: string, epoch: string, more = {}) =>
    run(["pack", "--content", content, "--out", join(folder, out), ...asOf], epoch, more);
  run(["new", "area", "Kept Hollow", "--content", content], "1800000000");
  run(["new", "site", "kept-hollow", "Only Tree", "--content", content], "1800000000");
  pack("computed", "1800000000");
  pack("kept", "1800000000");
  pack("later", "1800000360");
  pack("files", "1800000000", { LEELIGHT_UNBUNDLED: "1" });
  const textsOf = async (out: string): Promise<Record<string, string>> => {
    const names = await readdir(join(folder, out), { recursive: true, withFileTypes: true });
    const files = names.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
    const texts = files.map(async (file) => [
      file.slice(folder.length + out.length + 2),
      await readFile(file, "utf8"),
    ]);
    return Object.fromEntries(await Promise.all(texts));
  };
  const computed = await textsOf("computed");
  expect(await textsOf("kept")).toEqual(computed);
  expect(await textsOf("files")).toEqual(computed);
  const packName = "areas/kept-hollow/pack.json";
  const later = JSON.parse((await textsOf("later"))[packName]!);
  expect(later).toEqual({ ...JSON.parse(computed[packName]!), builtAt: "2027-01-15T08:06:00+00:00" });
});
