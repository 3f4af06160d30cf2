import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

/**
 * Drawings that a reader who does not see them misses: no title of at most 12 words and description of at most 60, no
 * `role="img"`, or a drawn figure (the hours of an axis apart) that no text or table of the page repeats.
 */
export function chartFaults(page: Page): Promise<string[]> {
  return inPage<string[]>(page, "charts");
}
