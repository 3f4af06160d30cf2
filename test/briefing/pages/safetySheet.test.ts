import { describe, expect, test } from "vitest";
import { composePages } from "../../../scripts/briefing/pages/composePages.ts";
import { cautionGroups, cautionText } from "../../../scripts/briefing/pages/safety/cautionGroups.ts";
import { CHECKLISTS } from "../../../scripts/briefing/pages/safety/checklists.ts";
import { larchTripArea } from "../../fixtures/packs/larchTrip.ts";
import { larchValley, shared } from "../../fixtures/packs/larchValley.ts";

const listNamed = (title: string): string[] =>
  CHECKLISTS.find((list) => list.title === title)!.items.map((row) => `${row.item}: ${row.state}`);

describe("the checklists", () => {
  test.each(CHECKLISTS)("$title has at most 9 items, each with the state it must be in", ({ items }) => {
    expect(items.length).toBeGreaterThan(0);
    expect(items.length).toBeLessThanOrEqual(9);
    for (const { item, state } of items) {
      expect(item).not.toBe("");
      expect(state).not.toBe("");
      expect(state).not.toMatch(/^(checked|ok|done)$/i);
    }
  });

  // hunter-education study guides of Missouri, Montana and Washington, order of hauling
  test("the weapon is made safe before it is tied, hauled only by a tied-in hunter, and the bore is seen before loading", () => {
    const haul = listNamed("Haul the weapon");
    const at = (word: RegExp): number => haul.findIndex((line) => word.test(line));
    const order = [
      /unloaded/,
      /open/,
      /covered/,
      /muzzle down/,
      /not tied to you/,
      /tied in before you haul/,
      /looked through/,
      /^Load/,
    ].map(at);
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  test("the harness stands first before the climb, and the feet touch the ground before the strap comes off", () => {
    expect(listNamed("Before the climb: you")[0]).toMatch(/^Harness: full body/);
    expect(listNamed("Down").join("\n")).toMatch(/Feet: on the ground before you unclip/);
    expect(listNamed("Down")[0]).toMatch(/unloaded/);
  });
});

describe("the caution catalogue", () => {
  test("stands by severity, then id as a number", () => {
    const caution = (id: string, severity: "S1" | "S2") => ({
      id,
      severity,
      title: id,
      text: id,
      defersTo: "you",
    });
    const groups = cautionGroups([
      caution("E10", "S1"),
      caution("E2", "S2"),
      caution("E9", "S1"),
      caution("F1", "S1"),
    ]);
    expect(groups.map((group) => group.rows.map((row) => row.id))).toEqual([["E9", "E10", "F1"], ["E2"]]);
  });

  test("drops none, and each says who decides", () => {
    const rows = cautionGroups(shared.cautions).flatMap((group) => group.rows);
    expect(rows.length).toBe(shared.cautions.length);
    expect(rows.every((row) => row.defersTo !== "")).toBe(true);
  });

  test("a caution that a page needs and that is not there stops the build", () => {
    expect(() => cautionText([], "F1")).toThrow(/no caution F1/);
  });
});

describe("the safety sheet", () => {
  test("unknown dates of a harness are blanks, known ones stand there once for each hunter", () => {
    const [safety] = composePages([larchTripArea()], shared, {}).safety;
    expect(safety?.harness).toEqual([
      { hunter: "Ann", madeOn: "2024-01", replaceBy: "2029-01", fallen: "no" },
      { hunter: "Bo", madeOn: null, replaceBy: null, fallen: null },
    ]);
  });

  test("a permit's reference is for the owner alone", () => {
    const area = larchValley();
    area.content.facts.permission[0]!.reference = "LV-77";
    expect(composePages([area], shared, {}).safety[0]?.permits[0]?.reference).toBe("LV-77");
    area.pack.edition = "member";
    expect(composePages([area], shared, {}).safety[0]?.permits[0]?.reference).toBeNull();
  });

  test("a rule for following up that nobody entered is NOT CONFIRMED", () => {
    const area = larchValley();
    delete area.content.facts.followUpRule;
    const rule = composePages([area], shared, {}).safety[0]?.rules.find(
      (row) => row.label === "Following up",
    );
    expect(rule?.value).toBe("NOT CONFIRMED");
  });
});
