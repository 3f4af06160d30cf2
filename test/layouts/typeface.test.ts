import { mkdir, mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bundleStyles } from "../../scripts/publish/bundleStyles.ts";
import { copyFonts } from "../../scripts/publish/copyFonts.ts";
import { projectFolders } from "../../scripts/publish/projectFolders.ts";
import { type Browser, launchBrowser, type Page } from "../browser.ts";

let browser: Browser;
let page: Page;
let folder: string;

// a page two folders below the assets, opened from disk under the policy of the real pages
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "leelight-type-"));
  const assets = join(folder, "assets");
  await copyFonts(assets);
  await writeFile(join(assets, "leelight.css"), await bundleStyles(projectFolders.layouts));
  const base = await readFile(join(projectFolders.layouts, "base.njk"), "utf8");
  const policy = base.match(/<meta http-equiv="Content-Security-Policy"[^>]*>/)?.[0] ?? "";
  expect(policy).toContain("font-src 'self'");
  await mkdir(join(folder, "areas", "a"), { recursive: true });
  const file = join(folder, "areas", "a", "index.html");
  // the policy of a page forbids style attributes
  await writeFile(join(assets, "size.css"), "[data-text] { font-size: 100px; }");
  const sheets = ["leelight", "size"].map(
    (name) => `<link rel="stylesheet" href="../../assets/${name}.css">`,
  );
  const rows = ["span", "strong"].map((name) => `<p><${name} data-text></${name}></p>`);
  await writeFile(file, `<!doctype html><meta charset="utf-8">${policy}${sheets.join("")}${rows.join("")}`);
  browser = await launchBrowser();
  page = await browser.newPage();
  await page.goto(pathToFileURL(file).href);
  // a face loads when a text asks for it: both, before anything is measured
  await widths(["0"]);
  await page.evaluate("Promise.all([...document.fonts].map((face) => face.loaded)).then(() => true)");
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Width of each text in regular and bold, at 100 px. */
async function widths(texts: string[]): Promise<number[][]> {
  return (await page.evaluate(
    `[...document.querySelectorAll("[data-text]")].map((box) => ${JSON.stringify(texts)}.map((text) => {
      box.textContent = text;
      return box.getBoundingClientRect().width;
    }))`,
  )) as number[][];
}

test("regular and bold load from disk", async () => {
  const loaded = await page.evaluate(
    `[...document.fonts].filter((face) => face.status === "loaded").map((face) => face.weight)`,
  );
  expect(loaded).toEqual(["400", "700"]);
});

test("all digits are equally wide, in both weights", async () => {
  for (const row of await widths([..."0123456789"])) {
    expect(row).toHaveLength(10);
    expect(Math.max(...row) - Math.min(...row)).toBe(0);
  }
});

test("look-alikes differ in width, or in shape when they do not", async () => {
  for (const [zero, capitalO, one, smallL, capitalI] of await widths([..."0O1lI"])) {
    // a tenth of the size of the type: 0.35 mm at 10 pt
    expect(Math.abs(capitalO! - zero!)).toBeGreaterThan(10);
    expect(Math.abs(one! - smallL!)).toBeGreaterThan(10);
    expect(Math.abs(one! - capitalI!)).toBeGreaterThan(10);
  }
  const shots = new Set<string>();
  for (const letter of "lI5S8B") {
    await widths([letter]);
    shots.add((await page.locator("[data-text]").first().screenshot()).toString("base64"));
  }
  expect(shots.size).toBe(6);
});

test("every sign that pages print comes from the typeface itself", async () => {
  const session = await page.context().newCDPSession(page);
  await widths(["°′″×–−½éüåø"]);
  await session.send("DOM.enable");
  await session.send("CSS.enable");
  const { root } = await session.send("DOM.getDocument", { depth: -1 });
  const { nodeIds } = await session.send("DOM.querySelectorAll", {
    nodeId: root.nodeId,
    selector: "[data-text]",
  });
  expect(nodeIds).toHaveLength(2);
  for (const nodeId of nodeIds) {
    const { fonts } = await session.send("CSS.getPlatformFontsForNode", { nodeId });
    expect(fonts.map((font) => font.isCustomFont)).toEqual([true]);
  }
});

test("the files together stay under 60 kB and carry their licence", async () => {
  const names = ["source-sans-3-400.woff2", "source-sans-3-700.woff2", "source-sans-3-licence.txt"];
  const sizes = await Promise.all(
    names.map(async (name) => (await stat(join(folder, "assets", "fonts", name))).size),
  );
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(60_000);
  expect(await readFile(join(folder, "assets", "fonts", names[2]!), "utf8")).toContain(
    "SIL Open Font License",
  );
});
