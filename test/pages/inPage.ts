import { readFileSync } from "node:fs";
import type { Page } from "../browser.ts";

const read = (name: string): string =>
  readFileSync(new URL(`inPage/${name}.js`, import.meta.url), "utf8")
    .trim()
    .replace(/;$/, "");

/**
 * What a function of the folder inPage says about the page as it stands: it is read as text and run by the browser, so that
 * a page's own rules on scripts do not bar it. The names of `seen.js` are at its hand.
 *
 * @param argument anything that JSON can write
 */
export async function inPage<Result>(page: Page, name: string, argument: unknown = null): Promise<Result> {
  const source = `(() => { const { textOf, nameOf, ownText, isSeen, seenTexts } = ${read("seen")};
    return (${read(name)})(${JSON.stringify(argument)}); })()`;
  return (await page.evaluate(source)) as Result;
}
