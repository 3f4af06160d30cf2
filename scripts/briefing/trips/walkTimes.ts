import type { SiteContent } from "../../content/areaContent.ts";
import type { PackSite } from "../../content/schema/packSchema.ts";
import { elevationAtPosition } from "../../terrain/elevationGrid.ts";
import { routeTime } from "../../walking/routeTime.ts";
import { routeOf } from "../composeWalkIns.ts";
import type { PackContext } from "../packContext.ts";

/** The minutes of one walk-in, loaded and by lamp, [quick, slow]; null with the reason in `why`. */
export interface WalkTimes {
  id: string;
  /** Camp or parking where it starts. */
  from: string;
  inMin: readonly [number, number] | null;
  /** The quiet last stretch on top of `inMin`; 0 beside the owner's own minutes, which are of the whole walk. */
  quietMin: number;
  outMin: readonly [number, number] | null;
  /** Why minutes are null. */
  why: string | null;
}

/** Every walk-in of a site in the order written, both ways: climb and fall change places on the way out. */
export function walkTimes(site: SiteContent, composed: PackSite, context: PackContext): WalkTimes[] {
  const { area, shapes, constants } = context;
  return site.facts.walkIns.map((walkIn) => {
    const way = composed.walkIns.find(({ id }) => id === walkIn.id);
    const inMin = way?.minutes ?? null;
    const why = inMin === null ? (way?.why.minutes ?? "no route is drawn") : null;
    const walk = { id: walkIn.id, from: walkIn.from, inMin, why };
    if (walkIn.minutes !== undefined) return { ...walk, quietMin: 0, outMin: walkIn.minutes };
    const route = routeOf(area.content, site, walkIn, shapes);
    if (route === null || inMin === null) return { ...walk, quietMin: 0, outMin: null };
    const { grid } = area.ground ?? { grid: null };
    const out = routeTime(
      {
        points: route.toReversed(),
        elevationAt: grid === null ? null : (position) => elevationAtPosition(grid, position),
        offTrackShare: walkIn.offTrack,
        isLoaded: true,
        isDark: true,
        ownerMinutes: null,
      },
      constants,
    );
    const quietM = Math.min(constants.quietLastM, way?.lengthM ?? constants.quietLastM);
    return { ...walk, quietMin: Math.ceil(quietM / constants.quietSpeedMPerMin), outMin: out.minutes };
  });
}

/**
 * The walk-in to take: the one written in the sit, else of those that start at the base (of all, when none does) the
 * quickest by its slow end. A way that starts elsewhere would need the unknown way to its start. Null without any.
 */
export function chosenWalk(
  walks: readonly WalkTimes[],
  written: string | null,
  base: string | null,
): WalkTimes | null {
  const named = walks.find(({ id }) => id === written);
  if (named !== undefined) return named;
  const near = walks.filter(({ from }) => from === base);
  const slowMin = ({ inMin, quietMin }: WalkTimes): number =>
    inMin === null ? Number.POSITIVE_INFINITY : inMin[1] + quietMin;
  return (near.length > 0 ? near : walks).toSorted((a, b) => slowMin(a) - slowMin(b))[0] ?? null;
}
