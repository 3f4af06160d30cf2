import { describe, expect, test } from "vitest";
import { modelConstants } from "../../scripts/air/modelConstants.ts";
import { composeWalkIns, routeOf } from "../../scripts/briefing/composeWalkIns.ts";
import { mapShapes } from "../../scripts/briefing/mapShapes.ts";
import { destination, distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import type { Position } from "../../scripts/geo/position.ts";
import { SHARED, SLOPING_SITE, smallContent } from "./smallArea.ts";

const SITE: Position = SLOPING_SITE.position;
const CAMP = destination(SITE, 180, 1000);
const constants = modelConstants(SHARED.model);

const lineFeature = (id: string, kind: "walk-in" | "stream", ...points: Position[]) => ({
  type: "Feature" as const,
  geometry: {
    type: "LineString" as const,
    coordinates: points.map(({ lat, lon }): [number, number] => [lon, lat]),
  },
  properties: { id, kind },
});

const areaWith = (walkIn: Record<string, unknown>, features: ReturnType<typeof lineFeature>[] = []) =>
  smallContent({
    facts: { camps: [{ id: "camp", name: "Camp", position: CAMP }] },
    map: features,
    sites: [{ ...SLOPING_SITE, walkIns: [{ id: "way", name: "Way", from: "camp", ...walkIn }] }],
  });

const composedOf = (...given: Parameters<typeof areaWith>) => {
  const area = areaWith(...given);
  return composeWalkIns(area, area.sites[0]!, mapShapes(area.map), null, constants)[0]!;
};
const routeLengthM = (...given: Parameters<typeof areaWith>): number[] => {
  const area = areaWith(...given);
  const route = routeOf(area, area.sites[0]!, area.sites[0]!.facts.walkIns[0]!, mapShapes(area.map))!;
  return route.slice(1).map((point, i) => Math.round(distanceAndBearing(route[i]!, point).distanceM));
};

describe("the route of a walk-in", () => {
  const near = (bearingDeg: number): Position => destination(SITE, bearingDeg, 15);
  test("runs from the camp over the line drawn to the site", () => {
    const drawn = lineFeature("trail", "walk-in", destination(CAMP, 0, 100), destination(SITE, 180, 200));
    expect(routeLengthM({ along: "trail" }, [drawn])).toEqual([100, 700, 200]);
  });

  test("turns a line round that was drawn from the site to the camp", () => {
    const drawn = lineFeature("trail", "walk-in", destination(SITE, 180, 200), destination(CAMP, 0, 100));
    expect(routeLengthM({ along: "trail" }, [drawn])).toEqual([100, 700, 200]);
  });

  test("takes an end within 20 m for the place itself", () => {
    const drawn = lineFeature("trail", "walk-in", destination(CAMP, 90, 15), near(90));
    expect(routeLengthM({ along: "trail" }, [drawn])).toEqual([1000]);
  });

  test("may be a list of positions", () => {
    expect(routeLengthM({ along: [CAMP, destination(SITE, 180, 400), SITE] })).toEqual([600, 400]);
  });

  test("is none where nothing is drawn", () => {
    const area = areaWith({ minutes: [30, 45] });
    expect(routeOf(area, area.sites[0]!, area.sites[0]!.facts.walkIns[0]!, [])).toBeNull();
  });
});

describe("a walk-in as pack.json tells it", () => {
  const along = [CAMP, SITE];
  test("without terrain has its length over the map, and no climb and no minutes", () => {
    const way = composedOf({ along });
    expect(way).toMatchObject({
      lengthM: 1000,
      climbM: null,
      fallM: null,
      minutes: null,
      minutesSource: null,
    });
    expect(Object.keys(way.why).sort()).toEqual(["climbM", "crossings", "fallM", "minutes", "minutesSource"]);
  });

  test("the owner's minutes stand where they are given, on a drawn route and without one", () => {
    expect(composedOf({ along, minutes: [30, 45] })).toMatchObject({
      minutes: [30, 45],
      minutesSource: "owner",
    });
    const way = composedOf({ minutes: [30, 45] });
    expect(way).toMatchObject({ lengthM: null, minutes: [30, 45], minutesSource: "owner", crossings: null });
    expect(way.why).toEqual(
      Object.fromEntries(
        ["lengthM", "climbM", "fallM", "crossings"].map((key) => [key, "no route is drawn"]),
      ),
    );
  });

  test("crosses the streams that are drawn; none drawn is not none there", () => {
    const middle = destination(SITE, 180, 500);
    const stream = lineFeature("run", "stream", destination(middle, 270, 100), destination(middle, 90, 100));
    const far = lineFeature("far", "stream", destination(SITE, 0, 500), destination(SITE, 0, 900));
    expect(composedOf({ along }, [stream, far]).crossings).toBe(1);
    expect(composedOf({ along }, [far]).crossings).toBe(0);
    const unknown = composedOf({ along });
    expect([unknown.crossings, unknown.why.crossings]).toEqual([null, "no streams are drawn on the map"]);
  });
});
