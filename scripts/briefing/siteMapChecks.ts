import type { SiteContent } from "../content/areaContent.ts";
import { boundaryCheck } from "../safety/boundaryCheck.ts";
import type { Check } from "../safety/check.ts";
import { closedBearings } from "../safety/closedBearings.ts";
import { groundBehind } from "../safety/groundBehind.ts";
import { type SafetyLimits, safetyLimits } from "../safety/safetyLimits.ts";
import { type SetbackFact, setbackCheck } from "../safety/setbackCheck.ts";
import { laneBearings, laneLengthM } from "../shooting/linesOfFire.ts";
import { isInside, linesDistanceM, type PlanePoint, type ToPlane } from "../shooting/seatPlane.ts";
import { sitePlace, wayPlace } from "./boundaryPlaces.ts";
import type { SiteShooting } from "./composeShooting.ts";
import type { PackContext } from "./packContext.ts";
import type { Firearm } from "./siteWeapon.ts";

/** The checks of a site that need the map or the ground: set-backs, closed bearings, ground behind each lane, boundary. */
export function siteMapChecks(site: SiteContent, shooting: SiteShooting, context: PackContext): Check[] {
  const limits = safetyLimits(context.shared.model);
  return [
    siteSetbacks(site, shooting.toPlane, shooting.weapon, context, limits),
    ...laneChecks(site, shooting),
    ...boundaryChecks(site, shooting.toPlane, context, limits),
  ];
}

/** C2 of a site for a weapon. */
export function siteSetbacks(
  site: SiteContent,
  toPlane: ToPlane,
  weapon: Firearm | null,
  { area, shapes }: PackContext,
  limits: SafetyLimits,
): Check {
  const { facts } = area.content;
  const rules = facts.setbacks.filter(({ weaponClass }) => weaponClass === weapon?.weaponClass);
  const setbacks = rules.map(({ featureKind, distanceM, waiver }): SetbackFact => {
    const places = featureKind === "camp" ? facts.camps : featureKind === "parking" ? facts.parkings : [];
    const lines: PlanePoint[][] = [
      ...places.map(({ position }) => [toPlane(position)]),
      ...shapes
        .filter(({ kind }) => kind === featureKind)
        .flatMap((shape) => shape.lines.map((line) => line.map(toPlane))),
    ];
    const isIn = shapes.some((shape, at) => {
      const isArea = area.content.map?.features[at]?.geometry.type === "Polygon";
      return isArea && shape.kind === featureKind && isInside(shape.lines.map((line) => line.map(toPlane)));
    });
    return {
      featureKind,
      limitM: distanceM,
      waiver,
      nearestM: isIn ? 0 : lines.length === 0 ? null : linesDistanceM(lines),
    };
  });
  return setbackCheck(
    { subject: site.id, weapon: weapon?.weaponClass ?? null, setbacks: weapon === null ? null : setbacks },
    limits,
  );
}

function laneChecks(site: SiteContent, { weapon, rules, lines, linesWhy, closed }: SiteShooting): Check[] {
  const lanes = site.facts.lanes.map((lane) => ({ ...lane, isSeenOnGround: lane.seenOnGround !== null }));
  const missing =
    linesWhy === "" ? "No lane is entered" : `${linesWhy.charAt(0).toUpperCase()}${linesWhy.slice(1)}`;
  const noLane = { subject: site.id, lines: null, isSeenOnGround: false, lengthM: null, missing };
  return [
    closedBearings({
      subject: site.id,
      dangerM: weapon?.dangerM ?? null,
      closed,
      lanes: lanes.map((lane) => ({ id: lane.id, bearingsDeg: laneBearings(lane) })),
    }),
    ...(lanes.length === 0
      ? [groundBehind(noLane)]
      : lanes.map((lane) =>
          groundBehind({
            subject: lane.id,
            lines: lines?.filter((line) => line.lane === lane.id) ?? null,
            isSeenOnGround: lane.isSeenOnGround,
            lengthM: weapon === null ? null : laneLengthM(lane, weapon.laneLimitM, rules),
            missing,
          }),
        )),
  ];
}

/** The site always; of its ways only those that are not fine. */
function boundaryChecks(
  site: SiteContent,
  toPlane: ToPlane,
  context: PackContext,
  limits: SafetyLimits,
): Check[] {
  const place = sitePlace(toPlane, context);
  const ofSite = boundaryCheck({ subject: site.id, what: "site", place }, limits);
  if (place === null) return [ofSite];
  const ofWays = site.facts.walkIns.map((walkIn) =>
    boundaryCheck(
      {
        subject: walkIn.id,
        what: "way",
        place: wayPlace(site, walkIn, toPlane, context, limits.boundaryNearM),
      },
      limits,
    ),
  );
  return [ofSite, ...ofWays.filter(({ result }) => result !== "OK")];
}
