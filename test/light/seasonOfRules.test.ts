import { describe, expect, test } from "vitest";
import { shootingLight } from "../../scripts/light/shootingLight.ts";
import { civilAt } from "../../scripts/time/civilTime.ts";
import { clock, request, rule, span, sun } from "./shootingRules.ts";

// Rules of two invented areas at real coordinates. The expected clocks were worked out apart from this code, before it,
// and are given as "about": 2 minutes either way.
const toleranceMin = 2;

const minutes = (clockText: string) => Number(clockText.slice(0, 2)) * 60 + Number(clockText.slice(3));

const bow = rule({
  id: "bow",
  source: { citation: "invented", checkedOn: "2027-09-20", status: "confirmed" },
  valid: { from: "2027-10-02", to: "2027-12-05" },
  applies: { method: ["bow"] },
  windows: [span(sun("sunrise", -30), sun("sunset", 30))],
});
const rifle = rule({
  id: "rifle",
  source: { citation: "invented", checkedOn: "2026-08-11", status: "confirmed" },
  valid: { from: "2027-11-13", to: "2027-12-05" },
  applies: { method: ["rifle"], closedWeekdays: ["sun"] },
  windows: [span(sun("sunrise", -30), sun("sunset"))],
});
const noShotAfter = rule({
  id: "no-shot-after",
  valid: { from: "2027-09-01", to: "2027-12-31" },
  source: { citation: "invented", checkedOn: "2027-09-01", status: "confirmed" },
  windows: [span({ anchor: "none" }, clock("18:15"))],
});
const permit = rule({
  id: "permit",
  source: { citation: "invented", checkedOn: "2027-02-20", status: "confirmed" },
  valid: { from: "2027-03-01", to: "2027-05-31" },
  reading: "forbidden",
  windows: [span(sun("sunset", 30), sun("sunrise", -30))],
});
const club = rule({
  id: "club",
  source: { citation: "invented", checkedOn: "2027-02-20", status: "confirmed" },
  valid: { from: "2027-03-01", to: "2027-05-31" },
  windows: [span({ anchor: "none" }, sun("sunset", 15))],
});

function on(localDate: string, method: "bow" | "rifle") {
  const other = {
    localDate,
    method,
    timezone: "America/New_York",
    sitePosition: { lat: 41.4263, lon: -77.8482 },
  };
  return shootingLight(request({ law: [bow, rifle], landRule: [noShotAfter] }, other));
}

describe("autumn at 41 N, clocks go back on 7 November 2027", () => {
  const clockOf = (at: Date | null) => civilAt(at!, "America/New_York").clock;

  test.each(["2027-11-05", "2027-11-06"])("on %s the land rule ends the day at 18:15", (localDate) => {
    const found = on(localDate, "bow");
    expect([clockOf(found.end), found.endLayer, found.startLayer]).toEqual(["18:15", "landRule", "law"]);
  });

  test("after the clock change the law ends it at about 17:29", () => {
    const found = on("2027-11-07", "bow");
    expect(found.endLayer).toBe("law");
    expect(Math.abs(minutes(clockOf(found.end)) - minutes("17:29"))).toBeLessThanOrEqual(toleranceMin);
  });

  test("on 13 November rifles have about 06:28 to 16:53, by a rule marked as old", () => {
    const found = on("2027-11-13", "rifle");
    expect(Math.abs(minutes(clockOf(found.start)) - minutes("06:28"))).toBeLessThanOrEqual(toleranceMin);
    expect(Math.abs(minutes(clockOf(found.end)) - minutes("16:53"))).toBeLessThanOrEqual(toleranceMin);
    expect(found.notes).toEqual(["Old: rule rifle was last checked on 2026-08-11, over 12 months before."]);
  });

  test("Sunday the 14th is closed to rifles and open to bows", () => {
    expect(on("2027-11-14", "rifle").why.start).toBe("No legal shooting time: rule rifle closes Sundays.");
    expect(on("2027-11-14", "bow").start).not.toBeNull();
  });

  test("before the rifle rule is valid the hours are not entered for rifles", () => {
    expect(on("2027-11-07", "rifle").status).toBe("not entered");
  });
});

describe("a permit worded as a forbidden night at 43 S, clocks go back on 4 April 2027", () => {
  const clockOf = (at: Date | null) => civilAt(at!, "Pacific/Auckland").clock;
  test.each([
    { localDate: "2027-04-03", start: "07:20", end: "19:35" },
    { localDate: "2027-04-04", start: "06:21", end: "18:33" },
  ])("$localDate is open from about $start to $end, the club sets the end", ({ localDate, start, end }) => {
    const other = { localDate, timezone: "Pacific/Auckland", sitePosition: { lat: -42.699, lon: 172.1232 } };
    const found = shootingLight(request({ law: [permit], clubRule: [club] }, other));
    expect(Math.abs(minutes(clockOf(found.start)) - minutes(start))).toBeLessThanOrEqual(toleranceMin);
    expect(Math.abs(minutes(clockOf(found.end)) - minutes(end))).toBeLessThanOrEqual(toleranceMin);
    expect([found.startLayer, found.endLayer]).toEqual(["law", "clubRule"]);
  });
});
