import { describe, expect, test } from "vitest";
import { darkWalk } from "../../scripts/safety/darkWalk.ts";
import { factAge } from "../../scripts/safety/factAge.ts";
import { hoursAwake } from "../../scripts/safety/hoursAwake.ts";
import { leaveAt, leaveTime } from "../../scripts/safety/leaveTime.ts";
import { type OverduePlan, overdue, overdueTimes } from "../../scripts/safety/overdue.ts";
import { startDown, startDownAt } from "../../scripts/safety/startDown.ts";
import { limits } from "./limits.ts";

const at = (clock: string, day = "2026-11-06") => new Date(`${day}T${clock}:00Z`);
const zone = { subject: "a", timezone: "UTC" };

describe("C12, dark minutes of the walk", () => {
  const dark = (darkInMin: number | null, darkOutMin: number | null, isAlone: boolean | null) =>
    darkWalk({ subject: "a", darkInMin, darkOutMin, isAlone }, limits).result;

  test("45 min alone is the limit on either way; together there is none", () => {
    expect(dark(45, 45, true)).toBe("OK");
    expect(dark(46, 0, true)).toBe("CAUTION");
    expect(dark(0, 46, true)).toBe("CAUTION");
    expect(dark(90, 90, false)).toBe("OK");
  });

  test("unknown minutes are not checked; over 45 min the company has to be known", () => {
    expect(dark(null, 10, false)).toBe("NOT CHECKED");
    expect(dark(null, 50, true)).toBe("CAUTION");
    expect(dark(50, 10, null)).toBe("NOT CHECKED");
    expect(dark(10, 10, null)).toBe("OK");
  });
});

describe("C13, leaving time", () => {
  // Worked example of the trade (common practice, no source): walk 74 min, settle 10, set up 20, cool down 10, pack up 10.
  const minutes = { packUpMin: 10, walkMin: 74, coolDownMin: 10, setUpMin: 20, settleMin: 10 };
  const leave = (other: Partial<Parameters<typeof leaveTime>[0]> = {}) =>
    leaveTime({ ...zone, localDate: "2026-11-06", settledAt: at("16:30"), minutes, backAt: null, ...other });

  test("to be still at 16:30 one leaves at 14:26", () => {
    expect(leaveAt(at("16:30"), minutes)).toEqual(at("14:26"));
    expect(leave()).toMatchObject({
      result: "OK",
      text: "Leave by 14:26 to be still at 16:30: 124 min.",
      inputs: { leaveAt: "2026-11-06T14:26:00+00:00" },
    });
  });

  test("midnight is still the day, a minute before is not", () => {
    expect(leave({ settledAt: at("02:04") }).result).toBe("OK");
    expect(leave({ settledAt: at("02:03") })).toMatchObject({
      result: "CAUTION",
      text: "Leave by 23:59 to be still at 02:03: 124 min; that is before midnight.",
    });
  });

  test("a start before the way back from the last sit can not be kept", () => {
    expect(leave({ backAt: at("14:26") }).result).toBe("OK");
    expect(leave({ backAt: at("14:27") }).result).toBe("CAUTION");
  });

  test("a part that is not known leaves the time open and is named", () => {
    expect(leave({ minutes: { ...minutes, walkMin: null } })).toMatchObject({
      result: "NOT CHECKED",
      text: "Leaving time not known: walk not known.",
    });
    expect(leave({ settledAt: null }).result).toBe("NOT CHECKED");
    expect(leaveAt(at("16:30"), { ...minutes, setUpMin: null })).toBeNull();
  });
});

describe("C14, start down", () => {
  const down = (other: Partial<Parameters<typeof startDown>[0]> = {}) =>
    startDown(
      {
        ...zone,
        legalEnd: at("17:18"),
        ownLimit: null,
        marginMin: 0,
        walkOutMin: 130,
        darkOutMin: 110,
        ...other,
      },
      limits,
    );

  test("the earlier of legal light and own limit, less the margin", () => {
    expect(startDownAt(at("17:18"), at("17:00"), 5)).toEqual(at("16:55"));
    expect(startDownAt(at("17:18"), at("17:30"), 0)).toEqual(at("17:18"));
    expect(startDownAt(null, at("17:30"), 0)).toEqual(at("17:30"));
    expect(startDownAt(null, null, 0)).toBeNull();
  });

  test("two hours of dark walk-out are the limit", () => {
    expect(down({ darkOutMin: 120 }).result).toBe("OK");
    expect(down({ darkOutMin: 121 }).result).toBe("CAUTION");
    expect(down().text).toBe("Start down by 17:18; walk-out 130 min, 110 of it dark.");
  });

  test("without legal hours or the walk-out it is not checked", () => {
    expect(down({ legalEnd: null, ownLimit: at("17:00") })).toMatchObject({
      result: "NOT CHECKED",
      text: "Start down by 17:00; legal hours not confirmed; walk-out 130 min, 110 of it dark.",
    });
    expect(down({ walkOutMin: null }).result).toBe("NOT CHECKED");
    expect(down({ darkOutMin: null }).result).toBe("NOT CHECKED");
  });
});

describe("C15, overdue", () => {
  const plan: OverduePlan = { outAt: at("18:00"), isAlone: false, askAfterMin: null, callAfterMin: null };
  const late = (other: Partial<OverduePlan> = {}) => overdue({ ...zone, ...plan, ...other }, limits);

  test("together one asks after 1 h and calls after 3, alone after half and one and a half", () => {
    expect(late().text).toBe("Out by 18:00, start asking at 19:00, call for help at 21:00.");
    expect(late({ isAlone: true }).text).toBe("Out by 18:00, start asking at 18:30, call for help at 19:30.");
  });

  test("the owner's minutes win", () => {
    expect(overdueTimes({ ...plan, askAfterMin: 20, callAfterMin: 45 }, limits)).toEqual({
      askAt: at("18:20"),
      callAt: at("18:45"),
    });
  });

  test("not knowing whether alone takes the shorter times and is not checked", () => {
    expect(late({ isAlone: null })).toMatchObject({
      result: "NOT CHECKED",
      inputs: { askAt: "2026-11-06T18:30:00+00:00" },
    });
  });

  test("a call that does not come after the asking is a caution", () => {
    expect(late({ askAfterMin: 60, callAfterMin: 60 }).result).toBe("CAUTION");
    expect(late({ askAfterMin: 60, callAfterMin: 61 }).result).toBe("OK");
  });

  test("without a time out there are no times", () => {
    expect(late({ outAt: null })).toMatchObject({
      result: "NOT CHECKED",
      inputs: { askAt: null, callAt: null },
    });
  });
});

describe("C19, hours awake", () => {
  const awake = (wakeAt: Date | null, downAt: Date | null) => hoursAwake({ ...zone, wakeAt, downAt }, limits);
  test.each([
    { down: "19:00", result: "OK" },
    { down: "19:01", result: "CAUTION" },
    { down: "21:00", result: "CAUTION" },
    { down: "21:01", result: "STOP" },
  ])("up at 04:00 and down at $down is $result", ({ down, result }) =>
    expect(awake(at("04:00"), at(down)).result).toBe(result),
  );

  test("a missing or impossible time is not checked", () => {
    expect(awake(null, at("19:00")).result).toBe("NOT CHECKED");
    expect(awake(at("04:00"), null).result).toBe("NOT CHECKED");
    expect(awake(at("19:00"), at("04:00"))).toMatchObject({
      result: "NOT CHECKED",
      text: "Hours awake not known: down before waking.",
    });
  });
});

describe("C26, age of a fact", () => {
  const age = (checkedOn: string | null, shownOn: string) =>
    factAge({ subject: "rule", checkedOn, shownOn }, limits);
  test.each([
    { checkedOn: "2026-02-20", shownOn: "2027-02-20", result: "OK" },
    { checkedOn: "2026-02-20", shownOn: "2027-02-21", result: "CAUTION" },
    { checkedOn: "2024-02-29", shownOn: "2025-02-28", result: "OK" },
    { checkedOn: "2024-02-29", shownOn: "2025-03-01", result: "CAUTION" },
    { checkedOn: "2026-12-31", shownOn: "2026-03-01", result: "OK" },
  ])("checked $checkedOn is $result on $shownOn", ({ checkedOn, shownOn, result }) =>
    expect(age(checkedOn, shownOn).result).toBe(result),
  );

  test("a fact without a date is not checked", () =>
    expect(age(null, "2026-02-20").result).toBe("NOT CHECKED"));
});
