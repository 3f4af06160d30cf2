import { relative } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "../browser.ts";

export interface Screen {
  widthPx: number;
  heightPx?: number;
  scale?: number;
}

const AT_ONCE = 2;

/**
 * Shows files of a pack from disk without network, two at a time, and gathers what is said of each as "file: fault", in the
 * order of the files.
 */
export async function overPages(
  browser: Browser,
  folder: string,
  files: readonly string[],
  screen: Screen,
  faultsOf: (page: Page, file: string) => Promise<string[]>,
): Promise<string[]> {
  if (files.length === 0) return [`${folder}: there are no pages`];
  const found = new Map<string, string[]>();
  const waiting = [...files];
  const visitor = async (): Promise<void> => {
    const context = await browser.newContext({
      viewport: { width: screen.widthPx, height: screen.heightPx ?? 844 },
      deviceScaleFactor: screen.scale ?? 1,
      offline: true,
      locale: "en-GB",
      timezoneId: "UTC",
      reducedMotion: "reduce",
    });
    const page = await context.newPage();
    for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
      await page.emulateMedia({ media: null, colorScheme: "light" });
      await page.goto(pathToFileURL(file).href, { waitUntil: "load" });
      await page.evaluate("document.fonts.ready.then(() => true)");
      found.set(file, await faultsOf(page, file));
    }
    await context.close();
  };
  await Promise.all(Array.from({ length: AT_ONCE }, visitor));
  return files.flatMap((file) =>
    (found.get(file) ?? ["was not shown"]).map((fault) => `${relative(folder, file)}: ${fault}`),
  );
}

/** The first file of each page type in each area: names of sites, trips, days and months stand for their type. */
export function oneOfEachType(folder: string, files: readonly string[]): string[] {
  return firstBy(files, (file) => {
    const path = relative(folder, file);
    return `${path.split("/")[1] ?? ""} ${pageType(path)}`;
  });
}

/** The first file of each page type, whatever the area. */
export function oneOfAllTypes(folder: string, files: readonly string[]): string[] {
  return firstBy(files, (file) => pageType(relative(folder, file)));
}

function firstBy(files: readonly string[], keyOf: (file: string) => string): string[] {
  const first = new Map<string, string>();
  for (const file of files) if (!first.has(keyOf(file))) first.set(keyOf(file), file);
  return [...first.values()];
}

/** What kind of page a file is, by its path below the pack. */
export function pageType(path: string): string {
  return path
    .replace(/^areas\/[^/]+\//, "area/")
    .replace(/sites\/[^/]+\.html$/, "site-card")
    .replace(/trips\/[^/]+\/(?:day-[\d-]+)\.html$/, "day-sheet")
    .replace(/trips\/[^/]+\//, "trip/")
    .replace(/almanac-\d\d\.html$/, "almanac-month");
}
