import { afterAll, beforeAll, expect, test } from "vitest";
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

test("the demonstration areas print their marks and hatches so that a copier keeps them apart", {
  timeout: 300_000,
}, async () => {
  expect(await inkWalk(browser, demo)).toEqual([]);
});

test("the first page of the demonstration areas weighs under 300 kB", () => {
  expect(firstPageFaults(demo.folder)).toEqual([]);
});
