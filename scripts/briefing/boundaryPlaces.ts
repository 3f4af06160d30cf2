import type { SiteContent } from "../content/areaContent.ts";
import type { WalkInFile } from "../content/schema/siteSchema.ts";
import type { BoundaryPlace } from "../safety/boundaryCheck.ts";
import { pointsAlong } from "../shooting/pointsAlong.ts";
import { insideDistanceM, type PlanePoint, type ToPlane } from "../shooting/seatPlane.ts";
import { routeOf } from "./composeWalkIns.ts";
import type { PackContext } from "./packContext.ts";

const WAY_STEP_M = 10;
const SEAT: PlanePoint = { eastM: 0, northM: 0 };

/** A site against the drawn boundary and closed ground; null when no boundary is drawn. */
export function sitePlace(toPlane: ToPlane, context: PackContext): BoundaryPlace | null {
  const ground = groundAround(toPlane, context);
  if (ground.boundary === null) return null;
  return { insideM: insideDistanceM(ground.boundary, SEAT), closedGround: closedAt(ground, [SEAT]) };
}

/**
 * A walk-in against the same. It may start outside, at a camp or parking, and has to come in over the line: what is judged is the rest, from
 * the first place that is well inside, else from the first inside. Null when no boundary or no route is drawn.
 */
export function wayPlace(
  site: SiteContent,
  walkIn: WalkInFile,
  toPlane: ToPlane,
  context: PackContext,
  nearM: number,
): BoundaryPlace | null {
  const ground = groundAround(toPlane, context);
  const route = routeOf(context.area.content, site, walkIn, context.shapes);
  const { boundary } = ground;
  if (boundary === null || route === null) return null;
  const points = pointsAlong(route.map(toPlane), WAY_STEP_M);
  const insideM = points.map((point) => insideDistanceM(boundary, point));
  const deep = insideM.findIndex((m) => m >= nearM);
  const from =
    deep >= 0
      ? deep
      : Math.max(
          0,
          insideM.findIndex((m) => m >= 0),
        );
  return { insideM: Math.min(...insideM.slice(from)), closedGround: closedAt(ground, points) };
}

interface Ground {
  boundary: PlanePoint[][] | null;
  closed: { name: string; rings: PlanePoint[][] }[];
}

function groundAround(toPlane: ToPlane, { shapes }: PackContext): Ground {
  const ringsOf = (lines: readonly (readonly { lat: number; lon: number }[])[]) =>
    lines.map((line) => line.map(toPlane));
  const boundary = shapes.find(({ kind }) => kind === "boundary");
  return {
    boundary: boundary === undefined ? null : ringsOf(boundary.lines),
    closed: shapes
      .filter(({ kind }) => kind === "closed")
      .map(({ id, name, lines }) => ({ name: name ?? id, rings: ringsOf(lines) })),
  };
}

function closedAt({ closed }: Ground, points: readonly PlanePoint[]): string | null {
  return closed.find(({ rings }) => points.some((point) => insideDistanceM(rings, point) >= 0))?.name ?? null;
}
