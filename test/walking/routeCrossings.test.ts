import { describe, expect, test } from "vitest";
import { distanceAndBearing } from "../../scripts/geo/geodesic.ts";
import { routeCrossings } from "../../scripts/walking/routeCrossings.ts";

const at = (lat: number, lon: number) => ({ lat, lon });
const stream = { id: "creek", points: [at(-0.001, 0), at(0.001, 0)] };

describe("crossings of a route", () => {
  test("a way straight over a stream meets it once, at its place and distance", () => {
    const [crossing, ...others] = routeCrossings([at(0, -0.001), at(0, 0.002)], [stream]);
    expect(others).toEqual([]);
    expect(crossing?.featureId).toBe("creek");
    expect(distanceAndBearing(crossing!.at, at(0, 0)).distanceM).toBeLessThan(0.01);
    expect(crossing?.alongM).toBeCloseTo(111.319, 2); // 0.001 degrees of the equator, WGS 84
  });

  test("lines whose boxes overlap but which do not meet are no crossing", () => {
    expect(routeCrossings([at(0, 0.0001), at(0.0008, 0.001)], [stream])).toEqual([]);
  });

  test("a zigzag over one stream is counted each time, in the order walked", () => {
    const route = [at(-0.0005, -0.001), at(-0.0005, 0.001), at(0.0005, 0.001), at(0.0005, -0.001)];
    const found = routeCrossings(route, [stream]);
    expect(found.map(({ at: place }) => place.lat)).toEqual([-0.0005, 0.0005]);
    expect(found[0]!.alongM).toBeLessThan(found[1]!.alongM);
  });

  test("a crossing at a corner of the route or of the stream counts once", () => {
    const bent = { id: "creek", points: [at(-0.001, 0), at(0, 0), at(0.001, 0.0002)] };
    expect(routeCrossings([at(0, -0.001), at(0, 0), at(0.0001, 0.001)], [bent])).toHaveLength(1);
  });

  test("two streams that meet under the route are two crossings", () => {
    const other = { id: "brook", points: [at(0.001, -0.0005), at(-0.001, 0.0005)] };
    expect(
      routeCrossings([at(0, -0.001), at(0, 0.001)], [stream, other]).map(({ featureId }) => featureId),
    ).toEqual(["creek", "brook"]);
  });

  test("a way that ends at the water meets it", () => {
    expect(routeCrossings([at(0, -0.001), at(0, 0)], [stream])).toHaveLength(1);
  });

  test("a way beside the stream does not cross it", () => {
    expect(routeCrossings([at(-0.001, 0.0002), at(0.001, 0.0002)], [stream])).toEqual([]);
  });

  test("a crossing on the date line is found", () => {
    const line = { id: "creek", points: [at(-0.001, -180), at(0.001, -180)] };
    const found = routeCrossings([at(0, 179.999), at(0, -179.999)], [line]);
    expect(found).toHaveLength(1);
    expect(Math.abs(found[0]!.at.lon)).toBeCloseTo(180, 9);
  });
});
