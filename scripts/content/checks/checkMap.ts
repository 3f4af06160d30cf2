import { distanceAndBearing } from "../../geo/geodesic.ts";
import type { Position } from "../../geo/position.ts";
import type { AreaDraft } from "../areaDraft.ts";
import type { Loose } from "../loose.ts";
import type { Problem } from "../problem.ts";
import type { MapFeature, MapKind } from "../schema/mapFeaturesSchema.ts";
import { idsTwice } from "./repeatedIds.ts";
import { wholePosition } from "./wholePosition.ts";

const FAR_M = 100_000;

type GeometryType = MapFeature["geometry"]["type"];

const POINT: readonly GeometryType[] = ["Point"];
const LINE: readonly GeometryType[] = ["LineString"];
const AREA: readonly GeometryType[] = ["Polygon"];
const SPOT: readonly GeometryType[] = ["Point", "Polygon"];

/** Geometry that each kind of feature may have. */
export const GEOMETRY_OF_KIND: Readonly<Record<MapKind, readonly GeometryType[]>> = {
  "walk-in": LINE,
  wallow: SPOT,
  trail: LINE,
  track: LINE,
  road: LINE,
  gate: POINT,
  stream: LINE,
  lake: AREA,
  crossing: SPOT,
  boundary: AREA,
  block: AREA,
  closed: AREA,
  building: SPOT,
  hazard: ["Point", "LineString", "Polygon"],
  bedding: SPOT,
  feeding: SPOT,
  "deer-trail": LINE,
  "no-fire-strip": ["LineString", "Polygon"],
  "helicopter-spot": SPOT,
};

/** Features of the map: geometry by kind, closed rings, order of coordinates, one boundary; and what goes along them. */
export function checkMap(draft: AreaDraft): Problem[] {
  if (draft.map === null) return [];
  const { file, loose } = draft.map;
  const features = loose?.features ?? [];
  const ids = features.map((feature) => feature?.properties?.id);
  return [
    ...idsTwice(file, "features", ids).map((problem) => ({
      ...problem,
      field: problem.field.replace(/id$/, "properties.id"),
    })),
    ...features.flatMap((feature, i) => checkFeature(feature, { file, field: `features.${i}` }, draft)),
    ...checkBoundary(features, file),
    ...checkWalkIns(features, draft),
  ];
}

interface At {
  file: string;
  field: string;
}

type LooseFeature = Loose<MapFeature> | undefined;

function checkFeature(feature: LooseFeature, at: At, draft: AreaDraft): Problem[] {
  const problems: Problem[] = [];
  const { geometry, properties } = feature ?? {};
  const kind = properties?.kind;
  const type = geometry?.type;
  if (kind && type && !GEOMETRY_OF_KIND[kind].includes(type)) {
    const expected = `${GEOMETRY_OF_KIND[kind].join(" or ")} for the kind "${kind}"`;
    const fix = "draw it so, or give it another kind";
    problems.push({
      ...at,
      code: "map-geometry",
      field: `${at.field}.geometry.type`,
      found: `"${type}"`,
      expected,
      fix,
    });
  }
  if (geometry?.type === "Polygon") {
    for (const [i, ring] of (geometry.coordinates ?? []).entries()) {
      problems.push(...openRing(ring, { ...at, field: `${at.field}.geometry.coordinates.${i}` }));
    }
  }
  problems.push(...farPoint(geometry, { ...at, field: `${at.field}.geometry.coordinates` }, draft));
  return problems;
}

type Ring = readonly ({ readonly 0?: number; readonly 1?: number } | undefined)[] | undefined;

function openRing(ring: Ring, at: At): Problem[] {
  const ends = [ring?.[0]?.[0], ring?.[0]?.[1], ring?.at(-1)?.[0], ring?.at(-1)?.[1]];
  const [lon, lat, lastLon, lastLat] = ends;
  if (ends.includes(undefined) || (lon === lastLon && lat === lastLat)) return [];
  return [
    {
      ...at,
      code: "map-ring",
      found: `first position [${lon}, ${lat}], last [${lastLon}, ${lastLat}]`,
      expected: "a ring that ends on its first position (RFC 7946)",
      fix: `add [${lon}, ${lat}] at the end of the ring`,
    },
  ];
}

function farPoint(geometry: Loose<MapFeature["geometry"]> | undefined, at: At, draft: AreaDraft): Problem[] {
  const centre = wholePosition(draft.area.loose?.centre);
  const far = centre && positionsOf(geometry).find((position) => apartM(centre, position) > FAR_M);
  if (!centre || !far) return [];
  const found = `[${far.lon}, ${far.lat}], ${Math.round(apartM(centre, far) / 1000)} km from the centre of the area`;
  const isSwapped = Math.abs(far.lon) <= 90 && apartM(centre, { lat: far.lon, lon: far.lat }) <= FAR_M;
  return [
    isSwapped
      ? {
          ...at,
          code: "map-swapped",
          found,
          expected: "[lon, lat], longitude first (RFC 7946)",
          fix: `write [${far.lat}, ${far.lon}], and the others of this feature likewise`,
        }
      : {
          ...at,
          code: "map-far",
          found,
          expected: "places within 100 km of the centre",
          fix: "check signs and digits, and that the file is in WGS 84 degrees",
        },
  ];
}

function positionsOf(geometry: Loose<MapFeature["geometry"]> | undefined): Position[] {
  const found: Position[] = [];
  const collect = (value: unknown): void => {
    if (!Array.isArray(value)) return;
    const [lon, lat] = value as unknown[];
    if (typeof lon === "number" && typeof lat === "number") found.push({ lat, lon });
    else for (const part of value as unknown[]) collect(part);
  };
  collect(geometry?.coordinates);
  return found;
}

function apartM(a: Position, b: Position): number {
  return distanceAndBearing(a, b).distanceM;
}

function checkBoundary(features: readonly LooseFeature[], file: string): Problem[] {
  const boundaries = features.flatMap((feature, i) => (feature?.properties?.kind === "boundary" ? i : []));
  return boundaries.slice(1).map((i) => ({
    code: "map-boundary",
    file,
    field: `features.${i}.properties.kind`,
    found: `${boundaries.length} boundaries`,
    expected: "one boundary, one polygon",
    fix: 'join the polygons into one, or use the kind "block"',
  }));
}

function checkWalkIns(features: readonly LooseFeature[], draft: AreaDraft): Problem[] {
  return draft.sites.flatMap(({ file, loose }) =>
    (loose?.walkIns ?? []).flatMap((walkIn, i) => {
      const feature = features.find((candidate) => candidate?.properties?.id === walkIn?.along);
      const type = feature?.geometry?.type;
      if (typeof walkIn?.along !== "string" || !type || type === "LineString") return [];
      return {
        code: "walk-in-geometry" as const,
        file,
        field: `walkIns.${i}.along`,
        found: `"${walkIn.along}", a ${type}`,
        expected: "a LineString of the map, drawn from start to site",
        fix: "draw the way as a line of kind walk-in and name that",
      };
    }),
  );
}

/** Problems of a map file with at most one about the geometry of each feature: a line drawn wrong is wrong at every point. */
export function oneGeometryProblemEach(problems: readonly Problem[]): Problem[] {
  const told = new Set<string>();
  return problems.filter(({ field }) => {
    const feature =
      /^features\.\d+\.geometry\.coordinates/.exec(field) && field.split(".").slice(0, 3).join(".");
    if (!feature) return true;
    if (told.has(feature)) return false;
    told.add(feature);
    return true;
  });
}
