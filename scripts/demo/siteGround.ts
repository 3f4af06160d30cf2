import { normalizeDeg, signedDifferenceDeg } from "../geo/bearings.ts";
import { groundAt } from "./carveGround.ts";
import type { DemoSite } from "./demoSite.ts";
import type { PostLattice } from "./groundPlan.ts";
import { type LocalPoint, localPoints } from "./localPoints.ts";

const FIT_RADIUS_M = 150;
const FACING_FROM_SLOPE_DEG = 5;
const TOLERANCE = { heightM: 8, slopeDeg: 3, facingDeg: 20 };

/** The ground at a site as carved: height, and the slope of a plane fitted over 150 m with the way it faces in grid degrees. */
export interface SiteGround {
  id: string;
  heightM: number;
  slopeDeg: number;
  facingDeg: number;
  /** what is too far from the site table, in words */
  faults: string[];
}

/** The carved ground at each site, held against the site table. */
export function siteGrounds(sites: DemoSite[], heightsM: Float64Array, lattice: PostLattice): SiteGround[] {
  return sites.map((site) => {
    const at = localPoints(site.at)[0]!;
    const heightM = groundAt(heightsM, lattice, at);
    const found = { id: site.id, heightM, ...planeAround(at, heightsM, lattice) };
    return { ...found, faults: faultsOf(found, site.ground) };
  });
}

function faultsOf(found: Omit<SiteGround, "faults">, wanted: DemoSite["ground"]): string[] {
  const faults: string[] = [];
  if (!(Math.abs(found.heightM - wanted.heightM) <= TOLERANCE.heightM)) {
    faults.push(`${found.id}: height ${found.heightM.toFixed(1)} m, the table says ${wanted.heightM}`);
  }
  if (!(Math.abs(found.slopeDeg - wanted.slopeDeg) <= TOLERANCE.slopeDeg)) {
    faults.push(`${found.id}: slope ${found.slopeDeg.toFixed(1)} degrees, the table says ${wanted.slopeDeg}`);
  }
  if (wanted.facingDeg !== null && wanted.slopeDeg >= FACING_FROM_SLOPE_DEG) {
    const offDeg = Math.abs(signedDifferenceDeg(found.facingDeg, wanted.facingDeg));
    if (!(offDeg <= TOLERANCE.facingDeg)) {
      faults.push(
        `${found.id}: faces ${found.facingDeg.toFixed(0)} degrees, the table says ${wanted.facingDeg}`,
      );
    }
  }
  return faults;
}

/** Least-squares plane over the posts within 150 m. The posts lie evenly round the site, so the sums part by axis. */
function planeAround({ x, y }: LocalPoint, heightsM: Float64Array, lattice: PostLattice) {
  let squares = 0;
  let eastSum = 0;
  let northSum = 0;
  for (let east = -FIT_RADIUS_M; east <= FIT_RADIUS_M; east += lattice.spacingM) {
    for (let north = -FIT_RADIUS_M; north <= FIT_RADIUS_M; north += lattice.spacingM) {
      if (Math.hypot(east, north) > FIT_RADIUS_M) continue;
      const heightM = groundAt(heightsM, lattice, { x: x + east, y: y + north });
      squares += east * east;
      eastSum += east * heightM;
      northSum += north * heightM;
    }
  }
  const risesEast = eastSum / squares;
  const risesNorth = northSum / squares;
  return {
    slopeDeg: (Math.atan(Math.hypot(risesEast, risesNorth)) * 180) / Math.PI,
    facingDeg: normalizeDeg((Math.atan2(-risesEast, -risesNorth) * 180) / Math.PI),
  };
}
