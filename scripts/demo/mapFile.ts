import type { MapFeature, MapFile, MapKind } from "../content/schema/mapFeaturesSchema.ts";
import type { LocalFrame } from "./localFrame.ts";
import { type LocalPoint, localPoints } from "./localPoints.ts";

/** One thing on the map: `points` is "x,y" for a place, "x,y x,y" for a line, and for an area its corners once round. */
export interface DemoFeature {
  id: string;
  kind: MapKind;
  shape: "place" | "line" | "area";
  points: string;
  name?: string;
  note?: string;
  private?: boolean;
  protects?: "always" | "occupied" | "no";
}

/** map.geojson of an area; rings close and run anticlockwise. */
export function mapFile(features: DemoFeature[], frame: LocalFrame): MapFile {
  return {
    type: "FeatureCollection",
    features: features.map(({ shape, points, ...properties }) => ({
      type: "Feature",
      geometry: geometry(shape, localPoints(points), frame),
      properties,
    })),
  };
}

function geometry(
  shape: DemoFeature["shape"],
  points: LocalPoint[],
  frame: LocalFrame,
): MapFeature["geometry"] {
  const coordinate = (point: LocalPoint): [number, number] => {
    const { lat, lon } = frame.position(point);
    return [lon, lat];
  };
  if (shape === "place") return { type: "Point", coordinates: coordinate(points[0]!) };
  if (shape === "line") return { type: "LineString", coordinates: points.map(coordinate) };
  const corners = signedArea(points) < 0 ? points.toReversed() : points;
  return { type: "Polygon", coordinates: [[...corners, corners[0]!].map(coordinate)] };
}

/** Twice the area in square metres, positive when the corners run anticlockwise. */
function signedArea(corners: LocalPoint[]): number {
  return corners.reduce((sum, { x, y }, at) => {
    const next = corners[(at + 1) % corners.length]!;
    return sum + x * next.y - next.x * y;
  }, 0);
}

/** The part of a line, written as "x,y,z x,y,z", that lies on the box and 200 m around it, as "x,y x,y". */
export function lineOnBox(text: string): string {
  const points = text.split(/\s+/).map((word) => word.split(",").map(Number));
  const kept: string[] = [];
  for (const [at, [x = 0, y = 0]] of points.entries()) {
    const [beforeX = x, beforeY = y] = points[at - 1] ?? [];
    const inside = isOnBox(x, y);
    if (at > 0 && inside !== isOnBox(beforeX, beforeY)) kept.push(edgeCrossing(beforeX, beforeY, x, y));
    if (inside) kept.push(`${x},${y}`);
  }
  return kept.join(" ");
}

const LOW_M = -200;
const HIGH_M = 4200;

function isOnBox(x: number, y: number): boolean {
  return x >= LOW_M && x <= HIGH_M && y >= LOW_M && y <= HIGH_M;
}

/** Where a leg with one end inside leaves the box, to the metre. */
function edgeCrossing(fromX: number, fromY: number, toX: number, toY: number): string {
  const shares = [
    [LOW_M, fromX, toX],
    [HIGH_M, fromX, toX],
    [LOW_M, fromY, toY],
    [HIGH_M, fromY, toY],
  ].map(([edge, from, to]) => (edge! - from!) / (to! - from!));
  const share = shares.find((at) => {
    const x = fromX + (toX - fromX) * at;
    const y = fromY + (toY - fromY) * at;
    return at >= 0 && at <= 1 && isOnBox(Math.round(x), Math.round(y));
  })!;
  return `${Math.round(fromX + (toX - fromX) * share)},${Math.round(fromY + (toY - fromY) * share)}`;
}
