import type { AreaContent, SiteContent } from "../content/areaContent.ts";
import type { MapFeature, MapKind } from "../content/schema/mapFeaturesSchema.ts";
import type { ProtectedThing } from "../shooting/noShootBearings.ts";
import type { PlanePoint, ToPlane } from "../shooting/seatPlane.ts";
import type { ShootingRules } from "../shooting/shootingRules.ts";
import { routeOf } from "./composeWalkIns.ts";
import type { MapShape } from "./mapShapes.ts";

type Protects = NonNullable<MapFeature["properties"]["protects"]>;

const PROTECTED_KINDS: readonly MapKind[] = ["building", "road", "boundary"];
const WAY_KINDS: readonly MapKind[] = ["road", "track", "trail"];
const REASONS: Partial<Record<MapKind, string>> = { track: "public track", trail: "public trail" };

/** What closes bearings from a seat at all times: camps, parkings, buildings, roads, the boundary and what is marked "always". */
export function alwaysProtected(
  area: AreaContent,
  shapes: readonly MapShape[],
  toPlane: ToPlane,
  rules: ShootingRules,
): ProtectedThing[] {
  const places = (["camps", "parkings"] as const).flatMap((list) =>
    area.facts[list].map(({ id, position }) => ({
      id,
      reason: list.slice(0, -1),
      lines: [[toPlane(position)]],
      isArea: false,
      farM: null,
    })),
  );
  const drawn = featuresOf(area, shapes)
    .filter(({ protects }) => protects === "always")
    .map(({ shape, isArea }) => ({
      id: shape.id,
      reason: REASONS[shape.kind] ?? shape.kind,
      lines: shape.lines.map((line) => line.map(toPlane)),
      isArea: isArea && shape.kind !== "boundary",
      farM: farMOf(shape.kind, rules),
    }));
  return [...places, ...drawn];
}

/** What closes bearings only while somebody is there: other sites, the ways to them, and what is marked "occupied". */
export function occupiedThings(
  area: AreaContent,
  shapes: readonly MapShape[],
  seat: SiteContent,
  toPlane: ToPlane,
): (ProtectedThing & { kind: "site" | "walk-in" | "feature" })[] {
  const thing = (id: string, lines: PlanePoint[][], isArea: boolean) => ({
    id,
    reason: id,
    lines,
    isArea,
    farM: null,
  });
  const others = area.sites.filter(({ id }) => id !== seat.id);
  const ways = others.flatMap((site) =>
    site.facts.walkIns.flatMap((walkIn) => {
      const route = routeOf(area, site, walkIn, shapes);
      return route === null
        ? []
        : [{ ...thing(`${site.id}/${walkIn.id}`, [route.map(toPlane)], false), kind: "walk-in" as const }];
    }),
  );
  const marked = featuresOf(area, shapes).filter(
    ({ protects, shape }) => protects === "occupied" && shape.kind !== "walk-in",
  );
  return [
    ...others.map((site) => ({
      ...thing(site.id, [[toPlane(site.facts.position)]], false),
      kind: "site" as const,
    })),
    ...ways,
    ...marked.map(({ shape, isArea }) => ({
      ...thing(
        shape.id,
        shape.lines.map((line) => line.map(toPlane)),
        isArea,
      ),
      kind: "feature" as const,
    })),
  ];
}

function featuresOf(
  area: AreaContent,
  shapes: readonly MapShape[],
): { shape: MapShape; protects: Protects; isArea: boolean }[] {
  return shapes.map((shape, at) => {
    const feature = area.map?.features[at];
    const usual: Protects = PROTECTED_KINDS.includes(shape.kind) ? "always" : "no";
    return {
      shape,
      protects: feature?.properties.protects ?? usual,
      isArea: feature?.geometry.type === "Polygon",
    };
  });
}

function farMOf(kind: MapKind, rules: ShootingRules): number | null {
  if (kind === "boundary") return rules.noShootBoundaryFarM;
  return WAY_KINDS.includes(kind) ? rules.noShootRoadFarM : null;
}
