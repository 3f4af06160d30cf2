import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { renderComponent } from "./renderTemplate.ts";

const folder = new URL("../../layouts/components/", import.meta.url);

/** Main macro of each component that has examples: the name of its folder in one word. */
const components = readdirSync(folder).flatMap((name) => {
  const file = new URL(`${name}/${name}.examples.json`, folder);
  const examples = JSON.parse(readFileSync(file, "utf8")) as Record<string, object>;
  const macro = name.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
  return Object.entries(examples).map(([example, params]) => ({ name, macro, example, params }));
});

/** Every text that the example gives, however deep. */
function texts(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (value === null || typeof value !== "object") return [];
  return Object.values(value).flatMap(texts);
}

const escaped = (text: string): string =>
  text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");

describe("every example of every component", () => {
  test("each component has examples", () => {
    expect(new Set(components.map((c) => c.name))).toEqual(new Set(readdirSync(folder)));
  });

  test.each(components)("$name: $example renders balanced HTML without holes", ({ name, macro, params }) => {
    const html = renderComponent(name, macro, params);
    expect(html.trim()).not.toBe("");
    expect(html).not.toMatch(/undefined|NaN|\[object|>null</);
    for (const tag of [
      "section",
      "table",
      "tr",
      "td",
      "th",
      "dl",
      "div",
      "ul",
      "li",
      "details",
      "svg",
      "span",
    ]) {
      const opened = html.match(new RegExp(`<${tag}[\\s>]`, "g"))?.length ?? 0;
      const closed = html.match(new RegExp(`</${tag}>`, "g"))?.length ?? 0;
      expect([tag, opened]).toEqual([tag, closed]);
    }
  });

  test.each(components.filter((c) => c.name !== "chart"))(
    "$name: $example shows every text it is given, escaped",
    ({ name, macro, params }) => {
      const html = renderComponent(name, macro, params).toLowerCase();
      const words = ["hidden", "shown", "warning", "note"]; // these choose a form and are not printed
      for (const text of texts(params).filter((t) => !words.includes(t))) {
        expect(html).toContain(escaped(text).toLowerCase());
      }
    },
  );

  test.each(components)(
    "$name: $example has a caption and scoped heads in each table, and no empty cell",
    ({ name, macro, params }) => {
      const html = renderComponent(name, macro, params);
      for (const table of html.match(/<table[\s\S]*?<\/table>/g) ?? []) {
        expect(table).toMatch(/<caption>\s*\S/);
        expect(table.match(/<th(?![^>]*scope=)[\s>]/g)).toBeNull();
        expect(table.match(/<t[dh][^>]*>\s*<\/t[dh]>/g)).toBeNull();
      }
    },
  );
});

describe("a missing value stops the build", () => {
  test.each([
    ["caution", "caution", { level: "warning", title: "Tree: STOP" }],
    ["checks", "checks", { caption: "Checks", rows: [{ title: "Tree", result: "STOP", pen: false }] }],
    ["sheet-foot", "sheetFoot", { page: "Page 1 of 2", pack: "Pack", edition: "Owner edition" }],
    [
      "legal",
      "legal",
      { legal: { window: "06:38 to 18:58", struck: false, mark: null }, source: "Law.", usable: "not known" },
    ],
  ])("%s", (name, macro, params) => {
    expect(() => renderComponent(name, macro, params)).toThrow(/null or undefined/);
  });
});

test("the verdict stands as a word beside its mark, or hidden where the cell is narrow", () => {
  const shown = renderComponent("verdict", "verdict", {
    verdict: "not assessed",
    word: "shown",
    localNote: false,
  });
  expect(shown).toContain('href="#mark-not-assessed"');
  expect(shown).toContain("Not assessed");
  expect(shown).not.toContain('class="hidden"');
  expect(
    renderComponent("verdict", "verdict", { verdict: "suits", word: "hidden", localNote: false }),
  ).toContain('<span class="hidden">Suits</span>');
});
