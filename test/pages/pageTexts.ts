import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

/** Texts of a page by block, and the rows of its schedules. */
export interface PageTexts {
  blocks: { kind: string; text: string }[];
  rows: { time: string; task: string }[];
}

/** What a page says, block by block, prose of the owner apart. */
export function pageTexts(page: Page): Promise<PageTexts> {
  return inPage<PageTexts>(page, "texts");
}

/**
 * The words of an owner in a content folder, longest first: every text of its JSON files with a capital or a space, and every
 * paragraph of its Markdown. They are the owner's own and stand outside the rules of wording.
 */
export function ownersWords(contentFolder: string): string[] {
  const found = new Set<string>();
  for (const name of readdirSync(contentFolder, { recursive: true, encoding: "utf8" })) {
    const path = join(contentFolder, name);
    if (/\.(json|geojson)$/.test(name)) {
      for (const text of textsIn(JSON.parse(readFileSync(path, "utf8")))) found.add(text);
    } else if (name.endsWith(".md")) {
      for (const part of readFileSync(path, "utf8").split(/\n\s*\n/))
        found.add(part.replace(/\s+/g, " ").trim());
    }
  }
  return [...found]
    .filter((text) => /[A-Z ]/.test(text) && text.length > 2)
    .sort((a, b) => b.length - a.length);
}

/** Texts of the fields named `source` anywhere in the shared data: titles of published works. */
export function citations(dataFolder: string): string[] {
  return readdirSync(dataFolder)
    .filter((name) => name.endsWith(".json"))
    .flatMap((name) => sourcesIn(JSON.parse(readFileSync(join(dataFolder, name), "utf8"))))
    .sort((a, b) => b.length - a.length);
}

function textsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (value === null || typeof value !== "object") return [];
  return Object.values(value).flatMap(textsIn);
}

function sourcesIn(value: unknown): string[] {
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === "source" && typeof inner === "string" ? [inner] : sourcesIn(inner),
  );
}
