import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { detailsFile } from "../scripts/content/schema/detailsSchema.ts";
import { packFile } from "../scripts/content/schema/packSchema.ts";
import { type Browser, launchBrowser } from "./browser.ts";
import { pageFaults } from "./pageFaults.ts";
import { digestOf, filesBelow, sharedScratchFolder } from "./publish/scratchFolder.ts";
import { ended, tsProcess } from "./publish/tsProcess.ts";

const folder = sharedScratchFolder();
const out = join(folder, "_site");
let browser: Browser;

async function packInto(outDir: string, env: Record<string, string> = {}) {
  const args = ["--out", outDir];
  return await ended(tsProcess("../../scripts/pack.ts", args, { SOURCE_DATE_EPOCH: "1806000000", ...env }));
}

beforeAll(async () => {
  browser = await launchBrowser();
  expect(await packInto(out)).toMatchObject({ status: 0 });
}, 180_000);

afterAll(() => browser?.close());

describe("the pack of the demonstration areas", () => {
  test("every page opens from disk on a small screen without a fault", { timeout: 300_000 }, async () => {
    expect(await pageFaults(browser, out)).toEqual([]);
  });

  test("is the same to the byte when it is built in another time zone and language", {
    timeout: 180_000,
  }, async () => {
    const other = join(folder, "other");
    const env = { TZ: "Pacific/Auckland", LANG: "de_DE.UTF-8", LC_ALL: "de_DE.UTF-8" };
    expect(await packInto(other, env)).toMatchObject({ status: 0 });
    expect(digestOf(other)).toBe(digestOf(out));
  });

  test("the numbers of each area fit their schema and name the time of the build", () => {
    const packs = filesBelow(out).filter((path) => path.endsWith("pack.json"));
    expect(packs.length).toBeGreaterThanOrEqual(2);
    for (const path of packs) {
      const pack = packFile.parse(JSON.parse(readFileSync(join(out, path), "utf8")));
      expect(new Date(pack.builtAt).getTime()).toBe(1_806_000_000_000);
      const details = readFileSync(join(out, path.replace("pack.json", "details.json")), "utf8");
      expect(detailsFile.parse(JSON.parse(details)).area).toBe(pack.area.id);
    }
  });
});
