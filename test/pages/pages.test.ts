import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Browser, launchBrowser } from "../browser.ts";
import { htmlFiles, pageFaults } from "../pageFaults.ts";
import { type BuiltPack, builtPack, removeBuiltPacks } from "./builtPack.ts";
import { hostFaults } from "./hostFaults.ts";
import { oneOfEachType } from "./overPages.ts";
import { axeWalk, darkWalk, inkWalk, phoneWalk, wordWalk } from "./packWalks.ts";
import { firstPageFaults } from "./weightFaults.ts";

let browser: Browser;
let demo: BuiltPack;
let worst: BuiltPack;

beforeAll(async () => {
  [browser, demo, worst] = await Promise.all([launchBrowser(), builtPack("demo"), builtPack("worstCase")]);
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

  test("keep to the rules of wording", inTime, async () => {
    expect(await wordWalk(browser, demo)).toEqual([]);
  });

  test("have no fault that axe finds, in three themes at three widths", inTime, async () => {
    expect(await axeWalk(browser, demo)).toEqual([]);
  });

  test(
    "can be read in the dark, and print alike from each theme and without backgrounds",
    inTime,
    async () => {
      expect(await darkWalk(browser, demo)).toEqual([]);
    },
  );

  test("print their marks and hatches so that a copier keeps them apart", inTime, async () => {
    expect(await inkWalk(browser, demo)).toEqual([]);
  });

  test("load from a host that keeps them in a sub-folder, with scripts off", inTime, async () => {
    expect(
      await hostFaults(browser, demo.folder, oneOfEachType(demo.folder, htmlFiles(demo.folder))),
    ).toEqual([]);
  });

  test("weigh under 300 kB to begin with", () => {
    expect(firstPageFaults(demo.folder)).toEqual([]);
  });
});

describe("the pages of an area where everything is as long as it gets", () => {
  test("open from disk on a small screen without a fault", inTime, async () => {
    expect(await pageFaults(browser, worst.folder)).toEqual([]);
  });

  test("hold on a small phone, with large and with spaced text", inTime, async () => {
    expect(await phoneWalk(browser, worst)).toEqual([]);
  });
});
