import { readFileSync } from "node:fs";
import { relative } from "node:path";
import type { Browser } from "../browser.ts";
import { htmlFiles } from "../pageFaults.ts";
import { axeFaults } from "./axeFaults.ts";
import type { BuiltPack } from "./builtPack.ts";
import { chartFaults } from "./chartFaults.ts";
import { contrastFaults, pageTokens } from "./contrastFaults.ts";
import { glareFaults } from "./darkFaults.ts";
import { fontSizeFaults } from "./fontSizeFaults.ts";
import { inkFaults, PRINT_SCALE } from "./inkFaults.ts";
import { narrowFaults } from "./narrowFaults.ts";
import { oneOfAllTypes, oneOfEachType, overPages, pageType } from "./overPages.ts";
import { citations, ownersWords, pageTexts } from "./pageTexts.ts";
import { policyFaults } from "./policyFaults.ts";
import { backgroundFaults, darkPrintFaults, frameFaults } from "./printFaults.ts";
import { setTheme, THEMES } from "./setTheme.ts";
import { targetFaults } from "./targetFaults.ts";
import { elementFaults } from "./weightFaults.ts";
import { wordFaults } from "./wordFaults.ts";

const DATA = new URL("../../data", import.meta.url).pathname;

/** Every page on a small phone: targets, reflow at 320 px in three settings of text, charts, content policy. */
export function phoneWalk(browser: Browser, { folder }: BuiltPack): Promise<string[]> {
  return overPages(browser, folder, htmlFiles(folder), { widthPx: 390 }, async (page, file) => [
    ...policyFaults(readFileSync(file, "utf8")),
    ...(await chartFaults(page)),
    ...(await targetFaults(page)),
    ...(await narrowFaults(page)),
  ]);
}

/** Pages of too many elements. */
export function elementWalk(browser: Browser, { folder }: BuiltPack): Promise<string[]> {
  return overPages(browser, folder, htmlFiles(folder), { widthPx: 390 }, elementFaults);
}

/** The words of every page. */
export function wordWalk(browser: Browser, { folder, content }: BuiltPack): Promise<string[]> {
  const apart = [...ownersWords(content), ...citations(DATA)];
  return overPages(browser, folder, htmlFiles(folder), { widthPx: 1024 }, async (page) =>
    wordFaults(await pageTexts(page), apart),
  );
}

/** Every page as print lays it out: sizes of type, and what does not fit the frame. */
export function typeWalk(browser: Browser, { folder }: BuiltPack): Promise<string[]> {
  return overPages(browser, folder, htmlFiles(folder), { widthPx: 1024 }, async (page) => [
    ...(await fontSizeFaults(page)),
    ...(await frameFaults(page)),
  ]);
}

/** One page of each type on a copier: ink of its marks and hatches at 300 dpi. */
export function inkWalk(browser: Browser, { folder }: BuiltPack): Promise<string[]> {
  const files = oneOfAllTypes(folder, htmlFiles(folder));
  return overPages(browser, folder, files, { widthPx: 680, scale: PRINT_SCALE }, inkFaults);
}

/** One page of each type in the dark: contrast of its tokens, glare of the first screen, print alike from each theme and without backgrounds. */
export function darkWalk(browser: Browser, { folder }: BuiltPack): Promise<string[]> {
  const files = oneOfAllTypes(folder, htmlFiles(folder));
  return overPages(browser, folder, files, { widthPx: 390 }, async (page) => {
    const faults: string[] = [];
    for (const theme of THEMES) {
      if (!(await setTheme(page, theme))) faults.push(`has no switch to the ${theme} theme`);
      faults.push(...contrastFaults(theme, await pageTokens(page)));
      if (theme !== "day") faults.push(...(await glareFaults(page)).map((fault) => `${theme}: ${fault}`));
    }
    await page.emulateMedia({ media: "print" });
    faults.push(...contrastFaults("print", await pageTokens(page)));
    await page.emulateMedia({ media: null });
    return [...faults, ...(await darkPrintFaults(page)), ...(await backgroundFaults(page))];
  });
}

const AXE_WIDTHS = [320, 390, 1024];

/**
 * Each page type under axe-core at three widths in three themes, the areas by turns. What axe leaves undecided is put into
 * `undecided` by its rule.
 */
export function axeWalk(
  browser: Browser,
  { folder }: BuiltPack,
  undecided: Set<string> = new Set(),
): Promise<string[]> {
  const files = oneOfEachType(folder, htmlFiles(folder));
  const turnOf = turns(folder, files);
  return overPages(browser, folder, files, { widthPx: 1024 }, async (page, file) => {
    const { turn, of } = turnOf.get(file)!;
    const faults: string[] = [];
    for (const [w, width] of AXE_WIDTHS.entries()) {
      for (const [t, theme] of THEMES.entries()) {
        if ((w + t) % of !== turn) continue;
        await page.setViewportSize({ width, height: 844 });
        await setTheme(page, theme);
        const found = await axeFaults(page);
        faults.push(...found.faults.map((fault) => `${width} px, ${theme}: ${fault}`));
        for (const one of found.undecided) undecided.add(one.replace(/, .*$/s, ""));
      }
    }
    return faults;
  });
}

/** Which of the pages of its type a file is, so that the areas share the work. */
function turns(folder: string, files: readonly string[]): Map<string, { turn: number; of: number }> {
  const typeOf = (file: string): string => pageType(relative(folder, file));
  return new Map(
    files.map((file) => {
      const alike = files.filter((other) => typeOf(other) === typeOf(file));
      return [file, { turn: alike.indexOf(file), of: alike.length }];
    }),
  );
}
