import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { type Browser, launchBrowser } from "./browser.ts";
import { pageFaults } from "./pageFaults.ts";
import { runStubPack } from "./publish/runStubPack.ts";
import { scratchFolder, writeFiles } from "./publish/scratchFolder.ts";

vi.setConfig({ testTimeout: 60_000 });

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
}, 60_000);
afterAll(() => browser.close());

function pageOf(body: string, head = ""): string {
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>T</title>${head}</head><body><h1>T</h1>${body}</body></html>`;
}

async function faultsOf(files: Record<string, string>): Promise<string[]> {
  const folder = scratchFolder();
  writeFiles(join(folder, "pack"), files);
  return await pageFaults(browser, join(folder, "pack"));
}

test("a built pack opens from disk with no request that leaves it and no fault", async () => {
  const folder = scratchFolder();
  writeFiles(join(folder, "content"), { "areas/a/area.json": '{"name": "A", "summary": "a"}' });
  const out = join(folder, "_site");
  expect((await runStubPack(["--content", join(folder, "content"), "--out", out])).status).toBe(0);
  expect(await pageFaults(browser, out)).toEqual([]);
});

const goodTable =
  '<table><caption>C</caption><tr><th scope="col">a</th></tr><tr><td><svg><title>suits</title></svg></td></tr></table>';

test("a good page has no fault: anchors, outside links as text, wide things in a scroll box, figures as data", async () => {
  const body = `${goodTable}<p id="here"><a href="#here">x</a> <a href="b/c.html#there">y</a>
    <a href="https://example.invalid/">law</a> <a href="tel:111">call</a></p>
    <div data-scroll style="overflow-x: auto"><div style="width: 900px">wide</div></div>
    <img alt="dot" src="data:image/gif;base64,R0lGODlhAQABAAAAACH5BAEKAAEALAAAAAABAAEAAAICTAEAOw==">`;
  expect(await faultsOf({ "a.html": pageOf(body), "b/c.html": pageOf('<p id="there">z</p>') })).toEqual([]);
});

describe("each fault is found", () => {
  test.each([
    [
      "an image from the network",
      '<img alt="x" src="https://example.invalid/x.png">',
      "asks for https://example.invalid/x.png",
    ],
    [
      "a request made by a script",
      "<script>new Image().src = 'http://example.invalid/y'</script>",
      "asks for http://example.invalid/y",
    ],
    [
      "a file outside the folder",
      '<img alt="x" src="../x.png">',
      "takes a part from outside the pack: ../x.png",
    ],
    ["a link out of the folder", '<a href="../x.html">x</a>', "links out of the pack: ../x.html"],
    [
      "a missing style sheet",
      '<link rel="stylesheet" href="no.css">',
      "takes a part that does not exist: no.css",
    ],
    ["a script error", "<script>throw new Error('broken')</script>", "script: broken"],
    ["a link to nothing", '<a href="no.html">x</a>', "links to a file that does not exist: no.html"],
    ["a link to a bare folder", '<a href="./">x</a>', "links to a folder instead of a file: ./"],
    [
      "a link to a missing place",
      '<a href="a.html#no">x</a>',
      "links to a place that does not exist: a.html#no",
    ],
    [
      "a wide element",
      '<div style="width: 400px; height: 9px">w</div>',
      "is 400 px wide on a screen of 320 px",
    ],
    [
      "a wide element that is cut off",
      '<div style="overflow: hidden"><p style="width: 400px">w</p></div>',
      "reaches 4",
    ],
    ["a table without caption", goodTable.replace("<caption>C</caption>", ""), "a table has no caption"],
    ["a head without scope", goodTable.replace(' scope="col"', ""), 'table "C" has a head without scope'],
    [
      "an empty cell",
      goodTable.replace("<svg><title>suits</title></svg>", " "),
      'table "C" has an empty cell in row 2',
    ],
    ["a number that is none", "<p>Slope NaN deg</p>", 'says "T Slope NaN deg"'],
    ["a value that is not there", '<img alt="undefined" src="data:,">', 'says "undefined"'],
    ["null in a drawing", "<svg><text>null</text></svg>", 'says "null"'],
    ["an object as text", "<p>[object Object]</p>", "[object"],
    ["a template that did not run", "<p>{{ sheet.title }}</p>", "{{ sheet"],
    ["one id twice", '<p id="i">a</p><p id="i">b</p>', 'the id "i" is used twice'],
    ["two main headings", "<h1>U</h1>", "2 main headings"],
  ])("%s", async (_what, body, words) => {
    const faults = await faultsOf({ "a.html": pageOf(`<style>body { margin: 0 }</style>${body}`) });
    expect(
      faults.filter((fault) => fault.includes(words)),
      faults.join("\n"),
    ).not.toEqual([]);
  });

  test("a folder without pages is a fault, not a pass", async () => {
    const folder = scratchFolder();
    expect(await pageFaults(browser, folder)).toEqual([`${folder}: there are no pages`]);
  });
});
