import type { MapFeature } from "../../content/schema/mapFeaturesSchema.ts";
import type { Position } from "../../geo/position.ts";

/** One place for a map feature: a point itself, the middle point of a line, the mean of the corners of an area. */
export function featurePosition({ geometry }: MapFeature): Position {
  if (geometry.type === "Point") return { lat: geometry.coordinates[1], lon: geometry.coordinates[0] };
  if (geometry.type === "LineString") {
    const [lon, lat] = geometry.coordinates[Math.floor(geometry.coordinates.length / 2)]!;
    return { lat, lon };
  }
  const corners = geometry.coordinates[0]!.slice(0, -1);
  const mean = (axis: 0 | 1): number =>
    corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length;
  return { lat: mean(1), lon: mean(0) };
}
