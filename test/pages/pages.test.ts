import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Browser, launchBrowser } from "../browser.ts";
import { type BuiltPack, builtPack, removeBuiltPacks } from "./builtPack.ts";
import { inkWalk } from "./packWalks.ts";
import { firstPageFaults } from "./weightFaults.ts";

let browser: Browser;
let demo: BuiltPack;

beforeAll(async () => {
  [browser, demo] = await Promise.all([launchBrowser(), builtPack("demo")]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  removeBuiltPacks();
});

const inTime = { timeout: 300_000 };

describe("the pages of the demonstration areas", () => {
  test(
    "hold on a small phone, with large and with spaced text, to a thumb and to a reader who hears",
    inTime,
    async () => {
      expect(await phoneWalk(browser, demo)).toEqual([]);
    },
  );

  test("print their marks and hatches so that a copier keeps them apart", inTime, async () => {
    expect(await inkWalk(browser, demo)).toEqual([]);
  });

  test("weigh under 300 kB to begin with", () => {
    expect(firstPageFaults(demo.folder)).toEqual([]);
  });
});
