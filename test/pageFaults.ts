import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Browser, openFromDisk } from "./browser.ts";

interface Seen {
  faults: string[];
  ids: string[];
  /** addresses of links, and of parts such as images and style sheets, as written */
  links: string[];
  parts: string[];
}

const LEAST_WIDTH_PX = 320;
const IN_PAGE = readFileSync(new URL("pageFaultsInPage.js", import.meta.url), "utf8")
  .trim()
  .replace(/;$/, "");

/**
 * Everything that is wrong with the pages of an output folder, each as "file: fault". Every .html file below the folder is
 * opened from disk without network on a screen of 320 px, with scripts off and on: requests that leave the folder, errors of
 * the browser, links and parts that lead nowhere (anchors too), elements wider than the screen (except inside `data-scroll`),
 * tables without caption, scope or content, and values that were never there, such as NaN.
 */
export async function pageFaults(browser: Browser, folder: string): Promise<string[]> {
  const files = htmlFiles(folder);
  if (files.length === 0) return [`${folder}: there are no pages`];
  const seen = new Map<string, Seen>();
  const faults: string[] = [];
  for (const scripts of [false, true]) {
    const disk = await openFromDisk(browser, { scripts, widthPx: LEAST_WIDTH_PX });
    for (const file of files) {
      await disk.show(file);
      if (!scripts) seen.set(file, (await disk.page.evaluate(IN_PAGE)) as Seen);
      const outside = disk.requests.filter((address) => !isInside(address, folder));
      const found = [...outside.map((address) => `asks for ${address}`), ...disk.errors];
      faults.push(...found.map((fault) => `${relative(folder, file)}: ${fault}`));
    }
    await disk.close();
  }
  for (const [file, { faults: own, links, parts }] of seen) {
    const lost = [
      ...links.flatMap((link) => lostLink(link, file, folder, seen)),
      ...parts.flatMap((part) => lostPart(part, file, folder)),
    ];
    faults.push(...[...own, ...lost].map((fault) => `${relative(folder, file)}: ${fault}`));
  }
  return [...new Set(faults)];
}

/** Every .html file below the folder, sorted. */
export function htmlFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".html"))
    .sort()
    .map((name) => join(folder, name));
}

function lostLink(link: string, file: string, folder: string, seen: Map<string, Seen>): string[] {
  const address = new URL(link, pathToFileURL(file));
  if (["http:", "https:", "tel:", "mailto:", "geo:"].includes(address.protocol)) return [];
  if (!isInside(address.href, folder)) return [`links out of the pack: ${link}`];
  const anchor = decodeURIComponent(address.hash.slice(1));
  const target = targetOf(address);
  if (!existsSync(target)) return [`links to a file that does not exist: ${link}`];
  if (!statSync(target).isFile()) return [`links to a folder instead of a file: ${link}`];
  if (anchor !== "" && seen.get(target)?.ids.includes(anchor) === false) {
    return [`links to a place that does not exist: ${link}`];
  }
  return [];
}

function lostPart(part: string, file: string, folder: string): string[] {
  const address = new URL(part, pathToFileURL(file));
  if (address.protocol === "data:") return [];
  if (!isInside(address.href, folder)) return [`takes a part from outside the pack: ${part}`];
  const target = targetOf(address);
  return existsSync(target) && statSync(target).isFile() ? [] : [`takes a part that does not exist: ${part}`];
}

function targetOf(address: URL): string {
  const plain = new URL(address);
  plain.hash = "";
  plain.search = "";
  return fileURLToPath(plain);
}

function isInside(address: string, folder: string): boolean {
  return address.startsWith("data:") || address.startsWith(`${pathToFileURL(folder).href}/`);
}
