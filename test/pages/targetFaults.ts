import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

/** Links and switches under 44 x 44 px or less than 8 px apart on a small phone; links inside a sentence apart. */
export async function targetFaults(page: Page, widthPx = 390): Promise<string[]> {
  const before = page.viewportSize() ?? { width: widthPx, height: 844 };
  await page.setViewportSize({ width: widthPx, height: 844 });
  const faults = await inPage<string[]>(page, "targets", { leastPx: 44, apartPx: 8 });
  await page.setViewportSize(before);
  return faults;
}
