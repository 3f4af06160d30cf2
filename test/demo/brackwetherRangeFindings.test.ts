import { beforeAll, describe, expect, test } from "vitest";
import type { WindTableRow } from "../../scripts/air/windTableRows.ts";
import { demoDay, demoLoaded, verdicts } from "./demoJudgement.ts";

// What a careful reader must find in the pack of Brackwether Range. Wallow Side's tree is a STOP and block D is closed.
type Day = ReturnType<typeof demoDay>;
let friday: Day;
let saturday: Day;
let sunday: Day;
let tables: Map<string, WindTableRow[]>;
const usable = ["warm-top", "warm-foot", "tin-saddle", "billhook-forks", "flat-west", "flat-east"];
const ofKettle = ["tin-saddle", "billhook-forks", "flat-west", "flat-east"];
const WINDS = "N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW".split(" ");

beforeAll(async () => {
  const { areas, shared } = await demoLoaded();
  const area = areas.get("brackwether-range")!;
  [friday, saturday, sunday] = ["2027-04-02", "2027-04-03", "2027-04-04"].map((date) =>
    demoDay(area, shared, date),
  ) as [Day, Day, Day];
  tables = new Map(friday.siteIds.map((id) => [id, friday.windTable(id)]));
}, 60_000);

const cells = (id: string, ...asked: [string, WindTableRow["phase"], WindTableRow["class"], string[]]) =>
  verdicts(tables.get(id)!, ...asked);

describe("a wind from E to SE before the evening turn", () => {
  const easterly = ["E", "ESE", "SE"];

  test("leaves no site when it is fresh, and none of party Kettle's when it is light", () => {
    expect(usable.flatMap((id) => cells(id, "evening", "rising", "fresh", easterly))).not.toContain("suits");
    expect(ofKettle.flatMap((id) => cells(id, "evening", "rising", "light", easterly))).not.toContain(
      "suits",
    );
  });

  test("would be filled by Wallow Side, if its tree were sound", () => {
    for (const strength of ["light", "fresh"] as const) {
      expect(cells("wallow-side", "evening", "rising", strength, easterly)).toEqual([
        "suits",
        "suits",
        "suits",
      ]);
    }
  });
});

describe("the sun in the north", () => {
  test("leaves Warm Foot about 19:15 and Billhook Forks about 17:40 on 2 April", () => {
    // figures of the demonstration, to 10 min: the horizon is that of carved ground
    const foot = friday.clock(friday.clearAir("warm-foot").sunLeaves)!;
    const forks = friday.clock(friday.clearAir("billhook-forks").sunLeaves)!;
    expect(foot >= "19:05" && foot <= "19:25").toBe(true);
    expect(forks >= "17:30" && forks <= "17:50").toBe(true);
  });

  test("so the forks drain over an hour earlier", () => {
    const fallsAt = (id: string) => friday.clearAir(id).spans.at(-1)!;
    const forks = fallsAt("billhook-forks");
    const foot = fallsAt("warm-foot");
    expect([forks.phase, foot.phase]).toEqual(["falling", "falling"]);
    expect(foot.from.getTime() - forks.from.getTime()).toBeGreaterThan(60 * 60_000);
  });
});

test("in light air Warm Top is bad from the turn on, and Warm Foot once the air has risen", () => {
  expect(cells("warm-top", "evening", "rising", "light", WINDS)).toContain("suits");
  expect(cells("warm-top", "evening", "turning", "light", WINDS)).not.toContain("suits");
  expect(cells("warm-top", "morning", "falling", "light", WINDS)).not.toContain("suits");
  expect(cells("warm-foot", "morning", "falling", "light", WINDS)).toContain("suits");
  expect(new Set(cells("warm-foot", "morning", "rising", "light", WINDS))).toEqual(new Set(["avoid"]));
});

describe("Billhook Forks", () => {
  test("suits first light and the evening once the air falls, in most light winds", () => {
    const often = (session: string) =>
      cells("billhook-forks", session, "falling", "light", WINDS).filter((verdict) => verdict === "suits")
        .length;
    expect(often("morning")).toBeGreaterThan(8);
    expect(often("evening")).toBeGreaterThan(8);
  });

  test("is to be avoided when the air rises, in nearly every light wind", () => {
    const rising = cells("billhook-forks", "evening", "rising", "light", WINDS);
    expect(rising).not.toContain("suits");
    expect(rising.filter((verdict) => verdict === "avoid").length).toBeGreaterThanOrEqual(15);
  });
});

test("Tin Saddle is ruled by the forecast: every phase has the same verdicts", () => {
  expect(friday.landformOf("tin-saddle")).toBe("crest");
  for (const strength of ["light", "fresh"] as const) {
    const [rising, turning, falling] = (["rising", "turning", "falling"] as const).map((phase) =>
      cells("tin-saddle", "evening", phase, strength, WINDS),
    );
    expect(turning).toEqual(rising);
    expect(falling).toEqual(rising);
  }
  expect(cells("tin-saddle", "evening", "rising", "fresh", ["NW", "W", "SW"])).toEqual([
    "suits",
    "suits",
    "suits",
  ]);
});

describe("legal light", () => {
  test("is about 07:20 to 19:35 on Saturday and 06:21 to 18:33 at UTC+12 on Sunday, the end by club rule", () => {
    // figures of the demonstration: ~07:20-19:35, ~06:21-18:33
    expect(saturday.legal().text).toBe("07:20-19:35");
    expect(sunday.legal().text).toBe("06:21-18:33");
    expect(sunday.legal().civil.utcOffset).toBe("+12:00");
    for (const day of [saturday, sunday])
      expect(day.legal()).toMatchObject({ endLayer: "clubRule", status: "confirmed" });
  });
});
