import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { runStubPack } from "./runStubPack.ts";
import { digestOf, filesBelow, scratchFolder, writeFiles } from "./scratchFolder.ts";
import { stubLayouts } from "./stubLayouts.ts";
import { stubSteps } from "./stubSteps.ts";

vi.setConfig({ testTimeout: 60_000 });

const larch = JSON.stringify({ name: "Larch Valley", summary: "A valley.", trips: ["april"] });

function project(files: Record<string, string> = { "areas/larch-valley/area.json": larch }) {
  const folder = scratchFolder();
  writeFiles(join(folder, "content"), files);
  const out = join(folder, "_site");
  const args = ["--content", join(folder, "content"), "--out", out];
  return { folder, out, args };
}

describe("a pack that is built", () => {
  test("holds pages, the style sheet, and the numbers of each area", async () => {
    const { out, args, folder } = project();
    const { status, err, out: said } = await runStubPack(args);
    expect({ status, err }).toEqual({ status: 0, err: "" });
    expect(filesBelow(out)).toEqual([
      ".leelight",
      "areas/larch-valley/details.json",
      "areas/larch-valley/index.html",
      "areas/larch-valley/pack.json",
      "assets/fonts/source-sans-3-400.woff2",
      "assets/fonts/source-sans-3-700.woff2",
      "assets/fonts/source-sans-3-licence.txt",
      "assets/leelight.css",
      "assets/leelight.js",
      "index.html",
    ]);
    expect(readFileSync(join(out, "areas/larch-valley/index.html"), "utf8")).toContain(
      '<p class="note">A valley.</p>',
    );
    expect(said).toMatch(/Compute areas, 1 of 1, \d+\.\d s\n/);
    expect(said).toMatch(/1 area, 2 pages, \d+\.\d s\. Open /);
    expect(readdirSync(folder).sort()).toEqual(["_site", "content"]);
  });

  test("pack.json ends with one newline and says every number again when it is read", async () => {
    const { out, args } = project();
    await runStubPack(args);
    const text = readFileSync(join(out, "areas/larch-valley/pack.json"), "utf8");
    expect(text).toMatch(/[^\n]\n$/);
    expect(Object.keys(JSON.parse(text)).slice(0, 3)).toEqual(["schemaVersion", "generator", "builtAt"]);
    expect(JSON.parse(text).area.centre).toEqual({ lat: -45, lon: 168 });
  });

  test("is the same to the byte for the same content and declared time, wherever and whenever it is built", async () => {
    const env = { SOURCE_DATE_EPOCH: "1774854000" };
    const a = project();
    const b = project();
    await runStubPack(a.args, { env, now: () => new Date("2030-01-01T00:00:00Z") });
    await runStubPack(b.args, { env });
    expect(digestOf(a.out)).toBe(digestOf(b.out));
    await runStubPack(b.args, { env: { SOURCE_DATE_EPOCH: "1774854001" } });
    expect(digestOf(a.out)).not.toBe(digestOf(b.out));
  });

  test("replaces an earlier pack as a whole, so that a page that is gone is gone", async () => {
    const { out, args, folder } = project({
      "areas/larch-valley/area.json": larch,
      "areas/old/area.json": larch,
    });
    await runStubPack(args);
    expect(existsSync(join(out, "areas/old/index.html"))).toBe(true);
    const only = await runStubPack([...args, "--area", "larch-valley"]);
    expect(only.status).toBe(0);
    expect(existsSync(join(out, "areas/old"))).toBe(false);
    expect(readdirSync(folder).sort()).toEqual(["_site", "content"]);
  });
});

describe("a build that fails leaves the earlier pack untouched", () => {
  async function built() {
    const made = project();
    await runStubPack(made.args);
    return { ...made, before: digestOf(made.out) };
  }

  test("problems are all listed and the status is 1", async () => {
    const { folder, out, args, before } = await built();
    writeFiles(join(folder, "content/areas"), {
      "one/area.json": '{"name": 1, "summary": ""}',
      "two/area.json": '{"name": 2, "summary": ""}',
    });
    const { status, err } = await runStubPack(args);
    expect(status).toBe(1);
    expect(err).toContain("content/areas/one/area.json: name [terrain-stub]");
    expect(err).toContain("content/areas/two/area.json: name [terrain-stub]");
    expect(err).toContain("2 problems. Nothing was built or changed.");
    expect(digestOf(out)).toBe(before);
    expect(readdirSync(folder).sort()).toEqual(["_site", "content"]);
  });

  test("a template that names a field that does not exist stops the build", async () => {
    const { folder, out, args, before } = await built();
    const layoutsFolder = join(folder, "layouts");
    cpSync(stubLayouts, layoutsFolder, { recursive: true });
    const page = join(layoutsFolder, "pages/area.njk");
    writeFileSync(page, readFileSync(page, "utf8").replace("sheet.builtAt", "sheet.biultAt"));
    const { status, err } = await runStubPack(args, { layoutsFolder });
    expect(status).toBe(1);
    expect(err).toContain("the output was not changed");
    expect(err).toContain("area.njk");
    expect(digestOf(out)).toBe(before);
    expect(readdirSync(folder).sort()).toEqual(["_site", "content", "layouts"]);
  });

  test("numbers that do not fit the schema of pack.json stop the build", async () => {
    const { out, args, before } = await built();
    const steps = {
      ...stubSteps,
      composePack: async (...given: Parameters<typeof stubSteps.composePack>) => {
        const made = await stubSteps.composePack(...given);
        return { ...made, pack: { ...made.pack, year: Number.NaN } };
      },
    };
    const { status, err } = await runStubPack(args, { steps });
    expect(status).toBe(1);
    expect(err).toContain("pack.json does not fit its schema (1 places)\nyear:");
    expect(digestOf(out)).toBe(before);
  });

  test.each(["../evil.html", "/tmp/evil.html", "areas/../../evil.html", "a//b.html", "A.html", ""])(
    "a page with the permalink %j is refused",
    async (permalink) => {
      const { folder, out, args, before } = await built();
      const steps = { ...stubSteps, composePages: () => ({ index: [{ permalink }], area: [], day: [] }) };
      const { status, err } = await runStubPack(args, { steps });
      expect(status).toBe(1);
      expect(err).toContain("must be a plain path to an .html file");
      expect(digestOf(out)).toBe(before);
      expect(existsSync(join(folder, "evil.html"))).toBe(false);
    },
  );
});

describe("wrong usage ends with status 2 and says what is right", () => {
  test.each([
    [["--editoin", "owner"], "did you mean --edition"],
    [["--edition", "party"], "edition party is not available yet"],
    [["--edition", "mine"], "--edition must be owner"],
    [["--year", "26"], "--year must be a year"],
    [["--as-of", "2027-11-04"], "--as-of must be an instant with its offset"],
    [["--as-of", "2027-02-30T12:00:00Z"], "--as-of must be an instant with its offset"],
    [["--paper", "A3"], "--paper must be A4, Letter, A5"],
    [["--area", "../x"], "--area must be an id"],
    [["--trip", "may"], "no trip may; the areas packed have april"],
    [["extra"], "one word too many"],
  ])("%j", async (wrong, words) => {
    const { out, args } = project();
    const { status, err } = await runStubPack([...args, ...wrong]);
    expect(status).toBe(2);
    expect(err).toContain(words);
    expect(existsSync(out)).toBe(false);
  });

  test("a declared time that is no number of seconds is refused", async () => {
    const { args } = project();
    expect((await runStubPack(args, { env: { SOURCE_DATE_EPOCH: "yesterday" } })).status).toBe(2);
  });

  test("--help lists every option and builds nothing", async () => {
    const { out, args } = project();
    const { status, out: said } = await runStubPack([...args, "--help"]);
    expect(status).toBe(0);
    for (const option of ["content", "out", "edition", "area", "trip", "year", "as-of", "paper"]) {
      expect(said).toContain(`--${option}`);
    }
    expect(existsSync(out)).toBe(false);
  });
});

describe("an output folder that is not ours is never replaced", () => {
  test("a folder with files of someone else is refused with status 2", async () => {
    const { out, args } = project();
    writeFiles(out, { "photos/deer.txt": "mine" });
    const { status, err } = await runStubPack(args);
    expect(status).toBe(2);
    expect(err).toContain("holds files that were not written by leelight (such as photos)");
    expect(readFileSync(join(out, "photos/deer.txt"), "utf8")).toBe("mine");
  });

  test("files that someone puts there while the pack is computed are kept too", async () => {
    const { out, args } = project();
    const steps = {
      ...stubSteps,
      composePages: (...given: Parameters<typeof stubSteps.composePages>) => {
        writeFiles(out, { "mine.txt": "mine" });
        return stubSteps.composePages(...given);
      },
    };
    expect((await runStubPack(args, { steps })).status).toBe(2);
    expect(filesBelow(out)).toEqual(["mine.txt"]);
  });

  test("an empty folder is taken", async () => {
    const { out, args } = project();
    mkdirSync(out);
    expect((await runStubPack(args)).status).toBe(0);
  });

  test("a file, and the content folder, what is in it and what holds it, are refused", async () => {
    const { folder, args } = project();
    const content = join(folder, "content");
    writeFiles(folder, { "a-file": "x" });
    const before = digestOf(folder);
    for (const out of [join(folder, "a-file"), content, join(content, "areas/new"), folder]) {
      expect((await runStubPack([...args.slice(0, 2), "--out", out])).status, out).toBe(2);
    }
    expect(digestOf(folder)).toBe(before);
  });

  test("a link to a folder is followed: the folder is replaced and the link stays", async () => {
    const { folder, args } = project();
    const real = join(folder, "elsewhere/real");
    mkdirSync(real, { recursive: true });
    symlinkSync(real, join(folder, "link"));
    expect((await runStubPack([...args.slice(0, 2), "--out", join(folder, "link")])).status).toBe(0);
    expect(existsSync(join(real, "index.html"))).toBe(true);
    expect(readdirSync(join(folder, "elsewhere"))).toEqual(["real"]);
  });
});
