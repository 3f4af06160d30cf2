import { describe, expect, test } from "vitest";
import { composePages } from "../../../scripts/briefing/pages/composePages.ts";
import { coverageRows } from "../../../scripts/briefing/pages/coverageRows.ts";
import { usableText } from "../../../scripts/briefing/pages/dayLight.ts";
import { legalCell, legalText, NOT_CONFIRMED } from "../../../scripts/briefing/pages/legalText.ts";
import { oldFacts } from "../../../scripts/briefing/pages/oldFacts.ts";
import { lapsedFor, permissionRows } from "../../../scripts/briefing/pages/permissionRows.ts";
import type { AreaPack } from "../../../scripts/briefing/pages/sheetParts.ts";
import { siteBar } from "../../../scripts/briefing/pages/siteBar.ts";
import { airSentence, turnRows } from "../../../scripts/briefing/pages/turnWords.ts";
import type { PackShootingLight } from "../../../scripts/content/schema/packSchema.ts";
import { larchValley, shared, TIMEZONE } from "../../fixtures/packs/larchValley.ts";

const site = (area: AreaPack, number: number) => area.pack.sites!.find((s) => s.number === number)!;
const card = (area: AreaPack, number: number) =>
  composePages([area], shared, {}).siteCard.find((sheet) => sheet.number === number)!;

describe("the pages of a pack", () => {
  test("stand in the output tree, each once, and know their way to the root", () => {
    const pages = composePages([larchValley()], shared, {});
    const all = Object.values(pages).flat();
    expect(new Set(all.map((sheet) => sheet.permalink)).size).toBe(24);
    expect(pages.siteCard[0]).toMatchObject({
      permalink: "areas/larch-valley/sites/larch-bench.html",
      root: "../../../",
    });
    expect(pages.index[0]).toMatchObject({ permalink: "index.html", root: "" });
    expect(pages.almanacMonth.at(-1)?.permalink).toBe("areas/larch-valley/almanac-12.html");
  });

  test("are numbered through the area, the emergency page last, the back of a stapled pack", () => {
    const pages = composePages([larchValley()], shared, {});
    expect(pages.area[0]?.foot.page).toBe("Page 1 of 23");
    expect(pages.emergency[0]?.foot.page).toBe("Page 23 of 23");
  });

  test("take the paper asked for, else the area's, else Letter for US units", () => {
    const area = larchValley();
    expect(composePages([area], shared, {}).area[0]?.paper).toBe("a4");
    area.content.facts.units = "us";
    expect(composePages([area], shared, {}).area[0]?.paper).toBe("letter");
    area.content.facts.paper = "A4";
    expect(composePages([area], shared, {}).area[0]?.paper).toBe("a4");
    expect(composePages([area], shared, { paper: "A5" }).area[0]?.paper).toBe("a5");
  });

  test("an edition without sites has no site pages and links none", () => {
    const area = larchValley();
    area.pack.sites = null;
    area.pack.coverage = null;
    area.details.sites = null;
    const pages = composePages([area], shared, {});
    expect([pages.windTable, pages.slopeAir, pages.siteCard]).toEqual([[], [], []]);
    expect(pages.area[0]?.nav.map((link) => link.text)).toEqual([
      "All areas",
      "Emergency",
      "Safety",
      "Partner briefing",
      "Almanac",
      "Key and method",
    ]);
    expect(pages.area[0]?.sites).toEqual([]);
  });

  test("a pack without an area is refused", () => {
    expect(() => composePages([], shared, {})).toThrow(RangeError);
  });

  test("a model without a constant that pages print is refused", () => {
    expect(() => composePages([larchValley()], { ...shared, model: [] }, {})).toThrow(
      /lightWindMps|turnPrintMin/,
    );
  });

  test("a safety line that the wording lacks is refused, never left out", () => {
    expect(() => composePages([larchValley()], { ...shared, wording: {} }, {})).toThrow(/wording/);
  });

  test("US units and order of the date reach every measure of a card", () => {
    const area = larchValley();
    area.pack.area.units = "us";
    area.pack.area.locale = "en-US";
    const sheet = card(area, 3);
    expect(sheet.noShoot).toBe("Do not shoot 040 to 085 (road at 197 yd).");
    expect(sheet.windCaption).toBe("Light wind, about 4 mph");
    expect(sheet.running.dates).toBe("Not valid after Apr 5, 2026");
    expect(sheet.ground.find((row) => row.label === "Ground")?.value).toMatch(/^2100 ft/);
    expect(sheet.place.find((row) => row.label === "Compass")?.value).toContain("25.3 degrees");
  });
});

describe("a site card", () => {
  test("answers with the winds that suit, and the earliest end of the sit rounded down to a quarter hour", () => {
    // sit until 09:26 in the pack
    expect(card(larchValley(), 3).answer.core).toBe(
      "Suits light wind: morning from WSW to NNW until about 09:15 and evening from SSW to WNW until about 19:00.",
    );
  });

  test("sit from is rounded up, sit until down", () => {
    // 07:40 and 09:26 in the pack
    expect(card(larchValley(), 3).sitTimes[0]?.value).toBe(
      "light or fresh from WSW to NNW: from about 07:45 until about 09:15",
    );
  });

  test("with no light wind that suits it says so and names the marginal ones", () => {
    const area = larchValley();
    for (const row of site(area, 3).sessionTable) if (row.verdict === "suits") row.verdict = "marginal";
    expect(card(area, 3).answer.core).toBe("No light wind suits this site.");
    expect(card(area, 3).answer.rest).toMatch(/^Marginal: morning from /);
  });

  test("has at most two warnings, the one that bars the site first, and drops no row", () => {
    const area = larchValley();
    site(area, 8).checks.push(
      { id: "C8", result: "CAUTION", text: "High.", subject: "dead-spruce", inputs: {} },
      { id: "C5", result: "STOP", text: "Trunk too thin.", subject: "ridge-stand", inputs: {} },
      { id: "C30", result: "STOP", text: "Outside the boundary.", subject: "dead-spruce", inputs: {} },
    );
    const sheet = card(area, 8);
    expect(sheet.cautions.map((box) => box.title)).toEqual(["Tree: STOP", "Trunk and stand: STOP"]);
    expect(sheet.checks.length).toBe(4);
    expect(sheet.checks.map((row) => row.result)).toEqual(["STOP", "STOP", "STOP", "CAUTION"]);
  });

  test("puts a pen blank into each row that was not checked, and into no other", () => {
    const rows = card(larchValley(), 3).checks;
    for (const row of rows) expect(row.pen).toBe(row.result === "NOT CHECKED");
    expect(rows.some((row) => row.pen)).toBe(true);
  });

  test("says that no-shoot bearings were not checked rather than that there are none", () => {
    expect(card(larchValley(), 5).noShoot).toBe("No-shoot bearings NOT CHECKED: no map features were given");
    expect(card(larchValley(), 8).noShoot).toBe(
      "No closed bearing was found on the map. Look before every shot.",
    );
  });

  test("a lane nobody has seen and without ground data is NOT CHECKED", () => {
    const rows = Object.fromEntries(card(larchValley(), 3).lanes.map((row) => [row.label, row.value]));
    expect(rows).toMatchObject({
      "Lane B": "345, 15 wide, to 110 m",
      "Ground behind": "NOT CHECKED: no terrain file",
      "Seen B": "not in daylight: NOT CHECKED",
    });
  });

  test("the worst ground behind any bearing of a lane is the one that counts", () => {
    const area = larchValley();
    const line = { lane: "A", bearingDeg: 310, beyondM: 10, angleDeg: 4, seenOnGround: true, why: {} };
    site(area, 3).linesOfFire = [
      { ...line, ground: "earth" },
      { ...line, bearingDeg: 311, ground: "none" },
    ];
    expect(card(area, 3).lanes[0]?.value).toContain("ground behind no backstop");
  });
});

describe("the bar on a site", () => {
  test("a stand that does not fit bars that stand alone while another fits", () => {
    const area = larchValley();
    const stop = { id: "C5", result: "STOP" as const, text: "Too thin.", inputs: {} };
    site(area, 3).checks.push({ ...stop, subject: "other-stand" });
    expect(siteBar(area, site(area, 3))).toBeNull();
    site(area, 3).checks.find((check) => check.subject === "ridge-stand")!.result = "STOP";
    expect(siteBar(area, site(area, 3))?.heading).toBe("STOP");
  });

  test("a permission of the block that is over bars it although the whole area has one", () => {
    expect(siteBar(larchValley(), site(larchValley(), 5))).toEqual({
      heading: "No permission",
      reason: "West side: Permission ended 31 Jan 2026; ask the west farm before you go.",
    });
  });

  test.each([
    [{ withdrawn: true, to: "2026-12-31" }, /withdrawn/, true],
    [{ from: "2026-05-01", to: "2026-12-31" }, /starts 1 May 2026/, false],
    [{ to: "2026-04-02" }, /ended 2 Apr 2026/, true], // over between the as-of date and the day of the tables
  ])("permission %j", (change, words, struck) => {
    const area = larchValley();
    Object.assign(area.content.facts.permission[0]!, change);
    expect(permissionRows(area)[0]?.ask).toMatch(words);
    expect(permissionRows(area)[0]?.struck).toBe(struck);
    expect(lapsedFor(area, "east")).toMatch(words);
  });

  test("a barred site covers no wind", () => {
    const area = larchValley();
    const covered = coverageRows(area).find((row) => row.session === "Morning" && row.strength === "light");
    expect(covered?.covered).toBe("WSW to NNW"); // the winds of site 3 alone; 5 and 8 are barred
  });
});

describe("legal hours", () => {
  const base: PackShootingLight = {
    start: "2026-04-05T06:38:00+12:00",
    end: "2026-04-05T18:58:00+12:00",
    startLayer: "law",
    endLayer: "law",
    ruleIds: ["half-hour"],
    status: "confirmed",
    why: {},
  };
  const none = { start: null, end: null, startLayer: null, endLayer: null };

  test("confirmed: the window alone", () => {
    expect(legalText(base, TIMEZONE)).toEqual({
      window: "06:38 to 18:58",
      struck: false,
      mark: null,
      confirmed: true,
    });
  });

  test("unconfirmed: the window is marked", () => {
    expect(legalText({ ...base, status: "unconfirmed" }, TIMEZONE).mark).toBe(NOT_CONFIRMED);
  });

  test("lapsed: struck, and this year's rule is asked for", () => {
    const text = legalText({ ...base, status: "lapsed" }, TIMEZONE);
    expect([text.struck, text.mark]).toEqual([true, `${NOT_CONFIRMED}: check this year's rule`]);
  });

  test("not entered: no window, and never a plain none", () => {
    const light: PackShootingLight = {
      ...base,
      ...none,
      status: "not entered",
      why: { start: "no rule", end: "no rule" },
    };
    expect(legalText(light, TIMEZONE).window).toBe(NOT_CONFIRMED);
    expect(legalCell(light, TIMEZONE).window).toBe("not confirmed");
  });

  test("a confirmed rule without hours that day says why", () => {
    const light: PackShootingLight = { ...base, ...none, why: { start: "no sunrise", end: "no sunset" } };
    expect(legalText(light, TIMEZONE).window).toBe("No legal hours: no sunrise");
    expect(legalCell(light, TIMEZONE)).toEqual({ window: "none", struck: false, mark: null });
  });

  test("only confirmed hours get a bracket in the drawing", () => {
    const area = larchValley();
    expect(card(area, 3).chart?.legal).not.toBeNull();
    area.pack.days.find((day) => day.localDate === area.pack.tableDate)!.shootingLight.status = "unconfirmed";
    expect(card(area, 3).chart?.legal).toBeNull();
  });
});

describe("times", () => {
  test("usable light is rounded inward to 5 min, and is not known when an end is missing", () => {
    const from = "2026-04-05T06:51:00+12:00";
    expect(usableText(from, "2026-04-05T18:34:00+12:00", TIMEZONE)).toBe("about 06:55 to about 18:30");
    expect(usableText(from, null, TIMEZONE)).toBeNull();
    expect(usableText(from, "2026-04-05T06:52:00+12:00", TIMEZONE)).toBeNull();
  });

  test("a turn is printed outward to a quarter hour, its range outward to 5 min", () => {
    const at = (clock: string): Date => new Date(`2026-04-04T${clock}:00+13:00`);
    const end = new Date("2026-04-05T00:00:00+13:00");
    const spans = [
      {
        phase: "falling" as const,
        from: at("00:00"),
        to: at("08:10"),
        fromRange: [at("00:00"), at("00:00")] as [Date, Date],
        toRange: [at("07:52"), at("08:20")] as [Date, Date],
      },
      {
        phase: "turning" as const,
        from: at("08:10"),
        to: at("09:05"),
        fromRange: [at("07:52"), at("08:20")] as [Date, Date],
        toRange: [at("08:40"), at("09:33")] as [Date, Date],
      },
      {
        phase: "rising" as const,
        from: at("09:05"),
        to: end,
        fromRange: [at("08:40"), at("09:33")] as [Date, Date],
        toRange: [end, end] as [Date, Date],
      },
    ];
    expect(turnRows(spans, 15, TIMEZONE)).toEqual([
      { change: "falling to rising", span: "08:00 to 09:15", range: "07:50 to 09:35" },
    ]);
    expect(airSentence(spans, 15, TIMEZONE)).toBe("falling, turning about 08:00 to 09:15, rising");
  });
});

test("a rule checked over 12 months before the as-of date is old, one of this year is not", () => {
  expect(oldFacts(larchValley())).toEqual(["Legal hours, Invented public forest: last checked 20 Feb 2024."]);
});

describe("an event that does not happen", () => {
  test("is none in its column, with its reason below", () => {
    const area = larchValley();
    const day = area.pack.days.find((d) => d.localDate === "2026-06-21")!;
    Object.assign(day, {
      sunrise: null,
      sunset: null,
      dayLengthMin: null,
      why: {
        sunrise: "the sun stays down",
        sunset: "the sun stays down",
        dayLengthMin: "the sun stays down",
      },
    });
    const june = composePages([area], shared, {}).almanacMonth[5]!;
    expect(june.rows[20]).toMatchObject({ sunrise: "none", sunset: "none", dayLength: "none" });
    expect(june.notes).toContain("the sun stays down");
  });

  test("a twilight that the sun only grazes is printed with about", () => {
    const june = composePages([larchValley()], shared, {}).almanacMonth[5]!;
    expect(june.rows[20]?.firstLight).toMatch(/^about \d\d:\d\d$/);
    expect(june.rows[19]?.firstLight).toMatch(/^\d\d:\d\d$/);
  });
});
