import { describe, expect, test } from "vitest";
import { composePages } from "../../../scripts/briefing/pages/composePages.ts";
import { newcomerSites } from "../../../scripts/briefing/pages/partner/newcomerSites.ts";
import type { AreaPack } from "../../../scripts/briefing/pages/sheetParts.ts";
import { larchTripArea } from "../../fixtures/packs/larchTrip.ts";
import { larchValley, shared } from "../../fixtures/packs/larchValley.ts";

/** Site 3 as a first tree: low, near, dry, all checked. */
function easyLarch(): AreaPack {
  const area = larchValley();
  const site = area.pack.sites![0]!;
  site.checks = site.checks.map((check) => ({ ...check, result: "OK" }));
  site.walkIns[0]!.minutes = [20, 40];
  site.walkIns[0]!.crossings = 0;
  area.content.sites[0]!.facts.platformHeightM = 4.5;
  return area;
}

const against = (area: AreaPack): string[] => newcomerSites(area, shared)[0]!.against;

describe("a newcomer's first tree", () => {
  test("at 40 min and 4.5 m fits, one more is too much", () => {
    expect(against(easyLarch())).toEqual([]);
    const far = easyLarch();
    far.pack.sites![0]!.walkIns[0]!.minutes = [20, 41];
    expect(against(far)).toEqual(["long walk"]);
    const high = easyLarch();
    high.content.sites[0]!.facts.platformHeightM = 4.6;
    expect(against(high)).toEqual(["platform 4.6 m"]);
  });

  test("has no water on the way, and an unknown crossing is no dry one", () => {
    const wet = easyLarch();
    wet.pack.sites![0]!.walkIns[0]!.crossings = 1;
    expect(against(wet)).toEqual(["water to cross"]);
    wet.pack.sites![0]!.walkIns[0]!.crossings = null;
    expect(against(wet)).toEqual(["crossings NOT CHECKED"]);
  });

  test.each(["STOP", "NOT CHECKED"] as const)("has no %s about its tree", (result) => {
    const area = easyLarch();
    area.pack.sites![0]!.checks.find((check) => check.id === "C23")!.result = result;
    expect(against(area)).toEqual([result === "STOP" ? "STOP" : "tree NOT CHECKED"]);
  });

  test("has a stand that is known to fit", () => {
    const area = easyLarch();
    area.pack.sites![0]!.checks.find((check) => check.id === "C5")!.result = "NOT CHECKED";
    expect(against(area)).toEqual(["no stand is known to fit"]);
  });

  test("without a timed walk or a permission is none", () => {
    const area = easyLarch();
    area.pack.sites![0]!.walkIns = [];
    expect(against(area)).toEqual(["walk not known"]);
    expect(newcomerSites(area, shared)[1]!.against).toContain("no permission");
  });
});

describe("the partner briefing", () => {
  test("has five parts in the order of what can kill, intent first in one sentence", () => {
    const [sheet] = composePages([larchTripArea()], shared, {}).partner;
    expect(sheet?.answer.core.match(/\./g)?.length).toBe(1);
    const titles = [sheet!.shooting, sheet!.tied, sheet!.ground, sheet!.times, sheet!.air].map(
      (part) => part.title,
    );
    expect(titles).toEqual([
      "1. How we do not shoot each other",
      "2. Tied on, and what you carry",
      "3. Where you are, the way out, whom to call",
      "4. Times, and who decides",
      "5. Wind, and only then the deer",
    ]);
  });

  test("leads to every day sheet and to the trip intentions", () => {
    const [sheet] = composePages([larchTripArea()], shared, {}).partner;
    expect(sheet?.times.trips[0]?.links.map((link) => link.href)).toEqual([
      "trips/april/day-2026-04-04.html",
      "trips/april/day-2026-04-05.html",
      "trips/april/intentions.html",
    ]);
  });

  test("offers a newcomer no site that anything speaks against", () => {
    expect(composePages([larchValley()], shared, {}).partner[0]?.air.fits).toEqual([]);
    expect(composePages([easyLarch()], shared, {}).partner[0]?.air.fits.map((site) => site.name)).toEqual([
      "3 Larch bench",
    ]);
  });
});
