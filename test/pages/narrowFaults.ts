import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

/** Only maps and the matrix of all sites may scroll sideways: a list stands beside the matrix. */
export const MAY_SCROLL =
  "[data-scroll='matrix'], [data-scroll='map'], :has(> .matrix), :has(> .wind-matrix)";

/** How a reader may set the text: as it comes, twice as large, or spaced as WCAG 1.4.12 asks. */
export const READERS_TEXT = {
  "as it comes": "",
  "text at 200 %": "html { font-size: 200% !important }",
  "text spaced": `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }
    p { margin-block-end: 2em !important }`,
} as const;

/**
 * Faults of a page on the least screen, 320 px, with the text as it comes, at 200 per cent and spaced: wider than the screen,
 * boxes that scroll sideways without need, texts cut off and labels of drawings that touch.
 */
export async function narrowFaults(page: Page, widthPx = 320): Promise<string[]> {
  const before = page.viewportSize() ?? { width: widthPx, height: 900 };
  await page.setViewportSize({ width: widthPx, height: 900 });
  const faults: string[] = [];
  for (const [how, css] of Object.entries(READERS_TEXT)) {
    const sizePx = await bodySizePx(page);
    await setReadersText(page, css);
    const isGrown = how !== "text at 200 %" || (await bodySizePx(page)) > 1.7 * sizePx;
    const found = [
      ...(isGrown ? [] : ["the text does not grow"]),
      ...(await inPage<string[]>(page, "tooWide", MAY_SCROLL)),
      ...(await inPage<string[]>(page, "clipped")),
    ];
    faults.push(...found.map((fault) => `${how}: ${fault}`));
  }
  await setReadersText(page, "");
  await page.setViewportSize(before);
  return faults;
}

async function bodySizePx(page: Page): Promise<number> {
  return (await page.evaluate("Number.parseFloat(getComputedStyle(document.body).fontSize)")) as number;
}

/** Lays a reader's own rules over the page, which its content security policy lets pass. */
export async function setReadersText(page: Page, css: string): Promise<void> {
  await page.evaluate(
    `(() => { const sheet = new CSSStyleSheet(); sheet.replaceSync(${JSON.stringify(css)}); document.adoptedStyleSheets = [sheet]; })()`,
  );
}

/** Texts cut off or labels that touch, at the width and in the medium the page has now. */
export function clipFaults(page: Page): Promise<string[]> {
  return inPage<string[]>(page, "clipped");
}
