import type { SiteContent } from "../content/areaContent.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import type { MapKind } from "../content/schema/mapFeaturesSchema.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import type { Position } from "../geo/position.ts";
import { pointsAlong } from "../shooting/pointsAlong.ts";
import { isInside, linesDistanceM, type ToPlane } from "../shooting/seatPlane.ts";
import { longerCellM } from "../terrain/broadSlope.ts";
import { coldAirPath } from "../terrain/coldAirPath.ts";
import type { MapShape } from "./mapShapes.ts";
import type { PackContext } from "./packContext.ts";
import { packMetres, packPosition } from "./packNumbers.ts";
import { terrainRules } from "./terrainRules.ts";

export interface ComposedAirPath {
  airPath: PackSite["airPath"];
  details: SiteDetails["airPath"];
  why: string | null;
}

const PATH_STEP_M = 10;
const DEER_KINDS: readonly MapKind[] = ["bedding", "feeding", "deer-trail", "wallow"];

/**
 * The ways of falling and rising air from a site, and the features of deer that they pass near to: what an approach runs along,
 * bedding, feeding, wallows and deer trails. Air that has no higher ground to rise to has an empty way.
 */
export function composeAirPath(site: SiteContent, toPlane: ToPlane, context: PackContext): ComposedAirPath {
  const { area, constants, shapes } = context;
  const ground = area.ground;
  if (ground === null) return { airPath: null, details: null, why: "no terrain file" };
  const rules = terrainRules(constants);
  const falling = coldAirPath(ground.drainage(), site.facts.position, "falling", rules);
  if (falling.path === null) return { airPath: null, details: null, why: falling.why };
  const rising = coldAirPath(ground.drainage(), site.facts.position, "rising", rules);
  const nearM = Math.max(constants.pathNearM, constants.pathNearCellFactor * longerCellM(ground.grid));
  const features = deerFeatures(
    site,
    shapes,
    area.content.map?.features.map(({ geometry }) => geometry.type === "Polygon") ?? [],
  );
  const crossed = [falling.path.positions, rising.path?.positions ?? []].map((path) =>
    passedNear(path, features, toPlane, nearM),
  );
  const [byFalling = [], byRising = []] = crossed;
  return {
    airPath: {
      falling: falling.path.positions.map(packPosition),
      rising: (rising.path?.positions ?? []).map(packPosition),
      crosses: features.map(({ id }) => id).filter((id) => byFalling.includes(id) || byRising.includes(id)),
    },
    details: {
      fallingCrosses: byFalling,
      risingCrosses: byRising,
      flatFromM: falling.path.flatFromM === null ? null : packMetres(falling.path.flatFromM),
      risingWhy: rising.why,
    },
    why: null,
  };
}

interface DeerFeature {
  id: string;
  lines: Position[][];
  isArea: boolean;
}

function deerFeatures(
  site: SiteContent,
  shapes: readonly MapShape[],
  isArea: readonly boolean[],
): DeerFeature[] {
  const along = new Set(
    Object.values(site.facts.approaches).flatMap((own) => own.map((approach) => approach.along)),
  );
  return shapes.flatMap(({ id, kind, lines }, at) =>
    DEER_KINDS.includes(kind) || along.has(id) ? [{ id, lines, isArea: isArea[at] ?? false }] : [],
  );
}

/** Ids of the features that lie as near as that to a path; ground inside an area counts as there. */
function passedNear(
  path: readonly Position[],
  features: readonly DeerFeature[],
  toPlane: ToPlane,
  nearM: number,
): string[] {
  const points = pointsAlong(path.map(toPlane), PATH_STEP_M);
  return features
    .filter(({ lines, isArea }) => {
      const drawn = lines.map((line) => line.map(toPlane));
      return points.some(
        (point) => linesDistanceM(drawn, point) <= nearM || (isArea && isInside(drawn, point)),
      );
    })
    .map(({ id }) => id);
}
