import type { AreaContent } from "../content/areaContent.ts";
import type { Problem } from "../content/problem.ts";
import type { Position } from "../geo/position.ts";
import type { ElevationGrid } from "../terrain/elevationGrid.ts";
import { placeOnGrid } from "../terrain/elevationGrid.ts";
import type { TerrainError } from "../terrain/TerrainError.ts";

/** Every permanent code of a thing that does not lie where it must, with what it means. */
export const GROUND_CODES = {
  "approach-away":
    "No part of an approach's map feature lies within its distances, and no bearings are given.",
  "terrain-site-outside": "A site lies outside the elevation file.",
  "terrain-feature-outside": "A map feature lies outside the elevation file.",
} as const;

/** A fault of the elevation file as a problem of its owner's. */
export function terrainProblem(file: string, error: TerrainError): Problem {
  return { code: error.code, file, field: "", found: error.found, expected: error.expected, fix: error.fix };
}

/**
 * What an owner wrote that lies outside the elevation file: sites and map features. Such a thing would have no height, no
 * horizon and no map.
 */
export function groundProblems(
  area: AreaContent,
  grid: ElevationGrid,
  fileOf: (path: string) => string,
): Problem[] {
  const sites = area.sites.flatMap((site) =>
    isOnGrid(grid, site.facts.position)
      ? []
      : [outside("terrain-site-outside", fileOf(`sites/${site.id}.json`), "position", site.facts.position)],
  );
  const features = (area.map?.features ?? []).flatMap((feature, at) => {
    const stray = positionsOf(feature.geometry).find((position) => !isOnGrid(grid, position));
    if (stray === undefined) return [];
    const field = `features[${at}].geometry (${feature.properties.id})`;
    return [outside("terrain-feature-outside", fileOf("map.geojson"), field, stray)];
  });
  return [...sites, ...features];
}

function outside(code: keyof typeof GROUND_CODES, file: string, field: string, position: Position): Problem {
  return {
    code,
    file,
    field,
    found: `${position.lat}, ${position.lon}`,
    expected: "a position inside the elevation file of the area",
    fix: "mend the position, or cut a larger elevation file",
  };
}

function isOnGrid(grid: ElevationGrid, position: Position): boolean {
  const { row, column } = placeOnGrid(grid, position);
  return row >= 0 && column >= 0 && row <= grid.rows - 1 && column <= grid.columns - 1;
}

type Geometry = NonNullable<AreaContent["map"]>["features"][number]["geometry"];

function positionsOf(geometry: Geometry): Position[] {
  const pairs =
    geometry.type === "Point"
      ? [geometry.coordinates]
      : geometry.type === "LineString"
        ? geometry.coordinates
        : geometry.coordinates.flat();
  return pairs.map(([lon, lat]) => ({ lat, lon }));
}
