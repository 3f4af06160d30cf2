import { beforeAll, describe, expect, test } from "vitest";
import { modelConstants } from "../../scripts/air/modelConstants.ts";
import { type WindTableRow, windTableRows } from "../../scripts/air/windTableRows.ts";
import { airOfDay } from "../../scripts/briefing/siteAir.ts";
import { type SiteGround, siteGround, slopeSite } from "../../scripts/briefing/siteGround.ts";
import { sunTablesOf } from "../../scripts/briefing/sunTables.ts";
import { normalizeDeg } from "../../scripts/geo/bearings.ts";
import { endOfDay, startOfDay } from "../../scripts/time/civilTime.ts";
import { demoLoaded } from "./demoJudgement.ts";

// "Sit off to the side of the deer's way, not above it or below it": common practice, no source. It is asked here of the ground
// of every sloping demonstration site, with an approach of 40 degrees laid below, above and to both sides of it.
type Side = "below" | "above" | "left" | "right";
const TURN: Record<Side, number> = { below: 0, right: 90, above: 180, left: 270 };
interface Laid {
  name: string;
  rows: Map<Side, WindTableRow[]>;
}
const sites: Laid[] = [];

beforeAll(async () => {
  const { areas, shared } = await demoLoaded();
  const constants = modelConstants(shared.model);
  for (const { content, ground } of areas.values()) {
    const { timezone, centre } = content.facts;
    const localDate = content.trips[0]!.facts.from;
    const sunOf = sunTablesOf(centre, timezone, constants);
    for (const site of content.sites) {
      const on: SiteGround = siteGround(site, ground, null, constants);
      const { site: slope } = slopeSite(site, on);
      if (slope === null || slope.landform !== "slope" || slope.aspectDeg === null || slope.slopeDeg! < 8)
        continue;
      const aspectDeg = slope.aspectDeg;
      const air = airOfDay(slope, localDate, timezone, [], sunOf, constants);
      const rows = new Map(
        (Object.keys(TURN) as Side[]).map((side) => {
          const middle = aspectDeg + TURN[side];
          const approach = {
            id: side,
            bearingsDeg: [normalizeDeg(middle - 20), normalizeDeg(middle + 20)] as const,
            distanceM: [30, 200] as const,
            use: 1,
          };
          const session = {
            session: "day",
            from: startOfDay(localDate, timezone),
            to: endOfDay(localDate, timezone),
            approaches: [approach],
          };
          const question = { site: slope, air, airWhy: null, sessions: [session], localNotes: [], constants };
          return [side, windTableRows(question)] as const;
        }),
      );
      sites.push({ name: site.facts.name, rows });
    }
  }
}, 60_000);

function suitsCount({ rows }: Laid, side: Side, phase: WindTableRow["phase"]): number {
  return rows
    .get(side)!
    .filter((row) => row.class === "light" && row.phase === phase && row.verdict === "suits").length;
}

describe("in light wind from any of 16 directions, on the ground of both demonstration areas", () => {
  test("there are sloping sites to ask in plenty", () => {
    expect(sites.length).toBeGreaterThanOrEqual(10);
  });

  test("a site straight above the deer's way suits in no wind while the air falls", () => {
    expect(sites.filter((site) => suitsCount(site, "below", "falling") > 0).map(({ name }) => name)).toEqual(
      [],
    );
  });

  test("a site straight below it suits in no wind while the air rises", () => {
    expect(sites.filter((site) => suitsCount(site, "above", "rising") > 0).map(({ name }) => name)).toEqual(
      [],
    );
  });

  test("a site off to a side suits in some winds in both phases", () => {
    for (const site of sites) {
      for (const side of ["left", "right"] as const) {
        expect(suitsCount(site, side, "falling"), `${site.name}, ${side}, falling`).toBeGreaterThan(0);
        expect(suitsCount(site, side, "rising"), `${site.name}, ${side}, rising`).toBeGreaterThan(0);
      }
    }
  });
});
