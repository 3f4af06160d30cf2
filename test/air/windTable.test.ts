import { describe, expect, test } from "vitest";
import { coverage, gapSentences } from "../../scripts/air/coverage.ts";
import type { LocalNote } from "../../scripts/air/localNote.ts";
import { memberAirAt } from "../../scripts/air/memberAir.ts";
import { sessionTableRows } from "../../scripts/air/sessionTableRows.ts";
import { COVERS, type Verdict } from "../../scripts/air/slopeSite.ts";
import { tableWinds } from "../../scripts/air/tableWinds.ts";
import { type TableQuestion, windTableRows } from "../../scripts/air/windTableRows.ts";
import { withTurnMoved } from "../../scripts/air/withTurnMoved.ts";
import { approach, constants, octoberAt, octoberClock, octoberDay, planeSite } from "./planeSite.ts";

type Question = TableQuestion & { clockText: (at: Date) => string };

function asked(aspectDeg: number, change: Partial<Question> = {}): Question {
  const site = change.site ?? planeSite(aspectDeg);
  const approaches = [approach(250, 290, 1, "bench trail")];
  return {
    site,
    air: octoberDay(site),
    airWhy: null,
    sessions: [
      { session: "morning", from: octoberAt("06:50"), to: octoberAt("10:30"), approaches },
      { session: "evening", from: octoberAt("15:30"), to: octoberAt("19:20"), approaches },
    ],
    localNotes: [],
    clockText: octoberClock,
    constants,
    ...change,
  };
}

const NOTE: LocalNote = {
  session: null,
  phase: null,
  windFrom: null,
  class: null,
  verdict: "avoid",
  turnsAt: null,
  note: "Air pools on the bench.",
  seenOn: "2025-10-01",
};

describe("the wind table of a site", () => {
  test("has 33 winds by session by phase in the fixed order", () => {
    const rows = windTableRows(asked(90));
    expect(rows).toHaveLength(33 * 2 * 3);
    expect(rows.slice(0, 7).map((r) => `${r.windFrom} ${r.class} ${r.session} ${r.phase}`)).toEqual([
      "N light morning falling",
      "N light morning turning",
      "N light morning rising",
      "N light evening falling",
      "N light evening turning",
      "N light evening rising",
      "N fresh morning falling",
    ]);
    expect(rows.at(-1)?.windFrom).toBe("calm");
    expect(tableWinds(constants)).toHaveLength(33);
  });

  test("every row holds its own rules: nulls have a why, numbers are in range, reasons are short sentences", () => {
    for (const aspect of [0, 90, 225]) {
      for (const row of windTableRows(asked(aspect))) {
        for (const key of ["driftToDeg", "driftSpeedMps", "reachShare"] as const) {
          expect(row[key] === null, `${key} of ${row.windFrom} ${row.phase}`).toBe(
            row.why[key] !== undefined,
          );
        }
        if (row.reachShare !== null) {
          expect(row.reachShare).toBeGreaterThanOrEqual(0);
          expect(row.reachShare).toBeLessThanOrEqual(1);
        }
        if (row.driftToDeg !== null) expect(row.driftToDeg).toBeLessThan(360);
        expect(row.reason).toMatch(/^[A-Z].*\.$/);
        expect(row.reason.split(" ").length).toBeLessThanOrEqual(22);
      }
    }
  });

  test("light wind: directly above fails rising, directly below fails falling (common practice, no source)", () => {
    const verdicts = (aspect: number, phase: string): Set<Verdict> =>
      new Set(
        windTableRows(asked(aspect))
          .filter((r) => r.class === "light" && r.phase === phase)
          .map((r) => r.verdict),
      );
    expect(verdicts(90, "rising")).toEqual(new Set<Verdict>(["avoid"]));
    expect(verdicts(270, "falling").has("suits")).toBe(false);
    expect(verdicts(90, "falling").has("avoid")).toBe(false);
  });

  test("a phase that the session does not have that day is not assessed, and says so", () => {
    const sessions = [
      { session: "noon", from: octoberAt("12:00"), to: octoberAt("13:00"), approaches: [approach(250, 290)] },
    ];
    const rows = windTableRows(asked(90, { sessions }));
    expect(new Set(rows.filter((r) => r.phase !== "rising").map((r) => r.verdict))).toEqual(
      new Set(["not assessed"]),
    );
    expect(rows.find((r) => r.phase === "falling")?.reason).toBe(
      "No falling air in this session on this day.",
    );
    expect(rows.filter((r) => r.phase === "rising").some((r) => r.verdict === "not assessed")).toBe(false);
  });

  test("an unknown slope: calm and light are not assessed, fresh goes by the general wind", () => {
    const site = planeSite(90, { sxDeg: null });
    const rows = windTableRows({ ...asked(90), site, air: null, airWhy: "no slope is given" });
    for (const row of rows) expect(row.verdict === "not assessed", row.class).toBe(row.class !== "fresh");
    expect(rows.find((r) => r.class === "light")?.reason).toMatch(/no slope is given/);
    expect(rows.find((r) => r.windFrom === "W" && r.class === "fresh")?.reason).toMatch(/general wind alone/);
    const floor = planeSite(90, { landform: "floor", floorDriftToDeg: null });
    const blind = windTableRows(asked(90, { site: floor }));
    for (const row of blind) expect(row.verdict === "not assessed").toBe(row.class !== "fresh");
  });

  test("a local note takes its cells, keeps the model's verdict beside, and leaves the other cells alone", () => {
    const plain = windTableRows(asked(90));
    const noted = windTableRows(
      asked(90, { localNotes: [{ ...NOTE, phase: "falling", windFrom: "W", class: "light" }] }),
    );
    noted.forEach((row, i) => {
      const isNamed = row.phase === "falling" && row.windFrom === "W" && row.class === "light";
      expect(row.localNote).toBe(isNamed);
      expect(row.verdict).toBe(isNamed ? "avoid" : plain[i]?.verdict);
      expect(row.modelVerdict).toBe(plain[i]?.verdict);
      if (isNamed) expect(row.reason).toBe("Local note: Air pools on the bench.");
    });
  });

  test("turning the whole scene turns the drift and keeps chance and verdict", () => {
    // The air is turned with the site; the sun is not, so the same day's air is used for both.
    const base = planeSite(90);
    const air = octoberDay(base);
    const turned = { ...air, directions: { fallToDeg: 180, riseToDeg: 0, why: null } };
    const sxDeg = planeSite(180).sxDeg;
    const of = (question: Question) =>
      new Map(windTableRows(question).map((r) => [`${r.windFrom} ${r.class} ${r.session} ${r.phase}`, r]));
    const a = of(asked(90));
    const sessions = asked(90).sessions.map((s) => ({ ...s, approaches: [approach(340, 380)] }));
    const b = of({ ...asked(180), air: turned, site: { ...base, aspectDeg: 180, sxDeg }, sessions });
    const point = { N: "E", WSW: "NNW", S: "W", calm: "calm" } as const;
    for (const [from, to] of Object.entries(point)) {
      for (const [key, row] of a) {
        if (!key.startsWith(`${from} `)) continue;
        const other = b.get(key.replace(from, to));
        expect(other?.reachShare ?? -1).toBeCloseTo(row.reachShare ?? -1, 6);
        expect(other?.verdict).toBe(row.verdict);
        if (row.driftToDeg !== null)
          expect((row.driftToDeg + 90) % 360).toBeCloseTo(other?.driftToDeg ?? -1, 6);
      }
    }
  });
});

describe("the session table of a site", () => {
  test("has 33 winds by session; each verdict agrees with its sit, each reason is a short sentence", () => {
    for (const cover of COVERS) {
      const rows = sessionTableRows(asked(90, { site: planeSite(90, { cover }) }));
      expect(rows).toHaveLength(66);
      for (const row of rows) {
        expect(row.reason).toMatch(/^[A-Z].*\.$/);
        expect(row.reason.split(" ").length).toBeLessThanOrEqual(22);
        expect(row.sitFrom === null).toBe(row.verdict === "avoid" || row.verdict === "not assessed");
        for (const [time, range] of [
          [row.sitFrom, row.sitFromRange],
          [row.sitUntil, row.sitUntilRange],
        ] as const) {
          if (!time || !range) continue;
          expect(range[0].getTime()).toBeLessThanOrEqual(time.getTime());
          expect(range[1].getTime()).toBeGreaterThanOrEqual(time.getTime());
        }
      }
    }
  });

  test("a wind phrase names the wind of its row", () => {
    for (const row of sessionTableRows(asked(90))) {
      const named = /wind from (\w+)/i.exec(row.reason)?.[1];
      if (named) expect(named).toBe(row.windFrom);
    }
  });

  test("a long approach name gives way to a short sentence", () => {
    const name = "long trail that comes down from the third bench past the old wall to the forks";
    const sessions = asked(90).sessions.map((s) => ({ ...s, approaches: [approach(250, 290, 1, name)] }));
    for (const row of sessionTableRows(asked(90, { sessions }))) {
      expect(row.reason.split(" ").length).toBeLessThanOrEqual(22);
    }
  });
});

describe("a turn that a local note moves", () => {
  const day = octoberDay(planeSite(90));
  const morning = { from: octoberAt("06:50"), to: octoberAt("10:30") };

  test("begins at the clock time of the note, ranges keep their width, the evening stays", () => {
    const moved = withTurnMoved(day, morning, octoberAt("09:10"), constants);
    const rising = moved.spans.find((s) => s.phase === "rising");
    const before = day.spans.find((s) => s.phase === "rising");
    expect(octoberClock(rising?.from as Date)).toBe("09:10");
    const width = (r: readonly [Date, Date] | null | undefined): number =>
      r ? r[1].getTime() - r[0].getTime() : -1;
    expect(width(rising?.fromRange)).toBe(width(before?.fromRange));
    expect(rising?.to).toEqual(before?.to);
    expect(moved.spans.at(-1)).toEqual(day.spans.at(-1));
  });

  test("moved to an hour before the sun still gives rising air a speed", () => {
    const moved = withTurnMoved(day, morning, octoberAt("07:30"), constants);
    expect(memberAirAt(moved.members, 0, octoberAt("07:35")).phase).toBe("rising");
    expect(memberAirAt(moved.members, 0, octoberAt("07:35")).speedMps).toBeGreaterThan(0.2);
  });

  test("moved far still leaves a day without gap or overlap", () => {
    for (const clock of ["00:30", "03:00", "13:00", "18:00", "23:00"]) {
      const moved = withTurnMoved(day, morning, octoberAt(clock), constants);
      let at = day.start.getTime();
      for (const span of moved.spans) {
        expect(span.from.getTime()).toBe(at);
        expect(span.to.getTime()).toBeGreaterThan(at);
        at = span.to.getTime();
      }
      expect(at).toBe(day.end.getTime());
    }
  });
});

describe("coverage", () => {
  const rows = (siteId: string, suits: readonly string[]) => ({
    siteId,
    rows: tableWinds(constants).flatMap(({ windFrom, class: ofClass }) =>
      ["morning", "evening"].map((session) => ({
        windFrom,
        class: ofClass,
        session,
        verdict: (suits.includes(`${session} ${windFrom}`) ||
        suits.includes(`${session} ${windFrom} ${ofClass}`)
          ? "suits"
          : "marginal") as Verdict,
      })),
    ),
  });
  const all = tableWinds(constants).map((w) => w.windFrom);
  const allBut = (...gaps: string[]): string[] =>
    ["morning", "evening"].flatMap((s) => all.map((w) => `${s} ${w}`)).filter((key) => !gaps.includes(key));

  test("a gap is a wind that no site suits; it is told in words", () => {
    const tables = [rows("a", allBut("evening NE", "evening calm", "morning N")), rows("b", ["morning N"])];
    const found = coverage(tables, ["morning", "evening"]);
    expect(found).toHaveLength(66);
    expect(found.filter((r) => r.gap).map((r) => `${r.session} ${r.windFrom} ${r.class}`)).toEqual([
      "evening NE light",
      "evening NE fresh",
      "evening calm calm",
    ]);
    expect(found.find((r) => r.session === "morning" && r.windFrom === "N")?.suits).toEqual(["b"]);
    expect(found.find((r) => r.windFrom === "NE" && r.gap)?.fillBearingDeg).toBe(225);
    expect(gapSentences(found)).toEqual(["No site suits: from NE evening, calm evening."]);
  });

  test("neighbouring gaps are told as a run, also through north; strengths that differ get their own sentence", () => {
    const gaps = ["morning NNW", "morning N", "morning NNE", "morning ESE", "morning SE"];
    const light = [...allBut(...gaps, "evening S"), "evening S light"];
    expect(gapSentences(coverage([rows("a", light)], ["morning", "evening"]))).toEqual([
      "No site suits: from ESE and SE and NNW to NNE morning.",
      "No site suits in fresh wind: from S evening.",
    ]);
  });

  test("no site at all and no gap at all are said", () => {
    expect(gapSentences(coverage([], ["morning"]))).toEqual([
      "No site suits: every wind morning, calm morning.",
    ]);
    expect(gapSentences(coverage([rows("a", allBut())], ["morning", "evening"]))).toEqual([
      "Some site suits in every wind of the table.",
    ]);
  });
});
