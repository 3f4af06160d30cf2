import { describe, expect, test } from "vitest";
import { cameraFiles } from "../../scripts/demo/cameraFiles.ts";
import { demoAreas } from "../../scripts/demo/demoAreas.ts";
import { localFrame } from "../../scripts/demo/localFrame.ts";
import { windRecord } from "../../scripts/demo/windRecord.ts";

const [hollow, range] = demoAreas;

function tableOf(area: (typeof demoAreas)[number], id: string): string[] {
  const camera = area.cameras.find((one) => one.id === id)!;
  const { table } = cameraFiles(camera, area.timezone, localFrame(area.corner));
  return table.trim().split("\n").slice(1);
}

describe("cameras", () => {
  test.each([
    { area: hollow!, id: "upper-bench-camera", visits: 56 },
    { area: hollow!, id: "orchard-camera", visits: 6 },
    { area: hollow!, id: "gap-camera", visits: 38 },
    { area: hollow!, id: "gully-camera", visits: 59 },
    { area: hollow!, id: "landing-west-camera", visits: 38 },
    { area: hollow!, id: "landing-east-camera", visits: 18 },
    { area: range!, id: "warm-foot-camera", visits: 55 },
    { area: range!, id: "wallow-camera", visits: 53 },
    { area: range!, id: "saddle-camera", visits: 6 },
    { area: range!, id: "forks-camera", visits: 28 },
    { area: range!, id: "flat-west-camera", visits: 34 },
    { area: range!, id: "flat-east-camera", visits: 32 },
  ])("$id saw $visits visits, in order of time", ({ area, id, visits }) => {
    const rows = tableOf(area, id);
    expect(rows).toHaveLength(visits);
    const times = rows.map((row) => row.split(",")[0]!);
    expect(times).toEqual(times.toSorted());
  });

  test("spread visit k of n in hour h over day (7k + 3h) mod 34 and minute 60(k + 1/2)/n", () => {
    // visit 1 of 2 at 05: day (7 + 15) mod 34 = 22 after 1 October, minute 45
    expect(tableOf(hollow!, "upper-bench-camera")).toContain("2027-10-23T05:45:00,white-tailed deer,buck,1,");
  });

  test("a clock an hour slow reads an hour early, one an hour fast an hour late", () => {
    const hours = (rows: string[]) => [...new Set(rows.map((row) => row.slice(11, 13)))].sort();
    expect(hours(tableOf(hollow!, "landing-east-camera"))).toEqual([
      "05",
      "06",
      "14",
      "15",
      "16",
      "17",
      "18",
    ]);
    expect(hours(tableOf(range!, "flat-east-camera"))).toEqual(["08", "09", "10", "19", "20", "21"]);
  });
});

describe("wind records", () => {
  const rows = windRecord(hollow!.wind, hollow!.timezone)
    .trim()
    .split("\n")
    .slice(1)
    .map((row) => row.split(","));

  test("have an hour a row, about 1 in 100 missing, over two autumns", () => {
    const hours = 2 * 91 * 24 + 2; // two autumns of 91 days; each has one clock change back, whose extra hour is not kept
    expect(rows.length).toBeGreaterThan(0.985 * hours);
    expect(rows.length).toBeLessThan(0.995 * hours);
  });

  test("blow from S and SSE on about 15 in 100 hours, and are calm on 30 in 100 of the hours 04 to 07", () => {
    const southerly = rows.filter(([, from]) => from === "180" || from === "157.5").length / rows.length;
    expect(southerly).toBeGreaterThan(0.13);
    expect(southerly).toBeLessThan(0.16);
    const early = rows.filter(([at]) => /T0[4-7]/.test(at!));
    const calm = early.filter(([, , speed]) => speed === "0").length / early.length;
    expect(calm).toBeCloseTo(0.3, 1);
    expect(rows.filter(([, , speed]) => speed === "0").every(([, from]) => from === "")).toBe(true);
  });
});
