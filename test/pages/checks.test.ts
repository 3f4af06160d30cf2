import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { VERDICT_MARKS } from "../../scripts/drawing/verdictMarks.ts";
import { type Browser, launchBrowser, type Page } from "../browser.ts";
import { scratchFolder, writeFiles } from "../publish/scratchFolder.ts";
import { axeFaults } from "./axeFaults.ts";
import { chartFaults } from "./chartFaults.ts";
import { pageTokens } from "./contrastFaults.ts";
import { glareFaults } from "./darkFaults.ts";
import { fontSizeFaults } from "./fontSizeFaults.ts";
import { hostFaults } from "./hostFaults.ts";
import { inkFaults, inkShares, PRINT_SCALE, shareFaults } from "./inkFaults.ts";
import { clipFaults, narrowFaults } from "./narrowFaults.ts";
import { pageTexts } from "./pageTexts.ts";
import { printedPdf } from "./printedPdf.ts";
import { backgroundFaults, darkPrintFaults, frameFaults, sheetFaults } from "./printFaults.ts";
import { setTheme } from "./setTheme.ts";
import { targetFaults } from "./targetFaults.ts";
import { elementFaults, firstPageFaults } from "./weightFaults.ts";
import { wordFaults } from "./wordFaults.ts";

vi.setConfig({ testTimeout: 60_000 });

let browser: Browser;
let page: Page;
let sharp300: Page;
beforeAll(async () => {
  browser = await launchBrowser();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  sharp300 = await browser.newPage({ viewport: { width: 400, height: 300 }, deviceScaleFactor: PRINT_SCALE });
}, 60_000);
afterAll(() => browser?.close());

const BASE = `body { margin: 0; font: 1rem/1.5 sans-serif; color: #111; background: #fff }
  @page { size: 210mm 297mm; margin: 15mm } @media print { body { font-size: 10pt } }`;

async function show(body: string, css = "", at: Page = page): Promise<Page> {
  await at.emulateMedia({ media: null, colorScheme: null });
  await at.setContent(
    `<!doctype html><html lang="en"><head><title>T</title><style>${BASE}${css}</style></head><body class="paper-a4"><main><h1>T</h1>${body}</main></body></html>`,
  );
  return at;
}

/** The faults hold one with the words; the page without the planted part holds none. */
function expectPlanted(planted: string[], sound: string[], words: string): void {
  expect(sound).toEqual([]);
  expect(
    planted.filter((fault) => fault.includes(words)),
    `no fault says "${words}":\n${planted.join("\n")}`,
  ).not.toEqual([]);
}

describe("type and space", () => {
  test.each([
    ["body text under 10 pt", '<p style="font-size: 9.5pt">a</p>', "body text of 9.5 pt instead of 10"],
    [
      "a table under 9 pt",
      '<table style="font-size: 8pt"><tr><td>a</td></tr></table>',
      "a table, chart or foot of 8 pt",
    ],
    [
      "a warning at table size",
      '<table class="caution" style="font-size: 9pt"><tr><td>a</td></tr></table>',
      "safety text of 9 pt",
    ],
    [
      "a key figure like body text",
      '<dl class="four"><dd>07:18</dd></dl>',
      "a key figure of 10 pt instead of 14",
    ],
    [
      "a label that shrinks with its drawing",
      '<svg width="100" height="20" viewBox="0 0 200 40"><text y="20" font-size="16">a</text></svg>',
      "a table, chart or foot of 6 pt",
    ],
  ])("print: %s is found", async (_what, body, words) => {
    const sound = await fontSizeFaults(
      await show('<p>a</p><table style="font-size: 9pt"><tr><td>a</td></tr></table>'),
    );
    expectPlanted(await fontSizeFaults(await show(body)), sound, words);
  });

  test.each([
    [
      "a word longer than the screen",
      '<p style="white-space: nowrap; width: 400px">w</p>',
      "",
      "as it comes: is 400 px wide",
    ],
    [
      "a line that holds only as it comes",
      '<p style="white-space: nowrap">About thirty letters in a line</p>',
      "",
      "text at 200 %: is ",
    ],
    [
      "a line that holds only unspaced",
      '<p style="white-space: nowrap">Over forty letters stand in this one line.</p>',
      "",
      "text spaced: is ",
    ],
    [
      "a table that scrolls sideways",
      '<div data-scroll style="overflow-x: auto"><p style="width: 500px">w</p></div>',
      "",
      "scrolls 500 px sideways",
    ],
    [
      "a text that grows out of its box",
      "<p>a b</p>",
      "p { height: 30px; overflow: hidden }",
      "text at 200 %: cuts off",
    ],
    [
      "a text that does not grow",
      "<p>a</p>",
      "body { font-size: 16px }",
      "text at 200 %: the text does not grow",
    ],
  ])("320 px: %s is found", async (_what, body, css, words) => {
    const sound = await narrowFaults(
      await show(
        '<p>Some words that may break.</p><div data-scroll="matrix" style="overflow-x: auto"><p style="width: 500px">w</p></div>',
      ),
    );
    expectPlanted(await narrowFaults(await show(body, css)), sound, words);
  });

  const drawing = (content: string) =>
    `<svg width="200" height="40" viewBox="0 0 200 40"><title>D</title>${content}</svg>`;
  test.each([
    ["a line cut in half", '<p style="height: 12px; overflow: hidden">a</p>', "cuts off 12 px"],
    [
      "a text that runs into what follows",
      '<p style="height: 20px; width: 40px">one two three</p>',
      "spills",
    ],
    [
      "a label that leaves its drawing",
      drawing('<text x="180" y="20">outside</text>'),
      'label "outside" leaves',
    ],
    [
      "labels that touch",
      drawing('<text x="5" y="20">one</text><text x="15" y="22">two</text>'),
      'labels "one" and "two" touch',
    ],
  ])("%s is found", async (_what, body, words) => {
    const sound = await clipFaults(
      await show(`<p>a</p>${drawing('<text x="5" y="15">one</text><text x="90" y="15">two</text>')}`),
    );
    expectPlanted(await clipFaults(await show(body)), sound, words);
  });

  const big = "display: block; width: 60px; height: 44px; margin-bottom: 8px";
  test.each([
    [
      "a small link",
      '<p><a href="#a" style="display: block; width: 60px; height: 24px">a</a></p>',
      "a target of 60 x 24 px",
    ],
    ["a link alone in its cell", '<table><tr><td><a href="#a">a</a></td></tr></table>', "a target of"],
    [
      "two links too near",
      `<a href="#a" style="${big}; margin: 0">a</a><a href="#b" style="${big}">b</a>`,
      "targets 0 px apart",
    ],
    ["a switch without a large label", '<input type="radio" id="r"><label for="r">r</label>', "a target of"],
  ])("to tap: %s is found", async (_what, body, words) => {
    const sound = await targetFaults(
      await show(
        `<p>See <a href="#a">the key</a>.</p><a href="#a" style="${big}">a</a><a href="#b" style="${big}">b</a>`,
      ),
    );
    expectPlanted(await targetFaults(await show(body)), sound, words);
  });
});

describe("ink", () => {
  const marks = (css: string, kinds = ["suits", "marginal", "avoid", "not-assessed"]) =>
    `${VERDICT_MARKS}${kinds.map((kind) => `<svg style="${css}" viewBox="0 0 12 12"><use href="#mark-${kind}"/></svg> `).join("")}`;

  test.each(["2mm", "3mm", "3.9mm"])("the four verdict marks keep their ink at %s", async (size) => {
    expect(await inkFaults(await show(marks(`width: ${size}; height: ${size}`), "", sharp300))).toEqual([]);
  });

  test("grey marks vanish at the lower threshold", async () => {
    const faults = await inkFaults(
      await show(marks("width: 3mm; height: 3mm"), "svg { opacity: 0.5 }", sharp300),
    );
    expect(faults).toContain("suits has 0 % ink at 30 %, 60 to 100");
  });

  test("a mark under 2 mm is found", async () => {
    const faults = await inkFaults(await show(marks("width: 1.5mm; height: 1.5mm", ["avoid"]), "", sharp300));
    expect(faults.join()).toContain("prints the mark avoid 1.5 mm wide, at least 2");
  });

  const hatch = (line: number) =>
    `<svg width="100" height="30" viewBox="0 0 26.4 7.9"><defs><pattern id="h" width="1.4" height="1.4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="${line}" height="1.4"/></pattern></defs><rect width="26" height="7" style="fill: url(#h)"/></svg>`;
  test("a hatch of 0.35 mm stays a hatch; a hairline vanishes, a wide one fills", async () => {
    expect(await inkFaults(await show(hatch(0.35), "", sharp300))).toEqual([]);
    expect((await inkFaults(await show(hatch(0.04), "", sharp300))).join()).toContain(
      "hatch has 0 % ink at 30 %",
    );
    expect((await inkFaults(await show(hatch(1.2), "", sharp300))).join()).toContain(
      "after three copies, 8 to 60",
    );
  });

  test("a black and a white field have all ink and none", async () => {
    await show(
      '<div style="width: 40px; height: 40px; background: #000"></div>',
      "h1 { margin: 0; height: 40px }",
      sharp300,
    );
    const black = await inkShares(
      await sharp300.screenshot({ clip: { x: 0, y: 40, width: 40, height: 40 } }),
    );
    expect(black.at30).toBe(100);
    expect(shareFaults("avoid", black)).toHaveLength(3);
    const white = await inkShares(
      await sharp300.screenshot({ clip: { x: 60, y: 40, width: 40, height: 40 } }),
    );
    expect(white).toEqual({ at30: 0, at70: 0, copied: 0 });
  });
});

describe("print", () => {
  test("sheets are counted: three breaks make four", async () => {
    await show('<p style="break-before: page">a</p>'.repeat(3));
    const pdf = await printedPdf(page);
    expect(pdf.pages).toBe(4);
    expect(sheetFaults(pdf, "a4", 4)).toEqual([]);
    expect(sheetFaults(pdf, "a4", 3)).toEqual(["takes 4 sheets of a4, at most 3"]);
    expect(sheetFaults(pdf, "letter", 4)).toEqual(["prints on 210 x 297 mm instead of letter"]);
  });

  test("an element wider than the frame, which shrinks the sheet, is found", async () => {
    const sound = await frameFaults(await show("<p>a</p>"));
    expectPlanted(
      await frameFaults(await show('<p style="width: 260mm">a</p>')),
      sound,
      "the sheet would shrink",
    );
  });

  test("a meaning in a background, which printers drop, is found", async () => {
    const sound = await backgroundFaults(await show("<p>a</p>"));
    const planted = await backgroundFaults(await show('<p style="background: #000; width: 20px">a</p>'));
    expectPlanted(planted, sound, "of its printed picture without backgrounds");
  });

  const themed = (css: string) =>
    show(
      '<input type="radio" name="theme" id="theme-day" value="day" checked><input type="radio" name="theme" id="theme-red" value="red"><p>a</p>',
      `@media print { input { display: none } } ${css}`,
    );
  test("a theme that reaches the printer is found, and a switch that is not there", async () => {
    expect(
      await darkPrintFaults(await themed("@media screen { :root:has(#theme-red:checked) p { color: red } }")),
    ).toEqual([]);
    const red = await darkPrintFaults(await themed(":root:has(#theme-red:checked) p { color: red }"));
    expect(red).toEqual(["prints otherwise from the red theme"]);
    const dim = await darkPrintFaults(
      await themed("@media (prefers-color-scheme: dark) { p { color: red } }"),
    );
    expect(dim).toContain("prints otherwise from the dim theme");
    expect(await darkPrintFaults(await show("<p>a</p>"))).toEqual(["has no switch to the red theme"]);
  });
});

describe("a dark screen", () => {
  const dark = (body: string) =>
    show(
      body,
      ":root { --ink: #c9c6bd; --paper: #0e1011 } html, body { background: #0e1011; color: #c9c6bd }",
    );

  test("a bright field of 6 per cent of the first screen is found, one of 4 is not", async () => {
    const field = (share: number) =>
      `<div style="width: 390px; height: ${share * 844}px; background: #fff"></div>`;
    expectPlanted(
      await glareFaults(await dark(field(0.06))),
      await glareFaults(await dark(field(0.04))),
      "6 % of the first screen",
    );
  });

  test("the tokens are those of the theme chosen", async () => {
    await show(
      '<input type="radio" name="theme" id="theme-red">',
      `:root { --ink: #111; --paper: #fff } @media screen and (prefers-color-scheme: dark) { :root { --ink: #c9c6bd } }
       @media screen { :root:has(#theme-red:checked) { --ink: #ff4a3d } }`,
    );
    const inks: (string | undefined)[] = [];
    for (const theme of ["day", "dim", "red", "day"] as const) {
      expect(await setTheme(page, theme)).toBe(true);
      inks.push((await pageTokens(page)).ink);
    }
    expect(inks).toEqual(["rgb(17, 17, 17)", "rgb(201, 198, 189)", "rgb(255, 74, 61)", "rgb(17, 17, 17)"]);
  });
});

describe("for every reader", () => {
  test.each([
    ["grey text", '<p style="color: #999">Pale words</p>', "color-contrast"],
    [
      "a small target, which needs the tag wcag22aa",
      '<a href="#a" style="font-size: 5px; display: block; width: 9px">a</a><a href="#b" style="font-size: 5px; display: block; width: 9px">b</a>',
      "target-size",
    ],
    ["a heading that skips a level", "<h4>a</h4>", "heading-order"],
  ])("axe finds %s", async (_what, body, rule) => {
    const sound = (await axeFaults(await show("<p>a</p>"))).faults;
    expectPlanted((await axeFaults(await show(body))).faults, sound, rule);
  });

  test("axe lists what it can not decide: text over a picture", async () => {
    const picture = "background: linear-gradient(#000, #fff)";
    const { faults, undecided } = await axeFaults(await show(`<p style="${picture}; color: #888">a</p>`));
    expect(faults).toEqual([]);
    expect(undecided.join()).toContain("color-contrast");
  });

  const chart = (title: string, desc: string, content = "") =>
    `<svg role="img" aria-labelledby="t d" width="200" height="40" viewBox="0 0 200 40">${title}${desc}${content}</svg>`;
  const title = '<title id="t">Light of 5 Nov</title>';
  const desc = '<desc id="d">Sunrise 07:48.</desc>';
  test.each([
    ["no title", chart("", desc), "without title and description"],
    ["no description", chart(title, ""), "without title and description"],
    ["an empty description", chart(title, '<desc id="d"> </desc>'), "without title and description"],
    [
      "no words at all",
      '<svg width="9" height="9" viewBox="0 0 9 9"></svg>',
      "without title and description",
    ],
    [
      "a figure that only the drawing holds",
      chart(title, desc, "<text>08:15</text>"),
      "figure 08:15 stands in no text",
    ],
    [
      "a part of another figure",
      `${chart(title, desc, "<text>1.4</text>")}<p>21.45</p>`,
      "figure 1.4 stands in no text",
    ],
    [
      "a title of 13 words",
      chart(`<title id="t">${"a ".repeat(13)}</title>`, desc),
      "a chart title of 13 words",
    ],
    [
      "a description of 61 words",
      chart(title, `<desc id="d">${"a ".repeat(61)}</desc>`),
      "description of 61 words",
    ],
    [
      "words in a hidden drawing",
      '<svg aria-hidden="true" width="9" height="9"><text>a</text></svg>',
      "a hidden drawing with texts",
    ],
  ])("a chart with %s is found", async (_what, body, words) => {
    const sound = await chartFaults(
      await show(`${chart(title, desc, "<text>06</text><text>07:48</text>")}<p>Sunrise 07:48.</p>`),
    );
    expectPlanted(await chartFaults(await show(body)), sound, words);
  });

  test("texts are read block by block: a list in a cell, words beside a nested block, prose apart", async () => {
    await show(
      `<ul><li>One <strong>and</strong> a half.<ul><li>Two.</li></ul></li></ul><div class="prose"><p>Mine.</p></div>
       <table><thead><tr><th>Time</th><th>Do</th></tr></thead><tbody><tr><th>06:05</th><td>at the tree</td></tr></tbody></table>`,
    );
    const { blocks, rows } = await pageTexts(page);
    expect(blocks.map(({ text }) => text)).toEqual([
      ...["T", "One and a half.", "Two.", "Time", "Do", "06:05", "at the tree"],
    ]);
    expect(rows).toEqual([{ time: "06:05", task: "at the tree" }]);
    expect(wordFaults({ blocks, rows }, [])).toEqual([
      'an estimated time without "about": "06:05 at the tree"',
    ]);
  });
});

describe("weight and requests", () => {
  test("a page of more than 2 500 elements is found", async () => {
    expect(await elementFaults(await show("<b>a</b>".repeat(2490)))).toEqual([]);
    expect(await elementFaults(await show("<b>a</b>".repeat(2500)))).toEqual([
      "has 2507 elements, at most 2500",
    ]);
  });

  test("a first page of 300 kB counts its style and its fonts", () => {
    const folder = scratchFolder();
    writeFiles(folder, {
      "index.html": '<link rel="stylesheet" href="a/s.css">',
      "a/s.css": '@font-face { src: url("f.woff2") }',
      "a/f.woff2": "x".repeat(200_000),
    });
    expect(firstPageFaults(folder)).toEqual([]);
    writeFileSync(join(folder, "a/f.woff2"), "x".repeat(300_000));
    expect(firstPageFaults(folder)).toEqual(["index.html: weighs 300072 bytes with its parts, under 300000"]);
  });

  test("on a host in a sub-folder, an address from the root, one outside and one that is not there are found", async () => {
    const folder = mkdtempSync(join(tmpdir(), "leelight-host-"));
    const style = (href: string) =>
      `<!doctype html><title>T</title><link rel="icon" href="data:,"><link rel="stylesheet" href="${href}">`;
    writeFiles(folder, { "a.html": style("b/s.css"), "b/s.css": "p { color: red }" });
    expect(await hostFaults(browser, folder)).toEqual([]);
    writeFiles(folder, {
      "a.html": style("/b/s.css"),
      "b/c.html": style("no.css"),
      "d.html": style("https://example.invalid/s.css"),
    });
    const faults = await hostFaults(browser, folder);
    expect(faults).toContain("a.html: a request to /b/s.css");
    expect(faults).toContain("b/c.html: a request for what is not there: /some/sub-folder/b/no.css");
    expect(faults).toContain("d.html: a request to https://example.invalid/s.css");
    rmSync(folder, { recursive: true });
  });
});
