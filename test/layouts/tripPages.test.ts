import { describe, expect, test } from "vitest";
import { areaFrame } from "../../scripts/briefing/pages/areaFrame.ts";
import { composePages } from "../../scripts/briefing/pages/composePages.ts";
import { partnerSheet } from "../../scripts/briefing/pages/partner/partnerSheet.ts";
import { CHECKLISTS } from "../../scripts/briefing/pages/safety/checklists.ts";
import type { AreaPack } from "../../scripts/briefing/pages/sheetParts.ts";
import { packedTrips } from "../../scripts/briefing/pages/trips/packedTrips.ts";
import { drawPages } from "../../scripts/drawing/drawPages.ts";
import { composed, loadDemo } from "../briefing/composedAreas.ts";
import { larchTripArea, tripCheck } from "../fixtures/packs/larchTrip.ts";
import { shared } from "../fixtures/packs/larchValley.ts";
import { renderPage } from "./renderTemplate.ts";

const TEMPLATES = {
  day: "day-sheet",
  intentions: "intentions",
  safety: "safety",
  partner: "partner",
  emergency: "emergency",
  siteCard: "site-card",
  area: "area",
} as const;
type Kind = keyof typeof TEMPLATES;

/** HTML of every page of a kind. */
function htmlOf(area: AreaPack, kind: Kind): string[] {
  const pages = drawPages(composePages([area], shared, {}));
  return (pages[kind] as object[]).map((sheet) => renderPage(TEMPLATES[kind], sheet));
}

/** Words of the main part as a reader meets them. */
function words(html: string): string {
  const main = /<main[\s\S]*<\/main>/.exec(html)?.[0] ?? "";
  return main
    .replace(/<svg[\s\S]*?<\/svg>/g, " ")
    .replace(/<[^>]+>/g, " ")
    .replaceAll("&#39;", "'")
    .replace(/\s+/g, " ");
}

const kinds = Object.keys(TEMPLATES) as Kind[];

describe("pages of checks and trip days", () => {
  test.each(kinds)("%s has no hole and links to the emergency page", (kind) => {
    for (const html of htmlOf(larchTripArea(), kind)) {
      expect(html).not.toMatch(/undefined|NaN|\[object|>null</);
      if (kind !== "emergency") expect(html).toContain("emergency.html");
    }
  });

  test("a tick box stands before each item of a list and before its end", () => {
    const [html] = htmlOf(larchTripArea(), "safety");
    const lists = /<div class="checklists">[\s\S]*?<div class="pen-boxes">/.exec(html!)![0];
    const items = CHECKLISTS.reduce((sum, list) => sum + list.items.length + 1, 0);
    expect(lists.match(/<svg class="checklist__box"/g)?.length).toBe(items);
    expect(lists.match(/List complete/g)?.length).toBe(CHECKLISTS.length);
  });

  test("no caution but tied on and hanging is told on more than two kinds of sheet", () => {
    const area = larchTripArea();
    const text = Object.fromEntries(kinds.map((kind) => [kind, htmlOf(area, kind).map(words).join(" ")]));
    for (const caution of shared.cautions) {
      const on = kinds.filter((kind) => text[kind]!.includes(caution.text));
      expect(on, caution.id).toContain("safety");
      if (caution.id !== "F1" && caution.id !== "F3") expect(on.length, caution.id).toBeLessThanOrEqual(2);
    }
  });

  test.each(["turnpail-hollow", "brackwether-range"])(
    "the partner briefing of %s reads in 5 minutes: at most 850 words",
    { timeout: 60_000 },
    async (id) => {
      const loaded = await loadDemo(id);
      const frame = areaFrame(composed(loaded), loaded.shared, {});
      const sheet = partnerSheet(frame, packedTrips(frame.area), loaded.shared);
      const html = renderPage("partner", { ...sheet, marks: "" });
      expect(
        words(html)
          .split(" ")
          .filter((word) => /\w/.test(word)).length,
      ).toBeLessThanOrEqual(850);
    },
  );

  test("the words of this program use none that promises or brags", () => {
    const banned = /\b(guaranteed|never fails|prime|peak|perfect|hot|score|optimal|dashboard)\b/i;
    for (const kind of kinds)
      for (const html of htmlOf(larchTripArea(), kind)) expect(words(html)).not.toMatch(banned);
  });

  test("the sentences of checks, briefing and steps have at most 22 words", () => {
    const pages = composePages([larchTripArea()], shared, {});
    const { shooting, tied, ground, times, air, refuse, askMe } = pages.partner[0]!;
    const texts = [
      ...CHECKLISTS.flatMap((list) => [
        list.note ?? "",
        ...list.items.map((row) => `${row.item}: ${row.state}`),
      ]),
      ...pages.emergency[0]!.doFirst,
      pages.emergency[0]!.helicopterRule,
      ...[shooting, tied, ground, times, air].flatMap((part) => part.rules),
      tied.carry,
      refuse,
      ...askMe,
      ...pages.intentions[0]!.steps,
      pages.safety[0]!.answer.core,
      pages.safety[0]!.exception ?? "",
    ];
    for (const sentence of texts.flatMap((text) => text.split(/(?<=[.?!])\s+/))) {
      expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(22);
    }
  });

  test("the slip to tear off hangs below a dashed line, with blanks where nothing was written", () => {
    const [html] = htmlOf(larchTripArea(), "intentions");
    const slip = html!.slice(html!.indexOf('class="tear-off"'));
    expect(slip).toContain("tear-off__line");
    expect(slip).toMatch(/<dt>Number to call<\/dt><dd><span class="pen">/);
    expect(slip).toContain("11:30");
  });

  test("the law comes first once on a day sheet, and usable light is never merged with legal light", () => {
    const [html] = htmlOf(larchTripArea(), "day");
    expect(words(html!).match(/Law, licence, landowner and maker's instructions come first/g)?.length).toBe(
      1,
    );
    expect(words(html!)).toMatch(/Legal hours 07:37 to 20:00/);
    expect(words(html!)).toMatch(/Usable light/);
    expect(words(html!)).toMatch(/Your own eyes decide\./);
  });

  test("a STOP stands in the page where the site would have stood", () => {
    const area = larchTripArea();
    for (const session of ["morning", "evening"]) {
      area.pack.trips![0]!.days[0]!.checks.push(
        tripCheck("C11", "STOP", "Thunder forecast: do not climb.", session),
      );
    }
    const text = words(htmlOf(area, "day")[0]!);
    expect(text).toContain("STOP: 3 Larch bench. Thunder forecast: do not climb.");
    expect(text).not.toMatch(/until about 09:15/);
    expect(text).not.toMatch(/leave for 3/);
  });

  test("without trips there is no day sheet, no intentions page and no link to one", () => {
    const area = larchTripArea();
    area.pack.trips = [];
    area.content.trips = [];
    expect(htmlOf(area, "day")).toEqual([]);
    expect(htmlOf(area, "intentions")).toEqual([]);
    for (const kind of ["area", "partner", "safety", "emergency"] as const) {
      expect(htmlOf(area, kind)[0]).not.toMatch(/href="[^"]*trips\//);
    }
  });
});
