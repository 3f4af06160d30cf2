import { readFileSync } from "node:fs";
import { posix } from "node:path";
import { describe, expect, test } from "vitest";
import { composePages, type PackPages } from "../../scripts/briefing/pages/composePages.ts";
import { drawPages } from "../../scripts/drawing/drawPages.ts";
import { larchValley, shared } from "../fixtures/packs/larchValley.ts";
import { renderPage } from "./renderTemplate.ts";

const TEMPLATES: Record<string, string> = {
  index: "index",
  area: "area",
  windTable: "wind-table",
  slopeAir: "slope-air",
  siteCard: "site-card",
  almanac: "almanac",
  almanacMonth: "almanac-month",
  method: "method",
  day: "day-sheet",
  intentions: "intentions",
  safety: "safety",
  partner: "partner",
  emergency: "emergency",
};

function render(pages: Partial<PackPages>): { permalink: string; html: string }[] {
  return Object.entries(drawPages(pages as Record<string, { permalink: string }[]>)).flatMap(([kind, list]) =>
    (list ?? []).flatMap((sheet) => {
      const template = TEMPLATES[kind];
      return template === undefined
        ? []
        : [{ permalink: sheet.permalink, html: renderPage(template, sheet) }];
    }),
  );
}

const html = render(composePages([larchValley()], shared, {}));
const page = (end: string): string => html.find((p) => p.permalink.endsWith(end))?.html ?? "";
const visible = (text: string): string =>
  text
    .replace(/<head[\s\S]*?<\/head>/g, "")
    .replace(/<(?:title|desc)[^>]*>[^<]*<\/(?:title|desc)>/g, "")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ");

describe("every page", () => {
  test("23 pages of the area and the cover are written", () => {
    expect(html.length).toBe(24);
  });

  test.each(html)(
    "$permalink has one h1, a language, landmarks, a skip link and the strict policy",
    ({ html: text }) => {
      expect(text.match(/<h1[\s>]/g)?.length).toBe(1);
      expect(text).toMatch(/<html lang="en-NZ">/);
      for (const landmark of ["<main ", "<header ", "<footer "]) expect(text).toContain(landmark);
      expect(text).toContain('href="#content"');
      expect(text).toContain("default-src 'none'; style-src 'self'");
      // the pack's own script alone, as a file: no page needs it
      expect(text.match(/<script\b[^>]*>/g)?.map((tag) => tag.replace(/(?:\.\.\/)+/, ""))).toEqual([
        '<script src="assets/leelight.js" defer>',
      ]);
      expect(text).not.toMatch(/\sstyle="|<style|\son\w+=/);
    },
  );

  test.each(html)(
    "$permalink asks for nothing outside the pack and links only to pages that are there",
    ({ permalink, html: text }) => {
      expect(text).not.toMatch(/(?:href|src)="(?:https?:)?\/\//);
      const written = new Set([...html.map((p) => p.permalink), "assets/leelight.css"]);
      const ids = new Set([...text.matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]));
      for (const [, href] of text.matchAll(/href="([^"]+)"/g)) {
        if (href === "data:,") continue; // no picture for the tab: a browser asks the host for none
        if (href!.startsWith("#")) expect(ids).toContain(href!.slice(1));
        else expect(written).toContain(posix.normalize(posix.join(posix.dirname(permalink), href!)));
      }
    },
  );

  test.each(html)(
    "$permalink has captions, scoped heads, no empty cell and ids that stand once",
    ({ html: text }) => {
      for (const table of text.match(/<table[\s\S]*?<\/table>/g) ?? []) {
        expect(table).toMatch(/<caption>\s*\S/);
        expect(table.match(/<th(?![^>]*scope=)[\s>]/g)).toBeNull();
        expect(table.match(/<t[dh][^>]*>\s*<\/t[dh]>/g)).toBeNull();
      }
      const ids = [...text.matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]);
      expect(new Set(ids).size).toBe(ids.length);
    },
  );

  test.each(html)("$permalink prints no hole in its words", ({ html: text }) => {
    expect(visible(text)).not.toMatch(/undefined|NaN|\[object|\bnull\b/);
    expect(visible(text)).not.toMatch(/\b(guaranteed|never fails|prime|peak|perfect|hot|score)\b/i);
  });

  test.each(html)(
    "$permalink says that the area is a demonstration, and stands in its pack",
    ({ html: text }) => {
      expect(visible(text)).toContain(
        "Demonstration area. The place, the rules and the contacts are invented.",
      );
      expect(visible(text)).toMatch(/Page \d+ of 23|Cover/);
      expect(visible(text)).toContain("Not valid after 5 Apr 2026");
      expect(visible(text)).toContain("Pack built 30 Mar 2026 20:00, leelight 0.1.0");
      expect(visible(text)).toContain("Checked by");
    },
  );

  test("an area that is no demonstration does not say so", () => {
    const area = larchValley();
    delete (area.content.facts as { demonstration?: boolean }).demonstration;
    for (const { html: text } of render(composePages([area], shared, {})))
      expect(text).not.toContain("Demonstration");
  });

  test("what an owner writes is printed as text, never as tags", () => {
    const area = larchValley();
    area.content.facts.summary = '<img src="x"> {{ 7 * 7 }}';
    const [, areaPage] = render(composePages([area], shared, {}));
    expect(areaPage?.html).toContain("&lt;img src=&quot;x&quot;&gt; {{ 7 * 7 }}");
  });
});

describe("the site card", () => {
  test("tells in its first 60 words which way not to shoot, and that one is tied on", () => {
    const words = visible(page("larch-bench.html"));
    expect(words).toContain("Do not shoot 040 to 085 (road at 180 m).");
    expect(words).toContain("Tied on from ground to ground");
    expect(words.indexOf("Do not shoot")).toBeLessThan(words.indexOf("Wind from"));
  });

  test("holds 17 winds of two sessions, a mark and a word each", () => {
    const tables = page("larch-bench.html").match(/<table class="winds">[\s\S]*?<\/table>/g) ?? [];
    expect(tables.length).toBe(2);
    expect(tables.join("").match(/<use href="#mark-/g)?.length).toBe(34);
    expect(visible(tables[1]!)).toMatch(/Calm\s+Not assessed\s+Marginal/);
  });

  test("keeps legal, usable and your own eyes on three lines", () => {
    const words = visible(page("larch-bench.html"));
    expect(words).toMatch(/Legal 06:3\d to 20:2\d/);
    expect(words).toContain("Usable about 07:55 to about 19:30");
    expect(words).toContain("Your own eyes decide.");
  });

  test("never offers a site under a STOP: answer, warning and table say it", () => {
    const words = visible(page("dead-spruce.html"));
    expect(words).toContain("STOP: do not sit here. Warning: Tree: STOP Dead limb overhead.");
    expect(words).toContain("The table holds only once that is put right.");
    expect(words).not.toMatch(/Suits light wind|Sits that suit/);
  });

  test("never offers a site on ground without permission", () => {
    const words = visible(page("west-spur.html"));
    expect(words).toContain("No permission: do not sit here.");
    expect(words).toContain("ask the west farm before you go");
    expect(words).not.toMatch(/Suits light wind|Sits that suit/);
  });

  test("says why there is no slope air, and draws light alone", () => {
    expect(visible(page("west-spur.html"))).toContain("Slope air: no slope was entered");
    expect(page("west-spur.html")).not.toContain(">Air<");
  });
});

describe("the wind table", () => {
  test("a barred site has its word in every row and no verdict", () => {
    const matrix = page("wind-table.html").match(/<table class="matrix">[\s\S]*?<\/table>/)?.[0] ?? "";
    expect(matrix.match(/>STOP</g)?.length).toBe(17);
    expect(matrix.match(/>ask</g)?.length).toBe(17);
    expect(matrix.match(/<use href="#mark-/g)?.length).toBe(34);
  });

  test("is headed by the gaps in words", () => {
    expect(visible(page("wind-table.html"))).toContain("No site suits: morning from S to SW.");
  });

  test("can be read by wind without the matrix: 17 entries a strength, barred sites apart", () => {
    const entries = page("wind-table.html").match(/<details[\s\S]*?<\/details>/g) ?? [];
    expect(entries.length).toBe(34);
    for (const entry of entries) {
      expect(visible(entry)).toContain("Do not sit : 5 West spur &amp; gully, 8 Dead spruce");
      expect(visible(entry).split("Do not sit")[0]).not.toContain("Dead spruce");
    }
  });
});

describe("the other pages", () => {
  test("the area page strikes lapsed permission and marks old facts", () => {
    expect(page("larch-valley/index.html")).toContain(
      "<s>landholder, the west farm, 1 Jan 2025 to 31 Jan 2026</s>",
    );
    expect(visible(page("larch-valley/index.html"))).toContain(
      "Legal hours, Invented public forest: last checked 20 Feb 2024.",
    );
    expect(visible(page("larch-valley/index.html"))).toContain("Number to call not entered:");
    expect(visible(page("larch-valley/index.html"))).toContain(
      "Haul line site 3 Larch bench No haul line length was entered.",
    );
  });

  test("the almanac has every day of the year, and marks both changes of the clocks", () => {
    const months = html.filter((p) => /almanac-\d\d\.html$/.test(p.permalink));
    const rows = months.flatMap((m) => m.html.match(/<tr(?: class="heavy")?><th scope="row">/g) ?? []);
    expect(rows.length).toBe(365);
    expect(visible(page("almanac-04.html"))).toContain(
      "Clocks go back on 5 Apr at 03:00 to 02:00, then UTC+12",
    );
    expect(visible(page("almanac-09.html"))).toContain(
      "Clocks go forward on 27 Sep at 02:00 to 03:00, then UTC+13",
    );
    expect(visible(page("almanac.html"))).toContain("Clocks change twice: Sun 5 Apr and Sun 27 Sep.");
  });

  test("the key says what comes first, what is not known, and every constant of the model", () => {
    const words = visible(page("method.html"));
    expect(words).toContain(
      "Law, licence, landowner and maker&#39;s instructions come first. Look, and believe what you see.",
    );
    expect(words).toContain("A deer may still smell one gust.");
    for (const row of shared.model) expect(words).toContain(row.id);
  });

  test("the slope-air page frames the row of the table date", () => {
    expect(page("slope-air.html").match(/<tr class="framed">/g)?.length).toBe(2); // sites 3 and 8; site 5 has no slope
  });
});

test("each template takes one kind of page and writes where the page says", () => {
  for (const [kind, template] of Object.entries(TEMPLATES)) {
    const source = readFileSync(new URL(`../../layouts/pages/${template}.njk`, import.meta.url), "utf8");
    expect(source).toMatch(
      new RegExp(
        `^---\\npagination:\\n  data: pages.${kind}\\n  size: 1\\n  alias: sheet\\npermalink: "{{ sheet.permalink }}"\\n---\\n`,
      ),
    );
    for (const [line] of source.matchAll(/.*\| safe.*/g)) expect(line).toMatch(/section\.html/);
  }
});
