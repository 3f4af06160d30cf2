import { beforeAll, describe, expect, test } from "vitest";
import type { SiteDetails } from "../../scripts/content/schema/detailsSchema.ts";
import type { PackSite } from "../../scripts/content/schema/packSchema.ts";
import { composed, loadJacksboro } from "./composedAreas.ts";
import { type HandRun, handRuns, type Phase } from "./handAir.ts";
import { type HandCell, handCell } from "./handDrift.ts";

const POINTS = "N NNE NE ENE E ESE SE SSE S SSW SW WSW W WNW NW NNW".split(" ");
const MINUTE_MS = 60_000;
const DAY = "2026-10-14";
const DAY_START = new Date("2026-10-14T04:00:00Z"); // midnight, four hours behind Greenwich
const DAY_END = new Date("2026-10-15T04:00:00Z");
// Legal light of that day closes both sessions inward: 07:34 to 10:00, 15:00 to 18:15 (packJacksboro.test.ts).
const SESSIONS = {
  morning: { fromMs: Date.parse("2026-10-14T11:30:00Z"), toMs: Date.parse("2026-10-14T14:00:00Z") },
  evening: { fromMs: Date.parse("2026-10-14T19:00:00Z"), toMs: Date.parse("2026-10-14T22:15:00Z") },
};

/** Open, edge, timber: the columns of the constants that a site's cover picks. */
const COVERS = {
  open: {
    albedo: 0.23,
    riseLagMin: 5,
    fallLagMin: 15,
    slopeAirCover: 1,
    windCover: 0.35,
    meanderMps: 0.25,
    turbulenceShare: 0.3,
  },
  timber: {
    albedo: 0.15,
    riseLagMin: 20,
    fallLagMin: 25,
    slopeAirCover: 0.45,
    windCover: 0.15,
    meanderMps: 0.15,
    turbulenceShare: 0.4,
  },
};

// The skyline of the pack is seen from the eye, 1.2 and 6.2 m up; the one that shades the ground is from 2 m. The hand takes the
// eye's: the tolerance of the times holds that too.
describe.each([
  { id: "deep-west", cover: "open" as const, approach: { fromDeg: 77, widthDeg: 40, use: 0.8 } },
  { id: "sunrise-face", cover: "timber" as const, approach: { fromDeg: 256, widthDeg: 40, use: 0.8 } },
])("a clear day of $id computed by hand", ({ id, cover, approach }) => {
  let site: PackSite;
  let details: SiteDetails;
  let runs: HandRun[];
  beforeAll(async () => {
    const { areas, ...rest } = await loadJacksboro();
    const [area] = areas;
    const trips = area!.content.trips.map((trip) => {
      const { forecast: _, ...facts } = trip.facts;
      return { ...trip, facts };
    });
    const sites = area!.content.sites.filter((entry) => entry.id === id);
    const whole = composed({ ...rest, areas: [{ ...area!, content: { ...area!.content, sites, trips } }] });
    site = whole.pack.sites![0]!;
    details = whole.details.sites![0]!;
    const ground = {
      position: site.position,
      elevationM: site.elevationM!,
      slopeDeg: site.slopeDeg!,
      aspectDeg: site.aspectDeg!,
      horizonDeg: site.horizon!,
      dayOfYear: 287,
    };
    runs = handRuns(ground, COVERS[cover], DAY_START, DAY_END);
  }, 60_000);

  // 4 min: 2.5 for the 5 min steps of the pack, and 1.5 for an almanac and a skyline of its own.
  test("the phases turn at the same times", () => {
    const spans = site.phases!.find((day) => day.localDate === DAY)!.spans;
    const hand = spansOf(runs[0]!);
    expect(hand.map((span) => span.phase)).toEqual(spans.map((span) => span.phase));
    hand.forEach((span, i) => {
      expect(Math.abs(span.fromMs - Date.parse(spans[i]!.from)) / MINUTE_MS).toBeLessThanOrEqual(4);
    });
  });

  // Ranges are rounded outward to whole steps: up to 5 min wider than by hand, and 3 for sun and skyline of its own (found: 2).
  test("the runs span the same ranges", () => {
    const spans = site.phases!.find((day) => day.localDate === DAY)!.spans;
    const rising = spans.find((span) => span.phase === "rising")!;
    const starts = runs.map((run) => spansOf(run).find((span) => span.phase === "rising")!.fromMs);
    const ends = runs.map((run) => spansOf(run).find((span) => span.phase === "rising")!.toMs);
    for (const [range, times] of [
      [rising.fromRange!, starts],
      [rising.toRange!, ends],
    ] as const) {
      const earlyMin = (Math.min(...times) - Date.parse(range[0])) / MINUTE_MS;
      const lateMin = (Date.parse(range[1]) - Math.max(...times)) / MINUTE_MS;
      for (const widerMin of [earlyMin, lateMin]) {
        expect(widerMin).toBeGreaterThanOrEqual(-3);
        expect(widerMin).toBeLessThanOrEqual(8);
      }
    }
  });

  // 0.002 of a share, 0.01 m/s, 0.5 degrees: phases that differ by a minute put a few of hundreds of steps into another cell, and
  // the pack rounds speeds to 0.01 (found: 0.0004, 0.006 and 0.14).
  test("every cell of the wind table has the same drift, chance and verdict", () => {
    let compared = 0;
    for (const row of site.windTable) {
      const cell = handOf(row);
      if (row.reachShare === null || cell === null) continue;
      const at = `${row.windFrom} ${row.class} ${row.session} ${row.phase}`;
      compared++;
      expect([at, Math.abs(cell.reachShare - row.reachShare) < 0.002]).toEqual([at, true]);
      expect([at, Math.abs(cell.driftSpeedMps - row.driftSpeedMps!) < 0.01]).toEqual([at, true]);
      if (row.driftToDeg !== null) {
        const turn = Math.abs(((cell.driftToDeg - row.driftToDeg + 540) % 360) - 180);
        expect([at, turn < 0.5]).toEqual([at, true]);
      }
      const isNearCut = [0.1, 0.35].some((cut) => Math.abs(cell.reachShare - cut) < 0.002);
      if (!isNearCut) expect([at, cell.verdict]).toEqual([at, row.modelVerdict]);
    }
    expect(compared).toBeGreaterThan(100);
  });

  function handOf(row: PackSite["windTable"][number]): HandCell | null {
    const point = POINTS.indexOf(row.windFrom);
    const openMps = { calm: 0, light: 2, fresh: 6 }[row.class];
    const sxDeg = point < 0 ? 0 : details.sxDeg![point]!;
    const session = SESSIONS[row.session as keyof typeof SESSIONS];
    const exposure = { ...COVERS[cover], aspectDeg: site.aspectDeg! };
    return handCell(
      runs,
      row.phase,
      session,
      { fromDeg: Math.max(0, point) * 22.5, openMps, sxDeg },
      exposure,
      approach,
    );
  }
});

/** The phases of a run from midnight to midnight. */
function spansOf(run: HandRun): { phase: Phase; fromMs: number; toMs: number }[] {
  const spans: { phase: Phase; fromMs: number; toMs: number }[] = [];
  run.phase.forEach((phase, minute) => {
    const fromMs = run.startMs + minute * MINUTE_MS;
    if (fromMs < DAY_START.getTime()) return;
    if (spans.at(-1)?.phase !== phase) spans.push({ phase, fromMs, toMs: fromMs });
    spans.at(-1)!.toMs = fromMs + MINUTE_MS;
  });
  return spans;
}
