import type { ModelConstants } from "../air/modelConstants.ts";
import type { AreaContent, SiteContent } from "../content/areaContent.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import type { WalkInFile } from "../content/schema/siteSchema.ts";
import { distanceAndBearing } from "../geo/geodesic.ts";
import type { Position } from "../geo/position.ts";
import { elevationAtPosition } from "../terrain/elevationGrid.ts";
import { routeCrossings } from "../walking/routeCrossings.ts";
import { routeTime } from "../walking/routeTime.ts";
import { type MapShape, shapeById } from "./mapShapes.ts";
import { packMetres } from "./packNumbers.ts";
import type { AreaGround } from "./siteGround.ts";

type PackWalkIn = PackSite["walkIns"][number];

const JOIN_M = 20; // a drawn line that ends nearer than this to a place ends there

/**
 * The walk-ins of a site: length, climb, fall and minutes for a loaded walk in the dark, over the drawn route; the owner's own
 * minutes win. Crossings are of drawn streams.
 */
export function composeWalkIns(
  area: AreaContent,
  site: SiteContent,
  shapes: readonly MapShape[],
  ground: AreaGround | null,
  constants: ModelConstants,
): PackWalkIn[] {
  return site.facts.walkIns.map((walkIn) => {
    const route = routeOf(area, site, walkIn, shapes);
    return route === null ? withoutRoute(walkIn) : onRoute(walkIn, route, shapes, ground, constants);
  });
}

/** The route of a walk-in from its camp or parking to the site; null when none is drawn. */
export function routeOf(
  area: AreaContent,
  site: SiteContent,
  walkIn: WalkInFile,
  shapes: readonly MapShape[],
): Position[] | null {
  if (walkIn.along === undefined) return null;
  const drawn =
    typeof walkIn.along === "string" ? (shapeById(shapes, walkIn.along)?.lines[0] ?? []) : walkIn.along;
  if (drawn.length < 2) return null;
  const start = [...area.facts.camps, ...area.facts.parkings].find(
    (place) => place.id === walkIn.from,
  )?.position;
  const end = site.facts.position;
  const isDrawnFromSite = gapM(drawn[0]!, end) < gapM(drawn.at(-1)!, end);
  const line = isDrawnFromSite ? drawn.toReversed() : [...drawn];
  if (start !== undefined && gapM(start, line[0]!) > JOIN_M) line.unshift(start);
  if (gapM(line.at(-1)!, end) > JOIN_M) line.push(end);
  return line;
}

function gapM(a: Position, b: Position): number {
  return distanceAndBearing(a, b).distanceM;
}

function onRoute(
  walkIn: WalkInFile,
  route: Position[],
  shapes: readonly MapShape[],
  ground: AreaGround | null,
  constants: ModelConstants,
): PackWalkIn {
  const time = routeTime(
    {
      points: route,
      elevationAt: ground === null ? null : (position) => elevationAtPosition(ground.grid, position),
      offTrackShare: walkIn.offTrack,
      isLoaded: true,
      isDark: true,
      ownerMinutes: walkIn.minutes ?? null,
    },
    constants,
  );
  const streams = shapes
    .filter((shape) => shape.kind === "stream" || shape.kind === "lake")
    .flatMap((shape) => shape.lines.map((points) => ({ id: shape.id, points })));
  const why: Record<string, string> = {};
  for (const key of ["climbM", "fallM", "minutes", "minutesSource"] as const) {
    const reason = time.why[key];
    if (reason !== undefined) why[key] = reason;
  }
  if (streams.length === 0) why.crossings = "no streams are drawn on the map";
  return {
    id: walkIn.id,
    lengthM: packMetres(time.lengthM),
    climbM: time.climbM === null ? null : packMetres(time.climbM),
    fallM: time.fallM === null ? null : packMetres(time.fallM),
    minutes: time.minutes,
    minutesSource: time.minutesSource,
    crossings: streams.length === 0 ? null : routeCrossings(route, streams).length,
    why,
  };
}

function withoutRoute(walkIn: WalkInFile): PackWalkIn {
  const reason = "no route is drawn";
  const minutes = walkIn.minutes ?? null;
  const why: Record<string, string> = { lengthM: reason, climbM: reason, fallM: reason, crossings: reason };
  if (minutes === null) Object.assign(why, { minutes: reason, minutesSource: reason });
  return {
    id: walkIn.id,
    lengthM: null,
    climbM: null,
    fallM: null,
    minutes: minutes === null ? null : [...minutes],
    minutesSource: minutes === null ? null : "owner",
    crossings: null,
    why,
  };
}
