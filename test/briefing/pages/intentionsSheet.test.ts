import { describe, expect, test } from "vitest";
import { composePages } from "../../../scripts/briefing/pages/composePages.ts";
import type { AreaPack } from "../../../scripts/briefing/pages/sheetParts.ts";
import type { IntentionsSheet } from "../../../scripts/briefing/pages/trips/intentionsSheet.ts";
import { larchTripArea } from "../../fixtures/packs/larchTrip.ts";
import { shared } from "../../fixtures/packs/larchValley.ts";

const sheetOf = (area: AreaPack): IntentionsSheet => composePages([area], shared, {}).intentions[0]!;

describe("trip intentions", () => {
  test("answer with the two times, and give them for each sit; a stopped choice has none", () => {
    const sheet = sheetOf(larchTripArea());
    expect(sheet.answer.core).toBe("Last day: start asking at 11:30, call for help at 12:30.");
    expect(sheet.overdue).toEqual([
      { day: "Sat 4 Apr", session: "Morning", who: "Ann", out: "about 11:00", ask: "11:30", call: "12:30" },
    ]);
    expect(sheet.tearOff.overdue).toEqual(sheet.overdue);
  });

  test("give the place of each person for each sit, with the way in and the height of the seat", () => {
    expect(sheetOf(larchTripArea()).sits).toEqual([
      {
        when: "Sat 4 Apr, morning",
        hunter: "Ann",
        site: "3 Larch bench",
        position: "-45.03050, 168.66410",
        grid: "59G LL 15993 11006",
        way: "by Creek path, seat 5 m up",
      },
    ]);
  });

  test("what nobody wrote is a blank: phone, look, colour worn, boots, medical", () => {
    const [ann, bo] = sheetOf(larchTripArea()).people;
    const blanks = (person: typeof ann) =>
      person?.rows.filter((row) => row.value === null).map((row) => row.label);
    expect(blanks(ann)).toEqual(["Phone", "Age, look", "Colour worn", "Clothes, boot tread"]);
    expect(blanks(bo)).toEqual([
      "Phone",
      "Age, look",
      "Colour worn",
      "Clothes, boot tread",
      "Medical",
      "Own contact",
    ]);
  });

  test("plate, medical notes and contacts are in the owner edition alone", () => {
    const area = larchTripArea();
    for (const secret of ["LV 1234", "Bee stings", "Her brother"]) {
      expect(JSON.stringify(sheetOf(area))).toContain(secret);
    }
    area.pack.edition = "party";
    for (const secret of ["LV 1234", "Bee stings", "Her brother"]) {
      expect(JSON.stringify(sheetOf(area))).not.toContain(secret);
    }
  });

  test("without a schedule the times are blanks and home is told to write them in", () => {
    const area = larchTripArea();
    for (const day of area.pack.trips![0]!.days) for (const session of day.sessions) session.assignment = [];
    const sheet = sheetOf(area);
    expect(sheet.overdue).toEqual([]);
    expect(sheet.answer.core).toMatch(/times you write in below/);
    expect(sheet.blankSits).toEqual(["Ann", "Bo"]);
  });

  test("a time that the schedule lacks is a blank, never a guess", () => {
    const area = larchTripArea();
    const session = area.pack.trips![0]!.days[0]!.sessions[0]!;
    session.schedule = session.schedule.filter((row) => row.what !== "call");
    expect(sheetOf(area).overdue[0]).toMatchObject({ ask: "11:30", call: null });
    expect(sheetOf(area).answer.core).toMatch(/write in below/);
  });

  test("no number to call is supplied", () => {
    const sheet = sheetOf(larchTripArea());
    expect(sheet.trip.find((row) => row.label === "Number to call")?.value).toBeNull();
    expect(sheet.tearOff.rows.find((row) => row.label === "Number to call")?.value).toBeNull();
  });

  test("an underscore in the owner's words makes no blank in the text to read out", () => {
    const area = larchTripArea();
    area.content.trips[0]!.facts.vehicle = { text: "Van LV_7" };
    const line = sheetOf(area).script.find((pieces) => pieces[0]?.say.startsWith("Vehicle"));
    expect(line).toEqual([{ say: "Vehicle: Van LV 7.", blank: false }]);
  });
});
