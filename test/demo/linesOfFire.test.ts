import { beforeAll, describe, expect, test } from "vitest";
import { composeHelicopterSpot } from "../../scripts/briefing/composeHelicopterSpot.ts";
import { packContext } from "../../scripts/briefing/composePack.ts";
import { type SiteShooting, siteShooting } from "../../scripts/briefing/composeShooting.ts";
import type { PackContext } from "../../scripts/briefing/packContext.ts";
import { siteMapChecks } from "../../scripts/briefing/siteMapChecks.ts";
import { cardWeapon, type Firearm } from "../../scripts/briefing/siteWeapon.ts";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { partySeparation, type TakenSeat } from "../../scripts/safety/partySeparation.ts";
import { safetyLimits } from "../../scripts/safety/safetyLimits.ts";
import { OPTIONS } from "../briefing/composedAreas.ts";
import { demoLoaded } from "./demoJudgement.ts";

// What lanes, seats and spots of the demonstration areas must teach. Distances to 15 %: the ground is carved.
let contexts: Map<string, PackContext>;

beforeAll(async () => {
  const { areas, shared } = await demoLoaded();
  contexts = new Map([...areas].map(([id, area]) => [id, packContext(area, shared, OPTIONS)]));
}, 60_000);

const A1 = "turnpail-hollow";
const A2 = "brackwether-range";
const contextOf = (area: string) => contexts.get(area)!;
const siteOf = (area: string, id: string) =>
  contextOf(area).area.content.sites.find((site) => site.id === id)!;
const weaponOf = (area: string, id: string): Firearm =>
  contextOf(area).shared.firearms.find((firearm) => firearm.id === id)!;

function shooting(area: string, site: string, weapon = "rifle"): SiteShooting {
  return siteShooting(siteOf(area, site), contextOf(area), weaponOf(area, weapon));
}

/** The grounds of a lane at one range, each once. */
function grounds(area: string, site: string, lane: string, rangeM: number): Set<string> {
  const lines = shooting(area, site).lines!.filter((line) => line.lane === lane);
  return new Set(
    lines.flatMap(({ ranges }) => ranges.filter((one) => one.rangeM === rangeM).map(({ ground }) => ground)),
  );
}

describe("Turnpail Hollow", () => {
  test("cards are made for the rifle, which reaches farthest of what is carried", () => {
    const { area, trips, shared } = contextOf(A1);
    expect(cardWeapon(area.content, trips, shared.firearms)?.id).toBe("rifle");
    const bowTrip = trips.filter(({ id }) => id === "bow-clock-change");
    expect(cardWeapon(area.content, bowTrip, shared.firearms)?.id).toBe("bow");
  });

  test("Landing East has earth behind its lane over the middle of the clearing and none on the far lip", () => {
    for (const rangeM of [75, 100, 125])
      expect(grounds(A1, "landing-east", "A", rangeM)).toEqual(new Set(["earth"]));
    const onLip = grounds(A1, "landing-east", "A", 190);
    expect(onLip).toContain("none");
    expect(onLip).not.toContain("earth");
  });

  test("Landing West's long lane has far ground only, some 180 m behind", () => {
    const lines = shooting(A1, "landing-west").lines!.filter(({ lane }) => lane === "B");
    expect(new Set(lines.map(({ worst }) => worst.ground))).toEqual(new Set(["far"]));
    const atEnd = lines.map(({ ranges }) => ranges.at(-1)!);
    expect(new Set(atEnd.map(({ rangeM }) => rangeM))).toEqual(new Set([180]));
    for (const { beyondM } of atEnd) expect(Math.abs(beyondM! - 180)).toBeLessThan(27);
  });

  test("Hatch Gap's lane to the south has far ground only", () => {
    expect(grounds(A1, "hatch-gap", "B", 80)).toEqual(new Set(["far"]));
  });

  test("in bow season Orchard Corner and Landing East have no lane that ends within 30 m", () => {
    const { laneLimitM } = weaponOf(A1, "bow");
    const without = contextOf(A1).area.content.sites.filter(
      ({ facts }) => !facts.lanes.some(({ maxRangeM }) => maxRangeM <= laneLimitM),
    );
    expect(without.map(({ id }) => id)).toEqual(["orchard-corner", "landing-east"]);
  });

  test("Landing West and Landing East lie in each other's lanes and are refused together with rifles", () => {
    const found = pair(A1, "landing-west", "landing-east");
    expect(found.result).toBe("STOP");
    expect(found.text).toMatch(
      /Landing East lies in lane . of Landing West; Landing West lies in lane . of Landing East/,
    );
    expect(Math.round(distance(A1, "landing-west", "landing-east"))).toBe(345); // figure of the demonstration
  });

  test("the helicopter spot is OK, near the limit of slope", () => {
    const spot = composeHelicopterSpot(contextOf(A1))!;
    expect(spot.result).toBe("OK");
    expect(spot.inputs.slopeDeg).toBeGreaterThan(4);
  });
});

describe("Brackwether Range", () => {
  test("Warm Top's lanes have no backstop: next earth lies about 470 and 890 m on", () => {
    const ends = ["A", "B"].map((lane) => {
      const lines = shooting(A2, "warm-top").lines!.filter((line) => line.lane === lane);
      const middle = lines[Math.floor(lines.length / 2)]!;
      return { ground: middle.worst.ground, fromSeatM: middle.worst.rangeM + middle.worst.beyondM! };
    });
    expect(ends.map(({ ground }) => ground)).toEqual(["none", "none"]);
    // figures of the demonstration, from the seat for the first and from the animal for the second
    expect(Math.abs(ends[0]!.fromSeatM - 470)).toBeLessThan(70);
    expect(Math.abs(ends[1]!.fromSeatM - 150 - 890)).toBeLessThan(130);
  });

  test("Wallow Side's lane has far ground only", () => {
    const lines = shooting(A2, "wallow-side").lines!;
    expect(new Set(lines.map(({ worst }) => worst.ground))).toEqual(new Set(["far"]));
  });

  test("lanes over the flat are cut to the limit of the rifle", () => {
    for (const site of ["flat-west", "flat-east"]) {
      expect(shooting(A2, site).lines![0]!.ranges.at(-1)!.rangeM).toBe(200);
    }
  });

  test("Flat West and Flat East face each other and are refused together", () => {
    expect(Math.round(distance(A2, "flat-west", "flat-east"))).toBe(334); // figure of the demonstration
    expect(pair(A2, "flat-west", "flat-east").result).toBe("STOP");
  });

  test("the helicopter spot is a CAUTION by its slope", () => {
    expect(composeHelicopterSpot(contextOf(A2))).toMatchObject({ result: "CAUTION" });
  });
});

describe.each([A1, A2])("every site of %s", (area) => {
  test("is inside the boundary and keeps its set-backs", () => {
    const { content } = contextOf(area).area;
    const checks = content.sites.flatMap((site) =>
      siteMapChecks(site, shooting(area, site.id), contextOf(area)),
    );
    expect(checks.filter(({ id, result }) => (id === "C2" || id === "C30") && result !== "OK")).toEqual([]);
    expect(checks.filter(({ id }) => id === "C2")).toHaveLength(content.sites.length);
  });

  test("gains nothing when nobody has seen its lanes", () => {
    const context = contextOf(area);
    const rank = { OK: 0, CAUTION: 1, "NOT CHECKED": 1, STOP: 2 };
    for (const site of context.area.content.sites) {
      const lanes = site.facts.lanes.map((lane) => ({ ...lane, seenOnGround: null }));
      const unseen = { ...site, facts: { ...site.facts, lanes } };
      const [before, after] = [site, unseen].map((one) => {
        const found = siteShooting(one, context, weaponOf(area, "rifle"));
        return { closed: found.closed!, checks: siteMapChecks(one, found, context) };
      }) as [Seen, Seen];
      expect(closedDegrees(after.closed)).toBeGreaterThanOrEqual(closedDegrees(before.closed));
      expect(after.closed.leftToBackstop).toEqual([]);
      after.checks.forEach((check, at) => {
        expect(rank[check.result]).toBeGreaterThanOrEqual(rank[before.checks[at]!.result]);
      });
      expect(after.checks.filter(({ id, result }) => id === "C4" && result === "OK")).toEqual([]);
    }
  });
});

interface Seen {
  closed: NonNullable<SiteShooting["closed"]>;
  checks: ReturnType<typeof siteMapChecks>;
}

function closedDegrees({ merged }: Seen["closed"]): number {
  return merged.reduce((sum, { fromDeg, toDeg }) => sum + ((toDeg - fromDeg + 360) % 360), 0);
}

function distance(area: string, a: string, b: string): number {
  return distanceAndBearing(siteOf(area, a).facts.position, siteOf(area, b).facts.position).distanceM;
}

function pair(area: string, a: string, b: string) {
  const { shared } = contextOf(area);
  const seats = [a, b].map((id): TakenSeat => {
    const { facts } = siteOf(area, id);
    return {
      hunterId: id,
      hunterName: id,
      siteId: id,
      siteName: facts.name,
      position: facts.position,
      lanes: facts.lanes,
      dangerM: weaponOf(area, "rifle").dangerM,
      isFirearm: true,
    };
  });
  return partySeparation(seats, () => false, 50, safetyLimits(shared.model))[0]!;
}
