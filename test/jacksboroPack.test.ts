import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Browser, launchBrowser } from "./browser.ts";
import { pageFaults } from "./pageFaults.ts";
import { filesBelow, sharedScratchFolder } from "./publish/scratchFolder.ts";
import { ended, tsProcess } from "./publish/tsProcess.ts";

const out = join(sharedScratchFolder(), "_site");
let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

test("the area on measured ground packs whole, and every page opens from disk without a fault", {
  timeout: 300_000,
}, async () => {
  const args = ["--content", "test/fixtures/jacksboro/content", "--out", out, "--paper", "A5"];
  expect(await ended(tsProcess("../../scripts/pack.ts", args))).toMatchObject({ status: 0 });
  const cards = filesBelow(out).filter((path) => /\/sites\/[^/]+\.html$/.test(path));
  expect(cards).toHaveLength(12);
  expect(await pageFaults(browser, out)).toEqual([]);
});
