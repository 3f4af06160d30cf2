import { describe, expect, test } from "vitest";
import { TREE_TICKS } from "../../scripts/content/schema/siteSchema.ts";
import { destination } from "../../scripts/geo/geodesic.ts";
import { parseGridText } from "../../scripts/geo/mgrs.ts";
import { contactGaps } from "../../scripts/safety/contactGaps.ts";
import { fireBan } from "../../scripts/safety/fireBan.ts";
import { hunterChecks } from "../../scripts/safety/hunterChecks.ts";
import { orderChecks } from "../../scripts/safety/orderChecks.ts";
import { positionFormats } from "../../scripts/safety/positionFormats.ts";
import { type SiteCheckFacts, siteChecks, siteStop } from "../../scripts/safety/siteChecks.ts";
import { standDates } from "../../scripts/safety/standDates.ts";
import { type TreeCondition, treeTicks } from "../../scripts/safety/treeTicks.ts";
import { condition, limits, stand } from "./limits.ts";

describe("C22, a stand left on a site", () => {
  const left = {
    labelled: true as boolean | null,
    placedOn: "2026-10-01" as string | null,
    removeBy: "2026-12-05" as string | null,
  };
  const rules = { from: "2026-09-15", removeBy: "2026-12-10", labelRequired: true };
  const dates = (
    onDate: string,
    other: Partial<typeof left> = {},
    standRules: Parameters<typeof standDates>[0]["standRules"] = rules,
  ) => standDates({ subject: "s", stand: { ...left, ...other }, standRules, onDate });

  test.each([
    { onDate: "2026-09-14", result: "STOP" },
    { onDate: "2026-10-01", result: "OK" },
    { onDate: "2026-12-05", result: "OK" },
    { onDate: "2026-12-06", result: "STOP" },
  ])("on $onDate it is $result", ({ onDate, result }) => expect(dates(onDate).result).toBe(result));

  test("the rule's own last day holds when the owner's is later", () => {
    expect(dates("2026-12-10", { removeBy: "2027-01-31" }).result).toBe("OK");
    expect(dates("2026-12-11", { removeBy: "2027-01-31" })).toMatchObject({
      result: "STOP",
      text: "Stand was to be gone by 2026-12-10.",
    });
  });

  test("placed before it was allowed, or without a label that is asked for, is a stop", () => {
    expect(dates("2026-11-01", { placedOn: "2026-09-14" }).result).toBe("STOP");
    expect(dates("2026-11-01", { placedOn: "2026-09-15" }).result).toBe("OK");
    expect(dates("2026-11-01", { labelled: false }).text).toBe("Stand has no label.");
    expect(dates("2026-11-01", { labelled: false }, { ...rules, labelRequired: false }).result).toBe("OK");
  });

  test("no rules entered, or an open date, is not checked", () => {
    expect(dates("2026-11-01", {}, null).result).toBe("NOT CHECKED");
    expect(dates("2026-11-01", { placedOn: null })).toMatchObject({
      result: "NOT CHECKED",
      text: "Stand dates not checked: placed on not entered.",
    });
  });
});

describe("C23, the list of the tree", () => {
  const ticks = (parts: Partial<TreeCondition> = {}, onDate = "2026-11-06") =>
    treeTicks({ subject: "s", condition: { ...condition, ...parts }, onDate }, limits);

  test("ten clear answers on a dated list are OK", () => {
    expect(ticks()).toMatchObject({ result: "OK", text: "Tree: ten answers clear on 2026-03-01." });
  });

  test.each([...TREE_TICKS])("a fault in %s is a stop, even on an old, half filled list", (tick) => {
    expect(ticks({ [tick]: "fault" }).result).toBe("STOP");
    expect(ticks({ [tick]: "fault", leanDeg: null, checkedOn: "2020-01-01", checkedBy: null }).result).toBe(
      "STOP",
    );
  });

  test.each([...TREE_TICKS])("an open answer to %s is not checked", (tick) =>
    expect(ticks({ [tick]: null }).result).toBe("NOT CHECKED"),
  );

  test.each([
    { leanDeg: 5, result: "OK" },
    { leanDeg: 5.1, result: "CAUTION" },
    { leanDeg: 10, result: "CAUTION" },
    { leanDeg: 10.1, result: "STOP" },
    { leanDeg: null, result: "NOT CHECKED" },
  ])("a lean of $leanDeg degrees is $result", ({ leanDeg, result }) =>
    expect(ticks({ leanDeg }).result).toBe(result),
  );

  test("a list of 12 months ago holds, a day older is not checked", () => {
    expect(ticks({}, "2027-03-01").result).toBe("OK");
    expect(ticks({}, "2027-03-02")).toMatchObject({
      result: "NOT CHECKED",
      text: "Tree last looked at on 2026-03-01, over 12 months before.",
    });
  });

  test("a list without a date, a looker or from after the day is not checked", () => {
    expect(ticks({ checkedOn: null }).result).toBe("NOT CHECKED");
    expect(ticks({ checkedBy: null }).text).toBe("Tree list incomplete: who looked not entered.");
    expect(ticks({ checkedOn: "2026-11-07" }).result).toBe("NOT CHECKED");
    expect(treeTicks({ subject: "s", condition: null, onDate: "2026-11-06" }, limits).result).toBe(
      "NOT CHECKED",
    );
  });

  test("many faults are named up to three", () => {
    expect(ticks({ dead: "fault", hollow: "fault", fungus: "fault", roots: "fault" }).text).toBe(
      "Tree: dead or dying, hollow or cracked and fungus and more.",
    );
  });
});

describe("C25, position and grid", () => {
  const grid = "59G LL 15993 11006";
  const place = parseGridText(grid);
  test.each([
    { apartM: 0, result: "OK" },
    { apartM: 9.9, result: "OK" },
    { apartM: 10.1, result: "STOP" },
  ])("$apartM m apart is $result", ({ apartM, result }) => {
    const position = destination(place, 70, apartM);
    expect(positionFormats({ subject: "s", position, grid }, limits).result).toBe(result);
  });

  test("a grid on a neighbouring square is far apart", () => {
    const check = positionFormats({ subject: "s", position: place, grid: "59G LL 25993 11006" }, limits);
    expect(check).toMatchObject({ result: "STOP", inputs: { grid: "59G LL 25993 11006" } });
    expect(Number(check.inputs.apartM)).toBeGreaterThan(9900);
  });

  test("no reading, or one that can not be read, is not checked", () => {
    const check = positionFormats({ subject: "s", position: place, grid: null }, limits);
    expect(check).toMatchObject({
      result: "NOT CHECKED",
      text: `No grid reading from the field; the position works out to ${grid}.`,
    });
    expect(positionFormats({ subject: "s", position: place, grid: "somewhere" }, limits).result).toBe(
      "NOT CHECKED",
    );
    expect(positionFormats({ subject: "s", position: { lat: 88, lon: 0 }, grid: null }, limits).result).toBe(
      "NOT CHECKED",
    );
  });
});

test("C18: a blank way to be reached is not checked and named", () => {
  const gaps = (notes: Record<string, string | null>) => contactGaps({ subject: "s", notes });
  expect(gaps({ "phone coverage": "ridge only", radio: null })).toMatchObject({
    result: "NOT CHECKED",
    text: "Not entered: radio.",
  });
  expect(gaps({ "phone coverage": "ridge only", radio: " " }).result).toBe("NOT CHECKED");
  expect(gaps({ "phone coverage": "ridge only", radio: "channel 5" }).result).toBe("OK");
  expect(gaps({}).result).toBe("NOT CHECKED");
});

test("C28: a fire ban not asked about keeps its blank", () => {
  const ban = (isBanned: boolean | null) => fireBan({ subject: "area", isBanned }).result;
  expect([true, false, null].map(ban)).toEqual(["CAUTION", "OK", "NOT CHECKED"]);
});

describe("order of checks", () => {
  test("stop, caution, not checked, ok; then severity, number, subject", () => {
    const row = (id: string, result: "OK" | "CAUTION" | "STOP" | "NOT CHECKED", subject = "a") => ({
      id,
      result,
      subject,
    });
    const given = [
      row("C5", "OK"),
      row("C22", "STOP"),
      row("C10", "STOP"),
      row("C9", "STOP"),
      row("C12", "CAUTION"),
      row("C26", "NOT CHECKED"),
      row("C5", "NOT CHECKED", "b"),
      row("C5", "NOT CHECKED"),
    ];
    expect(orderChecks(given).map(({ id, result, subject }) => `${result} ${id} ${subject}`)).toEqual([
      "STOP C9 a",
      "STOP C10 a",
      "STOP C22 a",
      "CAUTION C12 a",
      "NOT CHECKED C5 a",
      "NOT CHECKED C5 b",
      "NOT CHECKED C26 a",
      "OK C5 a",
    ]);
    expect(given[0]).toEqual(row("C5", "OK"));
  });
});

function facts(
  other: Partial<SiteCheckFacts["site"]> = {},
  rest: Partial<SiteCheckFacts> = {},
): SiteCheckFacts {
  const tree = { species: "larch", girthMm: 974, measuredAtHeightM: 1.3, condition };
  return {
    siteId: "larch-bench",
    site: {
      position: parseGridText("59G LL 15993 11006"),
      grid: "59G LL 15993 11006",
      tree,
      platformHeightM: 5,
      ...other,
    },
    stands: [stand, { ...stand, id: "long-stand", trunkMinMm: 300, trunkMaxMm: 700 }],
    area: { emergency: { coverage: "ridge only", radio: "channel 5" } },
    haulLineM: null,
    onDate: "2026-11-06",
    ...rest,
  };
}
const lines = (checks: ReturnType<typeof siteChecks>) =>
  checks.map(({ id, subject, result }) => `${id} ${subject} ${result}`);

describe("checks of a site card", () => {
  test("without a stand left there, fit and height are worked out for every stand", () => {
    expect(lines(siteChecks(facts(), limits))).toEqual([
      "C5 long-stand STOP",
      "C9 larch-bench NOT CHECKED",
      "C5 ridge-stand OK",
      "C8 long-stand OK",
      "C8 ridge-stand OK",
      "C18 larch-bench OK",
      "C23 larch-bench OK",
      "C25 larch-bench OK",
    ]);
  });

  test("a stand that does not fit does not stop the site while another fits; when none fits the site stops", () => {
    expect(siteStop(siteChecks(facts(), limits), "larch-bench")).toBeNull();
    const thin = siteChecks(
      facts({ tree: { species: "larch", girthMm: 600, measuredAtHeightM: 1.3, condition } }),
      limits,
    );
    expect(siteStop(thin, "larch-bench")?.id).toBe("C5");
  });

  test("a dead limb stops the site", () => {
    const tree = {
      species: "larch",
      girthMm: 974,
      measuredAtHeightM: 1.3,
      condition: { ...condition, deadLimbs: "fault" as const },
    };
    expect(siteStop(siteChecks(facts({ tree }), limits), "larch-bench")).toMatchObject({
      id: "C23",
      text: "Tree: dead limb overhead.",
    });
  });

  test("for a stand left there only that stand counts, with its dates and age", () => {
    const left = { standId: "ridge-stand", labelled: true, placedOn: "2026-10-01", removeBy: "2026-12-05" };
    const checks = lines(siteChecks(facts({ stand: left }), limits));
    expect(checks).toContain("C22 larch-bench NOT CHECKED");
    expect(checks).toContain("C7 ridge-stand NOT CHECKED");
    expect(checks.filter((line) => line.startsWith("C5"))).toEqual(["C5 ridge-stand OK"]);
  });

  test("without any known stand the fit is said to be not checked", () => {
    const checks = lines(siteChecks(facts({}, { stands: [] }), limits));
    expect(checks).toContain("C5 stand NOT CHECKED");
    expect(checks).toContain("C8 stand NOT CHECKED");
  });

  test("a site without tree, grid or contacts is full of blanks and has no OK but the height", () => {
    const bare: SiteCheckFacts["site"] = { position: { lat: -45, lon: 168.6 }, platformHeightM: 5 };
    const checks = siteChecks(
      { ...facts({}, { stands: [stand], area: { emergency: {} } }), site: bare },
      limits,
    );
    expect(checks.filter(({ result }) => result === "OK").map(({ id }) => id)).toEqual(["C8"]);
    expect(checks.map(({ id }) => id).sort()).toEqual(["C18", "C23", "C25", "C5", "C8", "C9"]);
  });

  test("a ground seat has no checks of climbing, a named tree over it is still looked at", () => {
    expect(siteChecks(facts({ platformHeightM: 0 }), limits).map(({ id }) => id)).toEqual([
      "C18",
      "C23",
      "C25",
    ]);
  });
});

describe("checks of a hunter", () => {
  const hunter = {
    id: "a",
    name: "A",
    standId: "ridge-stand",
    firearmId: null,
    loadKg: { body: 80, clothing: 6, harness: 2, pack: 8, weapon: 4, water: 2 },
    handed: "right" as const,
    newcomer: false,
    harness: { madeOn: "2023-05", replaceBy: "2027-04-03", fallen: false },
  };

  test("load, harness and the stand's age are checked", () => {
    const checks = hunterChecks(
      { hunter, stand: { ...stand, replaceBy: "2027-01" }, onDate: "2026-11-06" },
      limits,
    );
    expect(lines(checks)).toEqual(["C6 a OK", "C7 a OK", "C7 ridge-stand OK"]);
  });

  test("a harness that runs out on 3 April stops its hunter from the 4th", () => {
    const on = (onDate: string) =>
      hunterChecks({ hunter, stand, onDate }, limits).find(
        ({ id, subject }) => id === "C7" && subject === "a",
      )?.result;
    expect([on("2027-04-03"), on("2027-04-04")]).toEqual(["OK", "STOP"]);
  });

  test("without a stand the load is not checked", () => {
    const checks = hunterChecks(
      { hunter: { ...hunter, standId: null }, stand: null, onDate: "2026-11-06" },
      limits,
    );
    expect(lines(checks)).toEqual(["C6 a NOT CHECKED", "C7 a NOT CHECKED", "C7 a OK"]);
  });
});
