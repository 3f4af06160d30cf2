import type { ModelConstants } from "../air/modelConstants.ts";
import type { SiteContent } from "../content/areaContent.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import { blindSectorDeg } from "../terrain/blindSector.ts";
import { viewshed } from "../terrain/viewshed.ts";
import { visibleShare } from "../terrain/visibleShare.ts";
import { composeTree } from "./composeTree.ts";
import type { PackContext } from "./packContext.ts";
import { packBearing, packShare } from "./packNumbers.ts";
import { eyeHeightM } from "./siteGround.ts";

const RING_LIMITS_M = [0, 50, 100, 200];

/** The view of a site, or why there is none. */
export interface ComposedView {
  view: PackSite["view"];
  why: string | null;
}

/**
 * What is seen from the eye in the stand of a deer on bare ground, by distance ring, and the sector behind the trunk, opposite to
 * where the stand faces. A ring of which no ground is known is left out.
 */
export function composeView(site: SiteContent, { area, constants, shared }: PackContext): ComposedView {
  const grid = area.ground?.grid ?? null;
  if (grid === null) return { view: null, why: "no terrain file" };
  const reachM = numberOf(shared.model, "sightReachM");
  const request = { eyeHeightM: eyeHeightM(site, constants), targetHeightM: constants.deerHeightM, reachM };
  const found = viewshed(grid, site.facts.position, request, constants);
  if (found.viewshed === null) return { view: null, why: found.why };
  const blind = blindSector(site, constants, numberOf(shared.model, "eyeToBarkM"));
  return {
    view: {
      rings: visibleShare(found.viewshed, [...RING_LIMITS_M.filter((m) => m < reachM), reachM]).flatMap(
        ({ fromM, toM, visibleShare: share }) =>
          share === null ? [] : [{ fromM, toM, visibleShare: packShare(share) }],
      ),
      blindFromDeg: blind.from,
      blindToDeg: blind.to,
      why: blind.why === null ? {} : { blindFromDeg: blind.why, blindToDeg: blind.why },
    },
    why: null,
  };
}

function blindSector(
  site: SiteContent,
  constants: ModelConstants,
  eyeToBarkM: number,
): { from: number | null; to: number | null; why: string | null } {
  const { facingDeg, platformHeightM } = site.facts;
  const tree = composeTree(site, constants);
  const none = (why: string) => ({ from: null, to: null, why });
  if (platformHeightM === 0) return none("a seat on the ground has no trunk behind it that is known");
  if (facingDeg === null) return none("it is not entered where the stand faces");
  if (tree === null) return none("the trunk is not entered");
  const halfDeg = blindSectorDeg(tree.diameterAtPlatformMm[1] / 2000, eyeToBarkM) / 2;
  const behindDeg = facingDeg + 180;
  return { from: packBearing(behindDeg - halfDeg), to: packBearing(behindDeg + halfDeg), why: null };
}

function numberOf(model: PackContext["shared"]["model"], id: string): number {
  const value = model.find((row) => row.id === id)?.value;
  if (typeof value !== "number")
    throw new RangeError(`model constant ${id} must be a number, found ${String(value)}`);
  return value;
}
