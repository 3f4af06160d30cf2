import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

/** Least print sizes by role, points; the first selector that fits a text or what stands around it counts. */
const PRINT_ROLES = [
  { name: "a map label", selector: "svg[data-map]", leastPt: 7 },
  {
    name: "a source line",
    selector: ".first-aid__defers, .evidence, .ok-checks, .fine-checks, .tear-off__line",
    leastPt: 9,
  },
  {
    name: "safety text",
    selector: ".caution, .tied-on, .checklist, .first-aid, .pen-script, .demonstration",
    leastPt: 10,
  },
  { name: "a key figure", selector: ".four dd, .key-figure", leastPt: 14 },
  { name: "a table, chart or foot", selector: "table, svg, .facts, .running, footer", leastPt: 9 },
  { name: "body text", selector: "body", leastPt: 10 },
];

/**
 * Texts that print smaller than a reader can trust by a head lamp: 9 pt for tables, charts and the lines of the head and foot,
 * 10 for body and safety, 14 for key figures, 7 for labels of maps. Rows of label and value, verdicts in rows, pen boxes
 * and the notes of a wind table count as tables; lines of results that are OK as evidence.
 */
export async function fontSizeFaults(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: "print" });
  const faults = await inPage<string[]>(page, "fontSizes", PRINT_ROLES);
  await page.emulateMedia({ media: null });
  return faults.map((fault) => `prints ${fault}`);
}
