import type { MapFile, MapKind } from "../content/schema/mapFeaturesSchema.ts";
import { destination, distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";

/** A feature of the map as lines of positions: a point is one line of one, a ring is closed. */
export interface MapShape {
  id: string;
  kind: MapKind;
  name: string | null;
  lines: Position[][];
}

export function mapShapes(map: MapFile | null): MapShape[] {
  return (map?.features ?? []).map(({ geometry, properties }) => ({
    id: properties.id,
    kind: properties.kind,
    name: properties.name ?? null,
    lines: linesOf(geometry).map((line) => line.map(([lon, lat]) => ({ lat, lon }))),
  }));
}

export function shapeById(shapes: readonly MapShape[], id: string): MapShape | null {
  return shapes.find((shape) => shape.id === id) ?? null;
}

/** Positions along a shape, none farther from the next than the step. */
export function densified(shape: MapShape, stepM: number): Position[] {
  return shape.lines.flatMap((line) =>
    line.flatMap((position, at) => {
      const next = line[at + 1];
      if (next === undefined) return [position];
      const { distanceM, bearingDeg } = distanceAndBearing(position, next);
      const parts = Math.max(1, Math.ceil(distanceM / stepM));
      return Array.from({ length: parts }, (_, part) =>
        part === 0 ? position : destination(position, bearingDeg, (distanceM * part) / parts),
      );
    }),
  );
}

function linesOf(geometry: MapFile["features"][number]["geometry"]): [number, number][][] {
  if (geometry.type === "Point") return [[geometry.coordinates]];
  if (geometry.type === "LineString") return [geometry.coordinates];
  return geometry.coordinates;
}
