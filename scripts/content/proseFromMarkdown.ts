import markdownIt from "markdown-it";
import type { Prose } from "./areaContent.ts";
import { slug } from "./slug.ts";

/** A link or image as written, with the line of its paragraph, from 1. */
export interface ProseReference {
  target: string;
  line: number;
}

export interface ProseImage extends ProseReference {
  alt: string;
}

export interface ReadProse {
  prose: Prose;
  /** Targets as written, "#air" included. */
  links: ProseReference[];
  images: ProseImage[];
  /** Names that "#name" links of this text may use, one a heading. */
  anchors: string[];
}

/** Ids of sections start so, and meet no id of a page. */
export const PROSE_ID_PREFIX = "prose-";

/**
 * Prose as HTML without any raw HTML: tags of the author appear as text, addresses are not turned into links, links that
 * could run a program stay text, images from the network are left out (their words stay). Every heading starts a section;
 * ids of sections start with "prose-" so that they meet no id of a page, and "#..." links are turned with them.
 *
 * @param hrefOf the address in the pack for a relative link of the author, such as "sites/bench.md"
 */
export function proseFromMarkdown(text: string, hrefOf: (target: string) => string): ReadProse {
  const parser = markdownIt({ html: false, linkify: false, typographer: false });
  const tokens = parser.parse(text.startsWith("\ufeff") ? text.slice(1) : text, {});
  const read: ReadProse = { prose: { sections: [] }, links: [], images: [], anchors: [] };
  for (const token of tokens) {
    if (token.type !== "inline") continue;
    rewriteInline(token, (token.map?.[0] ?? 0) + 1, read, hrefOf);
  }
  let body: typeof tokens = [];
  let heading: string | null = null;
  const finish = (): void => {
    const html = parser.renderer.render(body, parser.options, {}).trim();
    if (heading !== null || html !== "") {
      const id = freeId(heading, read.anchors);
      if (heading !== null) read.anchors.push(id);
      read.prose.sections.push({ id: PROSE_ID_PREFIX + id, heading, html });
    }
    body = [];
  };
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    if (token.type === "heading_open" && token.level === 0) {
      finish();
      heading = plainText(tokens[i + 1]!);
      i += 2;
    } else {
      body.push(token);
    }
  }
  finish();
  return read;
}

type Token = ReturnType<ReturnType<typeof markdownIt>["parse"]>[number];

function rewriteInline(
  inline: Token,
  line: number,
  read: ReadProse,
  hrefOf: (target: string) => string,
): void {
  const children = inline.children ?? [];
  for (const child of children) {
    if (child.type === "link_open") {
      const target = String(child.attrGet("href") ?? "");
      read.links.push({ target: decoded(target), line });
      child.attrSet(
        "href",
        target.startsWith("#") ? `#${PROSE_ID_PREFIX}${target.slice(1)}` : hrefOf(target),
      );
    }
  }
  inline.children = children.map((child) => {
    if (child.type !== "image") return child;
    const target = decoded(String(child.attrGet("src") ?? ""));
    const alt = plainText(child);
    read.images.push({ target, alt, line });
    return isRemote(target) ? asText(child, alt) : child;
  });
}

function asText(image: Token, text: string): Token {
  image.type = "text";
  image.content = text;
  image.children = null;
  return image;
}

/** Whether a target names a place outside the folder of the area by a scheme or a host. */
export function isRemote(target: string): boolean {
  return /^([a-z][a-z0-9+.-]*:|\/\/)/i.test(target);
}

function decoded(target: string): string {
  try {
    return decodeURIComponent(target);
  } catch {
    return target;
  }
}

function plainText(inline: Token): string {
  if (!inline.children) return inline.content;
  return inline.children
    .map((child) => {
      if (child.type === "softbreak" || child.type === "hardbreak") return " ";
      return child.type === "image" ? plainText(child) : child.content;
    })
    .join("");
}

function freeId(heading: string | null, taken: readonly string[]): string {
  const base = (heading === null ? "start" : slug(heading)) ?? "section";
  let id = base;
  for (let n = 2; taken.includes(id); n++) id = `${base}-${n}`;
  return id;
}
