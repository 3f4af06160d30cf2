import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bundleStyles } from "../../scripts/publish/bundleStyles.ts";
import { projectFolders } from "../../scripts/publish/projectFolders.ts";
import { type Browser, launchBrowser, type Page } from "../browser.ts";

let browser: Browser;
let page: Page;
let folder: string;

// the switch as the frame of every page has it
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "leelight-themes-"));
  const base = await readFile(join(projectFolders.layouts, "base.njk"), "utf8");
  const fieldset = base.match(/<fieldset class="themes">[\s\S]*?<\/fieldset>/)?.[0] ?? "";
  await writeFile(join(folder, "leelight.css"), await bundleStyles(projectFolders.layouts));
  await writeFile(
    join(folder, "page.html"),
    `<!doctype html><meta charset="utf-8"><link rel="stylesheet" href="leelight.css"><p>Text</p>${fieldset}`,
  );
  browser = await launchBrowser();
  const context = await browser.newContext({ javaScriptEnabled: false });
  page = await context.newPage();
  await page.goto(pathToFileURL(join(folder, "page.html")).href);
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Text and ground as the page shows them. */
async function colours(): Promise<{ text: string; ground: string }> {
  const style = async (name: string): Promise<string> =>
    (await page.evaluate(
      `getComputedStyle(document.documentElement).getPropertyValue(${JSON.stringify(name)})`,
    )) as string;
  return { text: await style("color"), ground: await style("background-color") };
}

const day = { text: "rgb(17, 17, 17)", ground: "rgb(255, 255, 255)" };
const dim = { text: "rgb(201, 198, 189)", ground: "rgb(14, 16, 17)" };
const red = { text: "rgb(255, 74, 61)", ground: "rgb(0, 0, 0)" };

test.each([
  ["device", "light", day],
  ["device", "dark", dim],
  ["day", "dark", day],
  ["dim", "light", dim],
  ["red", "light", red],
  ["red", "dark", red],
] as const)("theme %s on a %s device, without a script", async (theme, device, expected) => {
  await page.emulateMedia({ media: "screen", colorScheme: device });
  await page.check(`#theme-${theme}`);
  expect(await colours()).toEqual(expected);
});

test.each(["device", "day", "dim", "red"])("print from theme %s is black on white", async (theme) => {
  await page.emulateMedia({ media: "screen", colorScheme: "dark" });
  await page.check(`#theme-${theme}`);
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  expect(await colours()).toEqual({ text: "rgb(0, 0, 0)", ground: "rgb(255, 255, 255)" });
  expect(await page.locator(".themes").isVisible()).toBe(false);
});
