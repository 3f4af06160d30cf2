import { readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Page } from "../browser.ts";

const MOST_ELEMENTS = 2500;
const MOST_BYTES = 300_000;

/** A page of more elements than a small phone holds with ease. */
export async function elementFaults(page: Page): Promise<string[]> {
  const count = (await page.evaluate("document.querySelectorAll('*').length")) as number;
  return count <= MOST_ELEMENTS ? [] : [`has ${count} elements, at most ${MOST_ELEMENTS}`];
}

/** The first page of a pack, when it weighs 300 kB or more with its style, fonts, scripts and pictures. */
export function firstPageFaults(folder: string): string[] {
  const file = join(folder, "index.html");
  const html = readFileSync(file, "utf8");
  const parts = [...html.matchAll(/<(?:link|script|img)\b[^>]*?\s(?:href|src)="([^"#]+)"/g)].map(
    ([, part]) => part!,
  );
  const files = parts.filter((part) => !part.startsWith("data:")).map((part) => join(dirname(file), part));
  const styles = files.filter((path) => path.endsWith(".css"));
  const fonts = styles.flatMap((path) =>
    [...readFileSync(path, "utf8").matchAll(/url\(["']?([^"')]+)["']?\)/g)]
      .map(([, part]) => part!)
      .filter((part) => !part.startsWith("data:") && !part.startsWith("#"))
      .map((part) => join(dirname(path), part)),
  );
  const bytes = [file, ...new Set([...files, ...fonts])].reduce((sum, path) => sum + statSync(path).size, 0);
  return bytes < MOST_BYTES ? [] : [`index.html: weighs ${bytes} bytes with its parts, under ${MOST_BYTES}`];
}
