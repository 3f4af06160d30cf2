import { Body, Observer, SearchRiseSet } from "astronomy-engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shootingLight } from "../../scripts/light/shootingLight.ts";
import { checkDay, clock, hours, request, rule, span, sun } from "./shootingRules.ts";

const halfHour = rule({ id: "half-hour", windows: [span(sun("sunrise", -30), sun("sunset", 30))] });

// Sunrise 06:42:31, sunset 17:18:10. The windows are worked by hand from each rule: start up, end down, whole minutes.
const worked = [
  {
    words: "half an hour before sunrise to half an hour after sunset",
    rules: [halfHour],
    open: "06:13-17:48",
  },
  {
    words: "half an hour before sunrise to sunset",
    rules: [rule({ windows: [span(sun("sunrise", -30), sun("sunset"))] })],
    open: "06:13-17:18",
  },
  {
    words: "night forbidden, an hour after sunset to an hour before sunrise",
    rules: [rule({ reading: "forbidden", windows: [span(sun("sunset", 60), sun("sunrise", -60))] })],
    open: "05:43-18:18",
  },
  {
    words: "night forbidden, 90 min after sunset to 90 min before sunrise",
    rules: [rule({ reading: "forbidden", windows: [span(sun("sunset", 90), sun("sunrise", -90))] })],
    open: "05:13-18:48",
  },
  {
    words: "an hour before sunrise to sunset",
    rules: [rule({ windows: [span(sun("sunrise", -60), sun("sunset"))] })],
    open: "05:43-17:18",
  },
  {
    words: "sunrise to sunset",
    rules: [rule({ windows: [span(sun("sunrise"), sun("sunset"))] })],
    open: "06:43-17:18",
  },
  {
    words: "half an hour before sunrise to noon",
    rules: [rule({ windows: [span(sun("sunrise", -30), clock("12:00"))] })],
    open: "06:13-12:00",
  },
  {
    words: "a base place plus 12 min, ends 20 min after sunset",
    rules: [
      rule({
        reference: { kind: "basePlus", place: { name: "base", lat: -45, lon: 3 }, minutes: 12 },
        windows: [span(sun("sunrise", -30), sun("sunset", 20))],
      }),
    ],
    open: "06:25-17:50",
  },
  {
    words: "18:00 by the clock to sunset",
    rules: [rule({ windows: [span(clock("18:00"), sun("sunset"))] })],
    open: "",
  },
  {
    words: "all day and night",
    rules: [rule({ windows: [span({ anchor: "none" }, { anchor: "none" })] })],
    open: "00:00-00:00",
  },
  {
    words: "sunset plus 30 but never after 17:40",
    rules: [
      rule({ windows: [span(sun("sunrise"), { anchor: "sunset", offsetMin: 30, notAfter: "17:40" })] }),
    ],
    open: "06:43-17:40",
  },
  {
    words: "sunrise but not before 07:15",
    rules: [rule({ windows: [span({ anchor: "sunrise", notBefore: "07:15" }, sun("sunset"))] })],
    open: "07:15-17:18",
  },
  {
    words: "civil dawn to civil dusk",
    rules: [rule({ windows: [span(sun("civilDawn"), sun("civilDusk"))] })],
    open: "06:15-17:45",
  },
  {
    words: "nautical dawn to solar noon",
    rules: [rule({ windows: [span(sun("nauticalDawn"), sun("solarNoon"))] })],
    open: "05:44-12:00",
  },
  {
    words: "closed over midday",
    rules: [rule({ windows: [span(sun("sunrise"), clock("11:00")), span(clock("14:00"), sun("sunset"))] })],
    open: "06:43-11:00 14:00-17:18",
  },
  {
    words: "forbidden at night and over midday",
    rules: [
      rule({
        reading: "forbidden",
        windows: [span(sun("sunset", 30), sun("sunrise", -30)), span(clock("12:00"), clock("13:00"))],
      }),
    ],
    open: "06:13-12:00 13:00-17:48",
  },
  {
    words: "forbidden from 20:00 to 06:00",
    rules: [rule({ reading: "forbidden", windows: [span(clock("20:00"), clock("06:00"))] })],
    open: "06:00-20:00",
  },
  {
    words: "open from sunset over midnight to sunrise",
    rules: [rule({ windows: [span(sun("sunset"), sun("sunrise"))] })],
    open: "00:00-06:42 17:19-00:00",
  },
  {
    words: "forbidden round the clock",
    rules: [rule({ reading: "forbidden", windows: [span({ anchor: "none" }, { anchor: "none" })] })],
    open: "",
  },
  {
    words: "forbidden between two equal clock times",
    rules: [rule({ reading: "forbidden", windows: [span(clock("06:00"), clock("06:00"))] })],
    open: "",
  },
  {
    words: "allowed between two equal clock times",
    rules: [rule({ windows: [span(clock("06:00"), clock("06:00"))] })],
    open: "",
  },
];

describe("one rule of law on the check day", () => {
  test.each(worked)("$words: $open", ({ rules, open }) => {
    expect(hours({ law: rules })).toBe(open);
  });

  test("the checks cover every worked rule", () => expect(worked.length).toBe(21));
});

test("the landholder's clock sets the end when it is earlier, and is named", () => {
  const landRule = [rule({ id: "out-by", windows: [span({ anchor: "none" }, clock("17:30"))] })];
  const found = shootingLight(request({ law: [halfHour], landRule }), (day) => checkDay(day));
  expect(hours({ law: [halfHour], landRule })).toBe("06:13-17:30");
  expect(found).toMatchObject({
    startLayer: "law",
    endLayer: "landRule",
    ruleIds: ["half-hour", "out-by"],
    status: "confirmed",
    why: {},
  });
});

test("layers that agree name the law", () => {
  const found = shootingLight(
    request({ law: [halfHour], clubRule: [halfHour], ownRule: [halfHour] }),
    (day) => checkDay(day),
  );
  expect(found).toMatchObject({ startLayer: "law", endLayer: "law" });
});

test("18:00 to sunset on a day with an earlier sunset is no window, and says why", () => {
  const found = shootingLight(
    request({ law: [rule({ windows: [span(clock("18:00"), sun("sunset"))] })] }),
    (day) => checkDay(day),
  );
  expect(found).toMatchObject({ start: null, end: null, windows: [], startLayer: null, status: "confirmed" });
  expect(found.why.start).toBe("No legal shooting time: rule rule starts no earlier than it ends that day.");
  expect(Object.keys(found.why).sort()).toEqual(["end", "endLayer", "start", "startLayer"]);
});

describe("which rules apply", () => {
  test("no rule of law leaves the hours not entered, even when the club has one", () => {
    const found = shootingLight(request({ clubRule: [halfHour] }), (day) => checkDay(day));
    expect(found).toMatchObject({ start: null, end: null, status: "not entered", ruleIds: [], windows: [] });
    expect(found.why.start).toBe(
      "Legal hours not confirmed: no rule of law is entered for red deer, rifle, public land on 2026-04-04.",
    );
  });

  test.each([
    { applies: { species: ["wild pig"] } },
    { applies: { method: ["bow"] } },
    { applies: { land: ["private" as const] } },
    { applies: { class: ["hind"] } },
    { applies: { zones: ["north"] } },
  ])("a rule for another hunt is left out: $applies", ({ applies }) => {
    const law = [rule({ applies, windows: halfHour.windows })];
    const asked = request({ law }, { class: "stag", zone: "south" });
    expect(shootingLight(asked, (day) => checkDay(day)).status).toBe("not entered");
  });

  test("capitals and spaces do not part a rule from its hunt", () => {
    expect(hours({ law: [rule({ applies: { species: ["Red Deer "] }, windows: halfHour.windows })] })).toBe(
      "06:13-17:48",
    );
  });

  test("a season may run over the new year, its ends included", () => {
    const law = [
      rule({
        valid: { from: "2025-01-01", to: "2027-12-31" },
        applies: { seasons: [{ from: "11-15", to: "01-31" }] },
        windows: halfHour.windows,
      }),
    ];
    const on = (localDate: string) =>
      shootingLight(request({ law }, { localDate }), (day) => checkDay(day)).status;
    expect(
      ["2026-11-14", "2026-11-15", "2026-12-31", "2027-01-01", "2026-01-31", "2026-02-01"].map(on),
    ).toEqual(["not entered", "confirmed", "confirmed", "confirmed", "confirmed", "not entered"]);
  });

  test("a date outside the rule's season is told apart from no rule", () => {
    const law = [rule({ applies: { seasons: [{ from: "05-01", to: "05-31" }] }, windows: halfHour.windows })];
    expect(shootingLight(request({ law }), (day) => checkDay(day)).notes).toEqual([
      "Rule rule holds only from 05-01 to 05-31.",
    ]);
  });

  test("on the last day of its validity a rule holds, on the next it has lapsed and keeps its times to strike out", () => {
    const law = [rule({ valid: { from: "2026-01-01", to: "2026-04-04" }, windows: halfHour.windows })];
    expect(shootingLight(request({ law }), (day) => checkDay(day)).status).toBe("confirmed");
    const next = shootingLight(request({ law }, { localDate: "2026-04-05" }), (day) => checkDay(day));
    expect(next.status).toBe("lapsed");
    expect(next.start).toEqual(new Date("2026-04-05T06:13:00Z"));
    expect(next.notes).toContain("Rule rule was valid until 2026-04-04: check this year's rule.");
  });

  test("a rule in force takes the place of last year's", () => {
    const lastYear = rule({
      id: "last",
      valid: { from: "2025-01-01", to: "2025-12-31" },
      windows: [span(sun("sunrise"), sun("sunset"))],
    });
    expect(shootingLight(request({ law: [lastYear, halfHour] }), (day) => checkDay(day))).toMatchObject({
      ruleIds: ["half-hour"],
      status: "confirmed",
    });
  });

  test("of lapsed rules the latest is shown", () => {
    const of = (year: number, offsetMin: number) =>
      rule({
        id: `y${year}`,
        valid: { from: `${year}-01-01`, to: `${year}-12-31` },
        windows: [span(sun("sunrise"), sun("sunset", offsetMin))],
      });
    expect(
      shootingLight(request({ law: [of(2024, 0), of(2025, 10)] }), (day) => checkDay(day)).ruleIds,
    ).toEqual(["y2025"]);
  });

  test("a rule not yet valid does not open the day", () => {
    const law = [rule({ valid: { from: "2026-04-05", to: "2026-12-31" }, windows: halfHour.windows })];
    const found = shootingLight(request({ law }), (day) => checkDay(day));
    expect(found.status).toBe("not entered");
    expect(found.notes).toEqual(["Rule rule is valid only from 2026-04-05."]);
  });

  test("a rule for one class narrows the hours but can not confirm them when the class is not known", () => {
    const law = [rule({ applies: { class: ["hind"] }, windows: halfHour.windows })];
    const found = shootingLight(request({ law }), (day) => checkDay(day));
    expect(found.status).toBe("unconfirmed");
    expect(found.notes).toEqual(["Rule rule depends on class, which is not entered here."]);
  });

  test("by the line between two zones the stricter rule holds, and a zone without a rule is not confirmed", () => {
    const north = rule({ id: "north", applies: { zones: ["north"] }, windows: halfHour.windows });
    const south = rule({
      id: "south",
      applies: { zones: ["south"] },
      windows: [span(sun("sunrise"), sun("sunset"))],
    });
    expect(hours({ law: [north, south] }, { zone: "north" })).toBe("06:13-17:48");
    expect(hours({ law: [north, south] }, { zone: ["north", "south"] })).toBe("06:43-17:18");
    expect(
      shootingLight(request({ law: [north] }, { zone: ["north", "south"] }), (day) => checkDay(day)).status,
    ).toBe("unconfirmed");
  });
});

describe("what keeps hours from being confirmed", () => {
  test("a date outside every season", () => {
    const found = shootingLight(request({ law: [halfHour] }, { seasonConfirmed: false }), (day) =>
      checkDay(day),
    );
    expect(found.status).toBe("unconfirmed");
    expect(found.notes).toContain("Season not confirmed for this date.");
  });

  test("a rule whose source nobody confirmed", () => {
    const law = [
      rule({
        source: { citation: "heard", checkedOn: "2026-02-20", status: "unconfirmed" },
        windows: halfHour.windows,
      }),
    ];
    expect(shootingLight(request({ law }), (day) => checkDay(day))).toMatchObject({
      status: "unconfirmed",
      notes: ["Rule rule is not confirmed."],
    });
  });

  test("a lesser layer that has lapsed still narrows the hours and marks them", () => {
    const landRule = [
      rule({
        id: "gate",
        valid: { from: "2025-01-01", to: "2025-12-31" },
        windows: [span({ anchor: "none" }, clock("17:30"))],
      }),
    ];
    expect(hours({ law: [halfHour], landRule })).toBe("06:13-17:30");
    expect(shootingLight(request({ law: [halfHour], landRule }), (day) => checkDay(day)).status).toBe(
      "lapsed",
    );
  });
});

test("a fact checked 12 months ago is not old, a day more is", () => {
  const notesOn = (localDate: string) =>
    shootingLight(
      request(
        { law: [rule({ valid: { from: "2026-01-01", to: "2028-12-31" }, windows: halfHour.windows })] },
        { localDate },
      ),
      (day) => checkDay(day),
    ).notes;
  expect(notesOn("2027-02-20")).toEqual([]);
  expect(notesOn("2027-02-21")).toEqual([
    "Old: rule rule was last checked on 2026-02-20, over 12 months before.",
  ]);
});

test("two rules of law that disagree give what both allow, and a caution that shows both", () => {
  const strict = rule({ id: "strict", windows: [span(sun("sunrise"), sun("sunset", 60))] });
  const found = shootingLight(request({ law: [halfHour, strict] }), (day) => checkDay(day));
  expect(hours({ law: [halfHour, strict] })).toBe("06:43-17:48");
  expect(found.notes).toEqual([
    "CAUTION: rules disagree (half-hour 06:13-17:48, strict 06:43-18:18); only the time that all of them allow is shown.",
  ]);
  expect(found.ruleIds).toEqual(["half-hour", "strict"]);
});

test("two rules of law without common time leave nothing open", () => {
  const early = rule({ id: "early", windows: [span(clock("05:00"), clock("06:00"))] });
  const found = shootingLight(request({ law: [halfHour, early] }), (day) => checkDay(day));
  expect(found.windows).toEqual([]);
  expect(found.why.end).toBe("No legal shooting time: the rules leave no time that all of them allow.");
});

test("a closed weekday and a closed date leave nothing open and say which rule closes them", () => {
  const law = [
    rule({ applies: { closedWeekdays: ["sat"], closedDates: ["2026-04-06"] }, windows: halfHour.windows }),
  ];
  const on = (localDate: string) =>
    shootingLight(request({ law }, { localDate }), (day) => checkDay(day)).why.start;
  expect(on("2026-04-04")).toBe("No legal shooting time: rule rule closes Saturdays."); // 4 April 2026 is a Saturday
  expect(on("2026-04-05")).toBeUndefined();
  expect(on("2026-04-06")).toBe("No legal shooting time: rule rule closes 2026-04-06.");
});

test("a midday closure is open on both sides and said so", () => {
  const law = [
    rule({ windows: [span(sun("sunrise"), clock("11:00")), span(clock("14:00"), sun("sunset"))] }),
  ];
  expect(shootingLight(request({ law }), (day) => checkDay(day)).notes).toEqual([
    "Closed in between: 11:00-14:00.",
  ]);
});

describe("without a sunrise or a sunset", () => {
  const polar = () => ({
    ...checkDay(),
    sunrise: null,
    sunset: null,
    why: { sunrise: "the sun does not rise that day" },
  });
  test.each([
    { reading: "allowed" as const, window: span(sun("sunrise", -30), sun("sunset", 30)) },
    { reading: "forbidden" as const, window: span(sun("sunset", 30), sun("sunrise", -30)) },
  ])("a rule worded as $reading opens nothing and says why", ({ reading, window }) => {
    const found = shootingLight(request({ law: [rule({ reading, windows: [window] })] }), polar);
    expect(found).toMatchObject({ start: null, end: null, windows: [], status: "confirmed" });
    expect(found.why.start).toMatch(
      /^No legal shooting time: (the sun does not rise|there is no sunset) that day\.$/,
    );
  });
});

test("a night of two hours of light stays closed: sunset - 90 to sunrise + 90 forbids the whole day", () => {
  const shortDay = () => ({
    ...checkDay(),
    sunrise: new Date("2026-04-04T11:00:00Z"),
    sunset: new Date("2026-04-04T13:00:00Z"),
  });
  const law = [rule({ reading: "forbidden", windows: [span(sun("sunset", -90), sun("sunrise", 90))] })];
  expect(shootingLight(request({ law }), shortDay).windows).toEqual([]);
});

test("a sunset after midnight keeps the evening whole", () => {
  const lateSun = () => ({ ...checkDay("2026-06-21"), sunset: new Date("2026-06-22T00:10:00Z") });
  const found = shootingLight(request({ law: [halfHour] }, { localDate: "2026-06-21" }), lateSun);
  expect(found.end).toEqual(new Date("2026-06-22T00:40:00Z"));
});

describe("reference place", () => {
  test("a named town is asked for its own sun, and the sheet says so", () => {
    const town = { lat: -46, lon: 1 };
    const asked: unknown[] = [];
    const law = [
      rule({ reference: { kind: "place", name: "Larchtown", ...town }, windows: halfHour.windows }),
    ];
    const found = shootingLight(request({ law }), (day, position) => {
      asked.push(position);
      return checkDay(day);
    });
    expect(asked).toEqual([town]);
    expect(found.notes).toEqual(["Rule rule counts from the sun at Larchtown."]);
  });

  test("minutes of a base place move times of the sun and leave clock times alone", () => {
    const base = { kind: "basePlus" as const, place: { name: "base", lat: 0, lon: 0 }, minutes: -15 };
    expect(hours({ law: [rule({ reference: base, windows: [span(sun("sunrise"), clock("12:00"))] })] })).toBe(
      "06:28-12:00",
    );
  });
});

describe("an official table", () => {
  const table = rule({
    id: "table",
    reference: { kind: "table", file: "hours.csv" },
    windows: [span(sun("sunrise"), sun("sunset"))],
  });
  const tables = {
    "hours.csv": [
      { from: "04-01", to: "04-15", start: "06:00", end: "19:00" },
      { from: "11-16", to: "02-15", start: "07:00", end: "16:45" },
      { localDate: "2026-04-07", start: "06:30", end: "12:00" },
    ],
  };
  test.each([
    { localDate: "2026-04-04", open: "06:00-19:00" },
    { localDate: "2026-04-15", open: "06:00-19:00" },
    { localDate: "2026-04-07", open: "06:30-12:00" },
    { localDate: "2026-12-31", open: "07:00-16:45" },
    { localDate: "2026-02-15", open: "07:00-16:45" },
  ])("beats the computed sun on $localDate: $open", ({ localDate, open }) => {
    expect(hours({ law: [table] }, { tables, localDate })).toBe(open);
    const found = shootingLight(request({ law: [table] }, { tables, localDate }), (day) => checkDay(day));
    expect(found.notes).toContain("Times of rule table are from the official table hours.csv.");
  });

  test("without a row for the date the hours are not confirmed", () => {
    const found = shootingLight(request({ law: [table] }, { tables, localDate: "2026-04-16" }), (day) =>
      checkDay(day),
    );
    expect(found).toMatchObject({ start: null, status: "unconfirmed" });
    expect(found.why.start).toBe(
      "No legal shooting time: table hours.csv of rule table has no row for 2026-04-16.",
    );
  });

  test("that is missing leaves the hours not confirmed", () => {
    expect(shootingLight(request({ law: [table] }), (day) => checkDay(day))).toMatchObject({
      start: null,
      status: "unconfirmed",
    });
  });

  test("rows that overlap give what both allow", () => {
    const twice = {
      "hours.csv": [
        { from: "04-01", to: "04-15", start: "06:00", end: "19:00" },
        { from: "04-04", to: "04-30", start: "06:30", end: "19:30" },
      ],
    };
    expect(hours({ law: [table] }, { tables: twice })).toBe("06:30-19:00");
  });
});

describe("clock changes in Auckland, 4 to 5 April 2026 (03:00 becomes 02:00)", () => {
  const zone = { timezone: "Pacific/Auckland", localDate: "2026-04-05" };
  const noon = () => checkDay("2026-04-05");
  const startOf = (start: ReturnType<typeof clock>, other = zone) =>
    shootingLight(
      request({ law: [rule({ windows: [span(start, { anchor: "none" })] })] }, other),
      noon,
    ).start?.toISOString();

  test("a start in the hour that runs twice takes the second run", () =>
    expect(startOf(clock("02:30"))).toBe("2026-04-04T14:30:00.000Z"));

  test("an end in the hour that runs twice takes the first run", () => {
    const law = [rule({ windows: [span({ anchor: "none" }, clock("02:30"))] })];
    expect(shootingLight(request({ law }, zone), noon).end?.toISOString()).toBe("2026-04-04T13:30:00.000Z");
  });

  test("a forbidden night that ends in the hour that runs twice ends with the second run", () => {
    const law = [rule({ reading: "forbidden", windows: [span({ anchor: "none" }, clock("02:30"))] })];
    expect(shootingLight(request({ law }, zone), noon).start?.toISOString()).toBe("2026-04-04T14:30:00.000Z");
  });

  test("a time that the clock jumps over is the jump", () =>
    expect(startOf(clock("02:30"), { ...zone, localDate: "2026-09-27" })).toBe("2026-09-26T14:00:00.000Z"));

  test("a table in winter time is an hour later on the summer clock", () => {
    const winter = { anchor: "clock" as const, at: "06:00", clock: "standard" as const };
    expect(startOf(winter, { ...zone, localDate: "2026-02-01" })).toBe("2026-01-31T18:00:00.000Z"); // UTC+12
    expect(startOf(winter, { ...zone, localDate: "2026-07-01" })).toBe("2026-06-30T18:00:00.000Z");
  });

  test("a time in summer time is an hour earlier on the winter clock", () => {
    const summer = { anchor: "clock" as const, at: "06:00", clock: "daylight" as const };
    expect(startOf(summer, { ...zone, localDate: "2026-07-01" })).toBe("2026-06-30T17:00:00.000Z"); // UTC+13
  });

  test("a time in summer time means nothing in a zone that keeps none", () => {
    const law = [
      rule({ windows: [span({ anchor: "clock", at: "06:00", clock: "daylight" }, sun("sunset"))] }),
    ];
    expect(shootingLight(request({ law }, { timezone: "UTC" }), noon).start).toBeNull();
  });

  test("an official table in winter time follows the clock its rule names", () => {
    const law = [
      rule({
        reference: { kind: "table", file: "t.csv" },
        windows: [span({ anchor: "clock", at: "00:00", clock: "standard" }, { anchor: "none" })],
      }),
    ];
    const tables = { "t.csv": [{ localDate: "2026-02-01", start: "06:00", end: "17:00" }] };
    const found = shootingLight(request({ law }, { ...zone, localDate: "2026-02-01", tables }), noon);
    expect(found.start?.toISOString()).toBe("2026-01-31T18:00:00.000Z");
  });
});

const ends = fc.record({
  startMin: fc.integer({ min: -120, max: 120 }),
  endMin: fc.integer({ min: -120, max: 120 }),
});

test("a layer more never opens a minute (seeded)", () => {
  fc.assert(
    fc.property(fc.array(ends, { minLength: 1, maxLength: 3 }), ends, (some, more) => {
      const made = (end: { startMin: number; endMin: number }) =>
        rule({ windows: [span(sun("sunrise", end.startMin), sun("sunset", end.endMin))] });
      const before = shootingLight(request({ law: some.map(made) }), (day) => checkDay(day));
      const after = shootingLight(request({ law: some.map(made), ownRule: [made(more)] }), (day) =>
        checkDay(day),
      );
      expect(after.start!.getTime()).toBeGreaterThanOrEqual(before.start!.getTime());
      expect(after.end!.getTime()).toBeLessThanOrEqual(before.end!.getTime());
    }),
    { seed: 20260404, numRuns: 200 },
  );
});

test("allowed wording and the same night forbidden give the same day (seeded)", () => {
  fc.assert(
    fc.property(ends, ({ startMin, endMin }) => {
      const allowed = rule({ windows: [span(sun("sunrise", startMin), sun("sunset", endMin))] });
      const forbidden = rule({
        reading: "forbidden",
        windows: [span(sun("sunset", endMin), sun("sunrise", startMin))],
      });
      expect(hours({ law: [forbidden] })).toBe(hours({ law: [allowed] }));
    }),
    { seed: 20260405, numRuns: 200 },
  );
});

test("a sun that only just sets marks the rule's end with about", () => {
  const grazing = () => ({ ...checkDay(), about: ["sunset" as const, "nauticalDusk" as const] });
  expect(shootingLight(request({ law: [halfHour] }), grazing).notes).toEqual([
    "About: the sun only just passes its angle at sunset of rule half-hour.",
  ]);
});

test("without a sun handed in, the sun of the rule's place is computed, as an almanac library has it", () => {
  const sitePosition = { lat: -45.0312, lon: 168.6626 };
  const asked = request({ law: [halfHour] }, { timezone: "Pacific/Auckland", sitePosition });
  const observer = new Observer(sitePosition.lat, sitePosition.lon, 0);
  const dayStart = new Date("2026-04-03T11:00:00Z"); // 4 April 00:00 in UTC+13
  const almanac = (direction: 1 | -1) =>
    SearchRiseSet(Body.Sun, observer, direction, dayStart, 1)!.date.getTime();
  const minute = 60_000;
  const found = shootingLight(asked);
  expect(found.start?.getTime()).toBe(Math.ceil(almanac(1) / minute - 30) * minute);
  expect(found.end?.getTime()).toBe(Math.floor(almanac(-1) / minute + 30) * minute);
});
