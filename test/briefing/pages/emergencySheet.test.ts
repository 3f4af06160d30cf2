import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { composePages } from "../../../scripts/briefing/pages/composePages.ts";
import { scriptWordCount } from "../../../scripts/briefing/pages/emergency/emergencyScript.ts";
import type { EmergencySheet } from "../../../scripts/briefing/pages/emergency/emergencySheet.ts";
import type { AreaPack } from "../../../scripts/briefing/pages/sheetParts.ts";
import type { SharedData } from "../../../scripts/content/areaContent.ts";
import { larchTripArea } from "../../fixtures/packs/larchTrip.ts";
import { shared as bareShared, larchValley } from "../../fixtures/packs/larchValley.ts";

const emergencyTexts = JSON.parse(
  readFileSync(new URL("../../../data/emergency.json", import.meta.url), "utf8"),
) as SharedData["emergency"];
const shared: SharedData = { ...bareShared, emergency: emergencyTexts };
const sheetOf = (area: AreaPack): EmergencySheet => composePages([area], shared, {}).emergency[0]!;

/** Everything on the sheet but the places, its frame and its foot. */
function said(sheet: EmergencySheet): string {
  const { answer, doFirst, script, numbers, calling, access, helicopter, helicopterRule, firstAid } = sheet;
  return JSON.stringify([
    answer,
    doFirst,
    script,
    numbers,
    calling,
    access,
    helicopter,
    helicopterRule,
    firstAid,
  ]);
}

describe("the emergency sheet", () => {
  test("holds no number that the content does not give", () => {
    const area = larchValley();
    area.content.facts.emergency = {};
    const ownDigits = new Set(JSON.stringify(emergencyTexts).match(/\d+/g) ?? []);
    const digits = (said(sheetOf(area)).match(/\d+/g) ?? []).filter((digit) => !ownDigits.has(digit));
    expect(digits).toEqual(["6"]); // the six whistles a minute
  });

  test("what is not entered is a blank for the pen, the number to call first of all", () => {
    const area = larchValley();
    area.content.facts.emergency = {};
    const sheet = sheetOf(area);
    expect(sheet.calling.map((row) => row.value)).toEqual([null, null, null, null]);
    expect(sheet.calling[0]?.label).toBe("Number to call");
    expect(sheet.numbers.every((row) => row.value === null)).toBe(true);
    expect(sheet.access.every((row) => row.value === null)).toBe(true);
    expect(sheet.helicopter).toEqual([{ label: "Place", value: null }]);
    expect(sheet.answer.core).toBe("Call for help now.");
  });

  test("prints the owner's number as it was written", () => {
    const area = larchValley();
    area.content.facts.emergency.number = "0800 LARCH";
    expect(sheetOf(area).answer.core).toBe("Call 0800 LARCH");
    expect(sheetOf(area).calling[0]?.value).toBe("0800 LARCH");
  });

  test("gives every site in decimal degrees, in minutes and as a grid, barred sites too", () => {
    const places = sheetOf(larchValley()).places;
    expect(places.map((place) => place.number)).toEqual([3, 5, 8]);
    expect(places[0]).toEqual({
      number: 3,
      name: "Larch bench",
      decimal: "-45.03050, 168.66410",
      minutes: "45° 01.830′ S, 168° 39.846′ E",
      grid: "59G LL 15993 11006",
      height: "height 640 m",
      wayIn: "on foot about 30 to 55 min from Creek hut",
    });
    expect(places[1]?.wayIn).toBe("time on foot not known");
  });

  test("shows how a place is read out digit by digit", () => {
    expect(sheetOf(larchValley()).readAloud).toBe(
      "Read every digit by itself. Site 3: latitude minus four five point zero three zero five zero, longitude one six eight point six six four one zero.",
    );
  });

  test("the text to read out has at most 60 words and asks for all that a rescue desk asks", () => {
    const { script } = sheetOf(larchValley());
    expect(scriptWordCount(script)).toBeLessThanOrEqual(60);
    const text = script
      .flat()
      .map((piece) => piece.say)
      .join(" ");
    for (const word of [
      "site",
      "Latitude",
      "longitude",
      "grid",
      "name",
      "happened",
      "Fell from",
      "hurt",
      "Awake",
      "breathing",
      "bleeding",
      "Weather",
      "wind",
      "Helpers",
      "Battery",
    ]) {
      expect(text).toContain(word);
    }
    expect(script.flat().filter((piece) => piece.blank).length).toBeGreaterThanOrEqual(14);
  });

  test("of a helicopter spot only what the owner said is a fact, the rest is NOT CHECKED", () => {
    const area = larchValley();
    area.content.map = {
      type: "FeatureCollection",
      features: [
        {
          type: "Feature",
          geometry: { type: "Point", coordinates: [168.66, -45.03] },
          properties: { id: "pad", kind: "helicopter-spot", name: "River flat" },
        },
      ],
    };
    area.content.facts.emergency.helicopterSpot = { feature: "pad" };
    const rows = Object.fromEntries(sheetOf(area).helicopter.map((row) => [row.label, row.value]));
    expect(rows.Place).toMatch(/^River flat: -45\.03000, 168\.66000; 45° 01\.800′ S, 168° 39\.600′ E; 59G/);
    expect(rows).toMatchObject({
      Size: "NOT CHECKED",
      Wires: "NOT CHECKED",
      Slope: "NOT CHECKED",
      "Trees, dust": "NOT CHECKED",
      "Wind from": null,
    });
    area.content.facts.emergency.helicopterSpot = { feature: "pad", sizeM: 40, noWires: true };
    expect(sheetOf(area).helicopter.map((row) => row.value)).toContain("40 m across, by the owner");
  });

  test("hanging in the harness is 5 lines: call first, flat after the rescue, no countdown", () => {
    const hanging = sheetOf(larchValley()).firstAid.find((block) => block.title === "Hanging in the harness");
    expect(hanging?.lines.length).toBe(5);
    expect(hanging?.lines[0]).toMatch(/^Call for help now/);
    expect(hanging?.lines.join(" ")).toMatch(/Lay the person flat/);
    expect(hanging?.lines.join(" ")).not.toMatch(/\d/);
  });

  test("medical notes and contacts are printed in the owner edition alone", () => {
    const area = larchTripArea();
    area.content.facts.emergency.contacts = [{ name: "Kit", phone: "at the farm" }];
    expect(sheetOf(area).medical).toMatchObject([
      { label: "Ann", value: "Bee stings: kit in the left pocket" },
    ]);
    expect(said(sheetOf(area))).toContain("at the farm");
    area.pack.edition = "party";
    expect(sheetOf(area).medical).toEqual([]);
    expect(said(sheetOf(area))).not.toContain("at the farm");
  });
});
