import { describe, expect, test } from "vitest";
import { haulLine } from "../../scripts/safety/haulLine.ts";
import { heightCheck } from "../../scripts/safety/heightCheck.ts";
import { type LoadKg, loadCheck } from "../../scripts/safety/loadCheck.ts";
import { standAge, type WornItem, wornDates } from "../../scripts/safety/wornDates.ts";
import { limits } from "./limits.ts";

describe("C6, load on a stand for 120 kg", () => {
  const loadKg: LoadKg = { body: 80, clothing: 6, harness: 2, pack: 8, weapon: 4, water: 2 };
  const load = (parts: Partial<LoadKg>, ratedLoadKg: number | null = 120, guessed?: string[]) =>
    loadCheck({ subject: "a", loadKg: { ...loadKg, ...parts }, guessed, ratedLoadKg }, limits);

  test.each([
    { pack: 13.9, result: "OK" }, // 107.9 kg
    { pack: 14, result: "CAUTION" }, // 108 kg is 90 %
    { pack: 26, result: "CAUTION" }, // 120 kg is the label
    { pack: 26.1, result: "STOP" },
  ])("a pack of $pack kg is $result", ({ pack, result }) => expect(load({ pack }).result).toBe(result));

  test("tenths of a kilogram add up to the label without going over it", () => {
    expect(
      load({ body: 80.1, clothing: 6.2, harness: 2.3, pack: 21.1, weapon: 5.1, water: 5.2 }).result,
    ).toBe("CAUTION"); // 120.0
  });

  test("an unknown part is not checked and named, and over the label without it a stop", () => {
    expect(load({ water: null })).toMatchObject({
      result: "NOT CHECKED",
      text: "Load at least 100 kg; the stand carries 120 kg, 83 % used; water not entered. Body 80 kg, clothing 6 kg, harness 2 kg, pack 8 kg, weapon 4 kg.",
    });
    expect(load({ water: null, pack: 40 })).toMatchObject({
      result: "STOP",
      text: "Load at least 132 kg; the stand carries 120 kg, 110 % used: too heavy. Body 80 kg, clothing 6 kg, harness 2 kg, pack 40 kg, weapon 4 kg.",
    });
    expect(load({ body: null, water: null, pack: 90 }).result).toBe("NOT CHECKED"); // 102 kg known, near the label
  });

  test("a guess is a caution at best, an unknown label not checked", () => {
    expect(load({}, 120, ["body"]).result).toBe("CAUTION");
    expect(load({ pack: 40 }, 120, ["loadKg"]).result).toBe("STOP");
    expect(load({}, null)).toMatchObject({
      result: "NOT CHECKED",
      text: "Load 102 kg; the label's load is not entered.",
    });
  });
});

describe("C7, dates of a harness", () => {
  const item: WornItem = { madeOn: "2023-05", replaceBy: "2027-04-03", fallen: false };
  const dates = (parts: Partial<WornItem>, onDate = "2026-11-06") =>
    wornDates({ subject: "a", item: { ...item, ...parts }, onDate });

  test.each([
    { replaceBy: "2027-04-03", onDate: "2027-04-03", result: "OK" },
    { replaceBy: "2027-04-03", onDate: "2027-04-04", result: "STOP" },
    { replaceBy: "2027-04", onDate: "2027-03-31", result: "OK" },
    { replaceBy: "2027-04", onDate: "2027-04-01", result: "CAUTION" },
    { replaceBy: "2027-04", onDate: "2027-04-30", result: "CAUTION" },
    { replaceBy: "2027-04", onDate: "2027-05-01", result: "STOP" },
  ])("replace by $replaceBy is $result on $onDate", ({ replaceBy, onDate, result }) => {
    expect(dates({ replaceBy }, onDate).result).toBe(result);
    expect(standAge({ subject: "s", replaceBy, onDate }).result).toBe(result);
  });

  test("any fall is a stop, whatever the dates say or do not say", () => {
    expect(dates({ fallen: true, madeOn: null, replaceBy: null })).toMatchObject({
      result: "STOP",
      text: "Has held a fall: replace it.",
    });
  });

  test("what is not known is not checked and named; a passed date stays a stop", () => {
    expect(dates({ fallen: null, madeOn: null })).toMatchObject({
      result: "NOT CHECKED",
      text: "Not entered: made on and any fall.",
    });
    expect(dates({ replaceBy: null }).result).toBe("NOT CHECKED");
    expect(dates({ fallen: null, replaceBy: "2026-11-05" }).result).toBe("STOP");
    expect(standAge({ subject: "s", replaceBy: null, onDate: "2026-11-06" }).result).toBe("NOT CHECKED");
  });

  test("a harness made after the day is not believed", () => {
    expect(dates({ madeOn: "2026-12" }).result).toBe("NOT CHECKED");
    expect(dates({ madeOn: "2026-11" }).result).toBe("OK");
  });
});

describe("C8, height of the platform", () => {
  const height = (
    platformHeightM: number | null,
    maxPlatformHeightM: number | null = 9,
    heightReason: string | null = null,
  ) => heightCheck({ subject: "s", platformHeightM, maxPlatformHeightM, heightReason }, limits);

  test.each([
    { heightM: 6, reason: null, result: "OK" },
    { heightM: 6.1, reason: null, result: "CAUTION" },
    { heightM: 6.1, reason: "sees over the laurel", result: "OK" },
    { heightM: 9, reason: "sees over the laurel", result: "OK" },
    { heightM: 9.1, reason: "sees over the laurel", result: "STOP" },
  ])("$heightM m with reason $reason is $result under a label of 9 m", ({ heightM, reason, result }) => {
    expect(height(heightM, 9, reason).result).toBe(result);
  });

  test("an unknown height or label is not checked", () => {
    expect(height(null).result).toBe("NOT CHECKED");
    expect(height(5, null)).toMatchObject({
      result: "NOT CHECKED",
      text: "Platform at 5 m; the label's limit is not entered.",
    });
  });
});

describe("C9, haul line", () => {
  const line = (haulLineM: number | null, platformHeightM: number | null = 4.2) =>
    haulLine({ subject: "s", haulLineM, platformHeightM }, limits);

  test("2 m more than the platform is enough, a hand less a stop", () => {
    expect(line(6.2).result).toBe("OK");
    expect(line(6.1)).toMatchObject({
      result: "STOP",
      text: "Haul line 6.1 m, at least 6.2 m needed: too short.",
    });
  });

  test("an unknown line says what is needed", () => {
    expect(line(null)).toMatchObject({
      result: "NOT CHECKED",
      text: "Haul line: at least 6.2 m needed, length not entered.",
    });
    expect(line(8, null).result).toBe("NOT CHECKED");
  });
});
