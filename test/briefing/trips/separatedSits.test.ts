import { describe, expect, test } from "vitest";
import { composePack } from "../../../scripts/briefing/composePack.ts";
import type { PackTrip } from "../../../scripts/content/schema/packSchema.ts";
import { destination } from "../../../scripts/geo/geodesic.ts";
import { OPTIONS } from "../composedAreas.ts";
import { SHARED, SLOPING_SITE, smallArea } from "../smallArea.ts";

// Two seats 345 m apart, the second due east of the first; a made-up area.
const DAY = "2026-05-06";
const SEEN = { by: "owner", on: "2026-05-01" };
const kg = { body: 80, clothing: 4, harness: 1.5, pack: 3, weapon: 4, water: 1.5 };

function sessionOf(given: { laneDeg: number | null; firearmId?: string | null; eastM?: number }) {
  const { laneDeg, firearmId = "rifle", eastM = 345 } = given;
  const lanes =
    laneDeg === null
      ? []
      : [{ id: "A", bearingDeg: laneDeg, widthDeg: 8, maxRangeM: 100, seenOnGround: SEEN }];
  const harness = { madeOn: "2025-01", replaceBy: "2030-01", fallen: false };
  const hunter = (id: string) => ({
    id,
    name: id.toUpperCase(),
    standId: null,
    firearmId,
    loadKg: kg,
    handed: null,
    harness,
  });
  const sit = (id: string, site: string) => ({ localDate: DAY, session: "morning", hunter: id, site });
  const area = smallArea({
    sites: [
      { ...SLOPING_SITE, lanes },
      { ...SLOPING_SITE, number: 2, name: "East", position: destination(SLOPING_SITE.position, 90, eastM) },
    ],
    trips: [
      {
        from: DAY,
        to: DAY,
        hunters: [hunter("a"), hunter("b")],
        sits: [sit("a", "site-1"), sit("b", "site-2")],
      },
    ],
  });
  const { pack } = composePack(area, SHARED, OPTIONS);
  const day = (pack.trips as PackTrip[])[0]!.days[0]!;
  return {
    session: day.sessions.find(({ session }) => session === "morning")!,
    checks: day.checks.filter(({ id }) => id === "C24"),
  };
}

describe("two hunters in one session", () => {
  test("of whom the second sits in the lane of the first: he is stopped and has no schedule", () => {
    const { session, checks } = sessionOf({ laneDeg: 90 });
    expect(session.assignment.map(({ hunter, reason }) => [hunter, reason.slice(0, 8)])).toEqual([
      ["a", "written "],
      ["b", "STOP C24"],
    ]);
    expect(new Set(session.schedule.flatMap(({ who }) => who))).toEqual(new Set(["a"]));
    expect(checks).toMatchObject([
      { result: "STOP", subject: "b", inputs: { with: "a", session: "morning" } },
    ]);
  });

  test("with the lane turned away both keep their sits, and closed bearings are a caution", () => {
    const { session, checks } = sessionOf({ laneDeg: 270 });
    expect(session.assignment.map(({ reason }) => reason)).toEqual([
      "written in the trip",
      "written in the trip",
    ]);
    expect(checks).toMatchObject([{ result: "CAUTION" }]);
  });

  test("with bows that do not reach so far are OK, in the lane too", () => {
    expect(sessionOf({ laneDeg: 90, firearmId: "bow" }).checks).toMatchObject([{ result: "OK" }]);
    expect(sessionOf({ laneDeg: 90, firearmId: "bow", eastM: 299 }).checks).toMatchObject([
      { result: "STOP" },
    ]);
  });

  test("with weapons that are not written are NOT CHECKED, in the lane a STOP", () => {
    expect(sessionOf({ laneDeg: null, firearmId: null }).checks).toMatchObject([{ result: "NOT CHECKED" }]);
    expect(sessionOf({ laneDeg: 90, firearmId: null }).checks).toMatchObject([{ result: "STOP" }]);
  });
});
