import { beforeAll, describe, expect, test } from "vitest";
import type { WindTableRow } from "../../scripts/air/windTableRows.ts";
import { demoDay, demoLoaded, verdicts } from "./demoJudgement.ts";

// What a careful reader must find in the pack of Turnpail Hollow. Orchard Corner's tree is a STOP: it never counts.
type Day = ReturnType<typeof demoDay>;
let friday: Day;
let saturday: Day;
let sunday: Day;
let openingDay: Day;
let tables: Map<string, WindTableRow[]>;
const usable = ["upper-bench", "lower-bench", "hatch-gap", "icehouse-gully", "landing-west", "landing-east"];

beforeAll(async () => {
  const { areas, shared } = await demoLoaded();
  const area = areas.get("turnpail-hollow")!;
  [friday, saturday, sunday, openingDay] = ["2027-11-05", "2027-11-06", "2027-11-07", "2027-11-13"].map(
    (date) => demoDay(area, shared, date),
  ) as [Day, Day, Day, Day];
  tables = new Map(friday.siteIds.map((id) => [id, friday.windTable(id)]));
}, 60_000);

const cells = (id: string, ...asked: [string, WindTableRow["phase"], WindTableRow["class"], string[]]) =>
  verdicts(tables.get(id)!, ...asked);

describe("a wind from S or SSE at dusk", () => {
  test("leaves no site when it is fresh", () => {
    const found = usable.flatMap((id) => cells(id, "evening", "falling", "fresh", ["SSE", "S"]));
    expect(found).not.toContain("suits");
  });

  test("suits no site when it is light, and the gully alone has a chance", () => {
    for (const windFrom of ["SSE", "S"]) {
      const found = usable.map((id) => ({
        id,
        verdict: cells(id, "evening", "falling", "light", [windFrom])[0],
      }));
      expect(found.filter(({ verdict }) => verdict !== "avoid")).toEqual([
        { id: "icehouse-gully", verdict: "marginal" },
      ]);
    }
  });
});

describe("Upper Bench", () => {
  test("suits a wind from the east while the air rises, and no longer when it falls in light air", () => {
    const easterly = ["ENE", "E", "ESE"];
    expect(cells("upper-bench", "evening", "rising", "light", easterly)).toEqual(["suits", "suits", "suits"]);
    for (const phase of ["turning", "falling"] as const) {
      expect(cells("upper-bench", "evening", phase, "light", easterly)).not.toContain("suits");
    }
  });

  test("loses the sun about 16:55 on 6 November, an hour before sunset", () => {
    // about 16:55, to 10 min: the horizon is that of carved ground
    const leaves = saturday.clock(saturday.clearAir("upper-bench").sunLeaves)!;
    expect(leaves >= "16:45" && leaves <= "17:05").toBe(true);
  });
});

describe("Lower Bench", () => {
  test("is right at first light in a westerly, and in light air no longer once the air climbs", () => {
    const westerly = ["WSW", "W", "WNW"];
    expect(cells("lower-bench", "morning", "falling", "light", westerly)).toEqual([
      "suits",
      "suits",
      "suits",
    ]);
    expect(cells("lower-bench", "morning", "rising", "light", westerly)).toEqual(["avoid", "avoid", "avoid"]);
    const rising = friday.clearAir("lower-bench").spans.find(({ phase }) => phase === "rising")!;
    const from = friday.clock(rising.from)!;
    expect(from > "08:15" && from < "09:45").toBe(true); // mid-morning, and no later than the note's "by ten"
  });
});

test("Orchard Corner would suit an evening wind from the north-east", () => {
  for (const phase of ["rising", "falling"] as const) {
    expect(cells("orchard-corner", "evening", phase, "light", ["NE"])).toEqual(["suits"]);
    expect(cells("orchard-corner", "evening", phase, "fresh", ["NE"])).toEqual(["suits"]);
  }
});

describe("Saturday 6 November", () => {
  test("some site suits until the wind goes to the south at 17:00", () => {
    const steps = usable.map((id) => saturday.underForecast(id, "evening").steps);
    const before = steps.flatMap((own) => own.filter(({ from }) => saturday.clock(from)! < "16:00"));
    expect(before.map(({ verdict }) => verdict)).toContain("suits");
  });

  test("from 17:00 to the end at most the gully is left, marginal", () => {
    for (const id of usable) {
      const { steps, verdict } = saturday.underForecast(id, "evening", "17:00");
      expect(steps.length).toBeGreaterThan(10);
      const kinds = new Set(steps.map((step) => step.verdict));
      expect([id, kinds.has("suits")]).toEqual([id, false]);
      if (id !== "icehouse-gully") expect([id, verdict]).toEqual([id, "avoid"]);
    }
  });
});

describe("legal light", () => {
  test("ends at 18:15 by the land rule on 5 and 6 November", () => {
    for (const day of [friday, saturday]) {
      expect(day.legal()).toMatchObject({ endLayer: "landRule", status: "confirmed" });
      expect(day.legal().text).toMatch(/-18:15$/);
    }
  });

  test("ends about 17:29 by the state rule on 7 November, an hour earlier by the clock, at UTC-5", () => {
    const legal = sunday.legal();
    expect(legal.endLayer).toBe("law");
    expect(legal.text).toBe("06:21-17:29"); // figure of the demonstration: ~17:29
    expect(legal.civil.utcOffset).toBe("-05:00");
  });

  test("for rifles is 06:28 to 16:53 on 13 November, the old rule marked, and Sundays are closed", () => {
    const legal = openingDay.legal();
    expect(legal.text).toBe("06:28-16:53"); // figures of the demonstration: ~06:28-16:53
    expect(legal.notes.join(" ")).toMatch(/Old: rule rifle-2027 was last checked on 2026-08-11/);
    expect(sunday.legal({ method: "rifle" }).start).toBeNull();
  });
});
