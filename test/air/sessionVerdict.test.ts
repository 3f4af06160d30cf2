import { describe, expect, test } from "vitest";
import type { LocalNote } from "../../scripts/air/localNote.ts";
import {
  type SessionQuestion,
  type SessionVerdict,
  sessionVerdict,
} from "../../scripts/air/sessionVerdict.ts";
import { sitStretch } from "../../scripts/air/sitStretch.ts";
import type { Verdict } from "../../scripts/air/slopeSite.ts";
import { approach, constants, octoberAt, octoberClock, octoberDay, planeSite } from "./planeSite.ts";

const MORNING = { session: "morning", from: octoberAt("06:50"), to: octoberAt("10:30") };
const EVENING = { session: "evening", from: octoberAt("15:30"), to: octoberAt("19:20") };

function asked(aspectDeg: number, change: Partial<SessionQuestion> = {}): SessionQuestion {
  const site = planeSite(aspectDeg);
  return {
    site,
    air: octoberDay(site),
    airWhy: null,
    window: EVENING,
    approaches: [approach(250, 290, 1, "bench trail")],
    wind: { windFromDeg: 270, windSpeedMps: 2 },
    tableCell: null,
    localNotes: [],
    clockText: octoberClock,
    constants,
    ...change,
  };
}

/** Each change of verdict with its clock time. */
function changes(of: SessionVerdict): string[] {
  return of.steps
    .filter((step, i) => step.verdict !== of.steps[i - 1]?.verdict)
    .map((step) => `${octoberClock(step.from)} ${step.verdict}`);
}

function clocks(range: readonly [Date, Date] | null): string[] {
  return (range ?? []).map(octoberClock);
}

function note(change: Partial<LocalNote>): LocalNote {
  const names = { session: null, phase: null, windFrom: null, class: null };
  return { ...names, verdict: null, turnsAt: null, note: "seen so", seenOn: "2025-10-01", ...change };
}

describe("worked sessions on a 20 deg plane in timber, light wind (exact to the step)", () => {
  test("east slope, evening, deer from above: sit from 17:10 to the end", () => {
    const of = sessionVerdict(asked(90));
    expect(changes(of)).toEqual(["15:30 avoid", "17:10 marginal", "17:45 suits"]);
    expect(octoberClock(of.sitFrom as Date)).toBe("17:10");
    expect(clocks(of.sitFromRange)).toEqual(["16:45", "17:25"]);
    expect(octoberClock(of.sitUntil as Date)).toBe("19:20");
    expect(of.cleanShare).toBeCloseTo(0.413, 4);
    expect(of.sitCleanShare).toBeCloseTo(0.7308, 4);
    expect(of.verdict).toBe("suits");
    expect(of.reason).toBe("From about 17:15; before that the air climbs to the bench trail.");
  });

  test("west slope, evening, deer from below: sit all of it", () => {
    const of = sessionVerdict(asked(270));
    expect(changes(of)).toEqual(["15:30 suits", "18:35 marginal"]);
    expect([of.sitFrom, of.sitUntil].map((t) => octoberClock(t as Date))).toEqual(["15:30", "19:20"]);
    expect(of.cleanShare).toBeCloseTo(0.8043, 4);
    expect(of.verdict).toBe("suits");
  });

  test("east slope, morning, deer from above: sit until 08:40, by the careful end 08:25", () => {
    const of = sessionVerdict(asked(90, { window: MORNING }));
    expect(changes(of)).toEqual(["06:50 suits", "07:55 marginal", "08:40 avoid"]);
    expect(octoberClock(of.sitUntil as Date)).toBe("08:40");
    expect(clocks(of.sitUntilRange)).toEqual(["08:25", "08:50"]);
    expect(of.cleanShare).toBeCloseTo(0.2955, 4);
    expect(of.sitCleanShare).toBeCloseTo(0.5909, 4);
    expect(of.verdict).toBe("marginal");
    expect(of.reason).toBe("Until about 08:30, then the air climbs to the bench trail; unsure before.");
  });

  test("west slope, morning, wind from E, deer from below: the 40 min after the turn are too short", () => {
    const of = sessionVerdict(asked(270, { window: MORNING, wind: { windFromDeg: 90, windSpeedMps: 2 } }));
    expect(changes(of).at(0)).toBe("06:50 avoid");
    expect(changes(of).at(-1)).toBe("10:15 suits");
    expect(of.verdict).toBe("avoid");
    expect(of.sitFrom).toBeNull();
    expect(octoberClock(of.longest?.from as Date)).toBe("09:50");
    expect(of.longest?.minutes).toBe(40);
  });
});

describe("the sit", () => {
  const steps = (count: number) =>
    Array.from({ length: count }, (_, i) => ({ fromMs: i * 300_000, toMs: (i + 1) * 300_000, minutes: 5 }));
  const of = (text: string) => {
    const words: Record<string, Verdict> = { s: "suits", m: "marginal", a: "avoid", n: "not assessed" };
    return sitStretch(
      steps(text.length),
      [...text].map((c) => words[c] as Verdict),
      constants,
    );
  };

  test("an avoid of 10 min does not end it, one of 15 min does", () => {
    expect(of("ssaass")).toMatchObject({ first: 0, end: 6 });
    expect(of("sssaaass")).toMatchObject({ first: 0, end: 3 });
  });

  test("the longer stretch is taken, the earlier of two equal ones, none in an endless avoid", () => {
    expect(of("saaassm")).toMatchObject({ first: 4, end: 7 });
    expect(of("ssaaass")).toMatchObject({ first: 0, end: 2 });
    expect(of("aaaa")).toBeNull();
  });
});

describe("what a session verdict is taken from", () => {
  test("a window off the 5 min grid is judged to its ends and printed inward", () => {
    const window = { session: "evening", from: octoberAt("15:32"), to: octoberAt("19:18") };
    const of = sessionVerdict(asked(270, { window }));
    expect(of.steps[0]?.minutes).toBe(3);
    expect(of.steps.reduce((sum, s) => sum + s.minutes, 0)).toBe(226);
    expect([of.sitFrom, of.sitUntil].map((t) => octoberClock(t as Date))).toEqual(["15:35", "19:15"]);
  });

  test("a forecast that turns from E to W changes the verdict when it turns", () => {
    const wind = [
      { at: octoberAt("15:00"), windFromDeg: 90, windSpeedMps: 6 },
      { at: octoberAt("17:00"), windFromDeg: 270, windSpeedMps: 6 },
    ];
    const of = sessionVerdict(asked(180, { wind }));
    expect(changes(of)[0]).toBe("15:30 avoid");
    expect(of.steps.find((s) => octoberClock(s.from) === "16:55")?.verdict).toBe("avoid");
    expect(of.steps.find((s) => octoberClock(s.from) === "17:00")?.verdict).toBe("suits");
    expect(of.reason).toBe("From about 17:00; before that wind from E carries to the bench trail.");
  });

  test("no approach, no window, a variable wind, an unknown slope under light wind: not assessed with a reason", () => {
    const variable = { windFromDeg: null, windSpeedMps: 3 };
    const cases: [Partial<SessionQuestion>, RegExp][] = [
      [{ approaches: [] }, /No approach/],
      [{ window: { ...EVENING, to: EVENING.from } }, /no such session/],
      [{ wind: variable }, /not known or variable/],
      [{ wind: { windFromDeg: 90, windSpeedMps: null } }, /not known/],
      [{ air: null, airWhy: "grid too coarse" }, /grid too coarse/],
    ];
    for (const [change, reason] of cases) {
      const of = sessionVerdict(asked(90, change));
      expect(of.verdict).toBe("not assessed");
      expect(of.reason).toMatch(reason);
      expect([of.cleanShare, of.sitFrom, of.sitUntil]).toEqual([null, null, null]);
    }
  });

  test("an unknown slope is judged by the general wind alone when it is fresh", () => {
    const of = sessionVerdict(
      asked(90, {
        air: null,
        airWhy: "no slope",
        wind: { windFromDeg: 270, windSpeedMps: 9 },
        site: planeSite(90, { sxDeg: null }),
      }),
    );
    expect(of.verdict).toBe("suits");
  });

  test("calm never suits", () => {
    for (const aspect of [0, 90, 180, 270]) {
      const of = sessionVerdict(asked(aspect, { wind: { windFromDeg: null, windSpeedMps: 0 } }));
      expect(["marginal", "avoid"]).toContain(of.verdict);
      expect(of.cleanShare).toBe(0);
    }
  });

  test("an old forecast never suits longer than a fresh one", () => {
    for (const from of [0, 90, 180, 270]) {
      const wind = { windFromDeg: from, windSpeedMps: 5 };
      const fresh = sessionVerdict(asked(90, { wind }));
      const old = sessionVerdict(asked(90, { wind: { ...wind, isDirectionDoubtful: true } }));
      expect(old.cleanShare ?? 0).toBeLessThanOrEqual(fresh.cleanShare ?? 0);
    }
  });
});

describe("local notes outrank the model", () => {
  test("a note for a phase changes the steps of that phase alone", () => {
    const of = sessionVerdict(asked(270, { localNotes: [note({ phase: "rising", verdict: "avoid" })] }));
    expect(changes(of)[0]).toBe("15:30 avoid");
    expect(changes(of).at(-1)).toMatch(/marginal/);
    expect(of.localNote).toBe(true);
  });

  test("the most specific note wins, then the newest", () => {
    const wide = note({ verdict: "avoid", seenOn: "2026-09-01" });
    const own = note({ session: "evening", windFrom: "W", verdict: "suits" });
    const newer = note({ session: "evening", windFrom: "W", verdict: "marginal", seenOn: "2026-01-01" });
    expect(sessionVerdict(asked(90, { localNotes: [wide, own] })).verdict).toBe("suits");
    expect(sessionVerdict(asked(90, { localNotes: [own, newer, wide] })).verdict).toBe("marginal");
    expect(sessionVerdict(asked(90, { localNotes: [wide] })).verdict).toBe("avoid");
  });

  test("a note that the air turns half an hour later moves the sit by as much, and keeps its range", () => {
    const plain = sessionVerdict(asked(90));
    const moved = sessionVerdict(
      asked(90, { localNotes: [note({ session: "evening", turnsAt: octoberAt("18:09") })] }),
    );
    const later = (a: Date | null | undefined, b: Date | null | undefined): number =>
      ((a?.getTime() ?? 0) - (b?.getTime() ?? 0)) / 60_000;
    // The plain run turns at 17:39: half an hour later by the note.
    expect(later(moved.sitFrom, plain.sitFrom)).toBeGreaterThanOrEqual(25);
    expect(later(moved.sitFrom, plain.sitFrom)).toBeLessThanOrEqual(35);
    const width = (of: SessionVerdict): number => later(of.sitFromRange?.[1], of.sitFromRange?.[0]);
    expect(Math.abs(width(moved) - width(plain))).toBeLessThanOrEqual(10);
    expect(moved.localNote).toBe(true);
  });
});
