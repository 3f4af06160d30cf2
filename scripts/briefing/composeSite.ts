import type { SlopeAirDay, SlopePhases } from "../air/slopeAirDay.ts";
import type { SlopeSite } from "../air/slopeSite.ts";
import type { TableSession } from "../air/windTableRows.ts";
import type { SiteContent } from "../content/areaContent.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
import type { PackSite } from "../content/schema/packSchema.ts";
import { gridText } from "../geo/mgrs.ts";
import { composeAirPath } from "./composeAirPath.ts";
import { doubtfulTurns, packPhases } from "./composePhases.ts";
import {
  packLinesOfFire,
  packNoShoot,
  type SiteShooting,
  shootingDetails,
  siteShooting,
} from "./composeShooting.ts";
import { composeSiteChecks } from "./composeSiteChecks.ts";
import { composeSun } from "./composeSun.ts";
import { composeTables } from "./composeTables.ts";
import { composeTree } from "./composeTree.ts";
import { type ComposedView, composeView } from "./composeView.ts";
import { composeWalkIns } from "./composeWalkIns.ts";
import { tableStretch } from "./daySessions.ts";
import { weatherOfDay } from "./forecastSeries.ts";
import { declinationAt } from "./magneticNorth.ts";
import type { PackContext } from "./packContext.ts";
import { packAngle, packBearing, packMetres, packPosition } from "./packNumbers.ts";
import { airOfDay, approachesOf, localNotesOf, phasesOfDay } from "./siteAir.ts";
import { type SiteGround, siteGround, slopeSite } from "./siteGround.ts";
import { cardWeapon } from "./siteWeapon.ts";

export interface ComposedSite {
  site: PackSite;
  details: SiteDetails;
  /** the ground of the site as the air model takes it */
  slope: SlopeSite;
  /** why the slope, and with it the slope air, is not known; null when it is known */
  slopeWhy: string | null;
}

const NOT_IN_THIS_VERSION = "not computed by this version of the program";

/** Everything pack.json and details.json say of one site. */
export function composeSite(site: SiteContent, context: PackContext): ComposedSite {
  const { area, constants, tableDate, timezone, shapes } = context;
  const ground = siteGround(site, area.ground, area.content.facts.elevationM ?? null, constants);
  const { site: slope, why: slopeWhy } = slopeSite(site, ground);
  const air =
    slope === null ? null : new Map(context.phaseDates.map((date) => [date, phasesOn(slope, date, context)]));
  const judgedSlope = slope ?? unknownSlope(site, ground);
  const tables = composeTables(
    {
      site: judgedSlope,
      air: slope === null ? null : clearAir(slope, context),
      airWhy: slopeWhy,
      sessions: tableSessions(site, context),
      localNotes: localNotesOf(site, tableDate, timezone),
      constants,
    },
    timezone,
  );
  const declination = declinationAt(area.content, site.facts.position, ground.elevationM, tableDate);
  const weapon = cardWeapon(area.content, context.trips, context.shared.firearms);
  const shooting = siteShooting(site, context, weapon);
  const view = composeView(site, context);
  const airPath = composeAirPath(site, shooting.toPlane, context);
  return {
    site: {
      id: site.id,
      number: site.facts.number,
      name: site.facts.name,
      block: site.facts.block ?? null,
      position: packPosition(site.facts.position),
      grid: gridText(site.facts.position),
      elevationM: ground.elevationM === null ? null : packMetres(ground.elevationM),
      slopeDeg: ground.slopeDeg === null ? null : packAngle(ground.slopeDeg),
      aspectDeg: ground.aspectDeg === null ? null : packBearing(ground.aspectDeg),
      slopeSource: ground.slopeSource,
      declinationDeg: declination.declinationDeg === null ? null : packAngle(declination.declinationDeg),
      horizon: ground.eyeHorizon === null ? null : Array.from(ground.eyeHorizon.angleDeg, packAngle),
      checks: composeSiteChecks(site, shooting, context),
      phases: air === null ? null : [...air].map(([date, day]) => packPhases(date, day, timezone)),
      windTable: tables.windTable,
      sessionTable: tables.sessionTable,
      airPath: airPath.airPath,
      view: view.view,
      linesOfFire: packLinesOfFire(shooting),
      noShoot: packNoShoot(shooting.closed, declination.declinationDeg),
      walkIns: composeWalkIns(area.content, site, shapes, area.ground, constants),
      activity: null,
      lastSatOn: null,
      why: {
        ...whyOfSite(site, ground, slopeWhy, declination.why),
        ...whyOfMap(shooting, view, airPath.why),
      },
    },
    details: {
      id: site.id,
      landform: ground.landform,
      groundTrust: ground.trust,
      localSlopeDeg: ground.localSlopeDeg === null ? null : packAngle(ground.localSlopeDeg),
      localAspectDeg: ground.localAspectDeg === null ? null : packBearing(ground.localAspectDeg),
      gridReachM: ground.eyeHorizon === null ? null : packMetres(ground.eyeHorizon.shortestReachM),
      sxDeg: ground.sxDeg === null ? null : ground.sxDeg.map((deg) => (deg === null ? null : packAngle(deg))),
      sun: composeSun(site, air, slopeWhy, context),
      doubtfulTurns: [...(air ?? [])].flatMap(([date, day]) => doubtfulTurns(date, day, timezone)),
      sitRanges: tables.sitRanges,
      tree: composeTree(site, constants),
      shooting: shootingDetails(site, shooting, declination.declinationDeg, context),
      airPath: airPath.details,
    },
    slope: judgedSlope,
    slopeWhy,
  };
}

function phasesOn(slope: SlopeSite, localDate: string, context: PackContext): SlopePhases {
  const weather = weatherOfDay(context.forecastOf(localDate), localDate);
  return phasesOfDay(slope, localDate, context.timezone, weather, context.sunTableOf, context.constants);
}

/** Date-free tables are for a clear sky, whatever the forecast of their day. */
function clearAir(
  slope: SlopeSite,
  { tableDate, timezone, sunTableOf, constants }: PackContext,
): SlopeAirDay {
  return airOfDay(slope, tableDate, timezone, [], sunTableOf, constants);
}

function tableSessions(site: SiteContent, context: PackContext): TableSession[] {
  return context.sessions.map((session) => {
    const stretch = tableStretch(session) ?? { from: context.asOf, to: context.asOf };
    return { session: session.id, ...stretch, approaches: approachesOf(site, session.id, context.shapes) };
  });
}

/** Without a slope only the general wind is judged; cover and shelter still count. */
function unknownSlope(site: SiteContent, ground: SiteGround): SlopeSite {
  return {
    slopeDeg: null,
    aspectDeg: null,
    landform: "flat",
    cover: site.facts.cover,
    elevationM: ground.elevationM ?? 0,
    horizonDeg: null,
    floorDriftToDeg: null,
    sxDeg: ground.sxDeg === null ? null : ground.sxDeg.map((deg) => deg ?? 0),
  };
}

function whyOfSite(
  site: SiteContent,
  ground: SiteGround,
  slopeWhy: string | null,
  declinationWhy: string | null,
): Record<string, string> {
  const why: Record<string, string> = {};
  if (site.facts.block === undefined) why.block = "the site belongs to no block";
  for (const key of ["elevationM", "slopeDeg", "aspectDeg", "horizon"] as const) {
    const reason = ground.why[key];
    if (reason !== undefined) why[key] = reason;
  }
  if (ground.slopeSource === null) why.slopeSource = ground.why.slopeDeg ?? "the slope is not known";
  if (declinationWhy !== null) why.declinationDeg = declinationWhy;
  if (slopeWhy !== null) why.phases = slopeWhy;
  for (const key of ["activity", "lastSatOn"]) {
    why[key] = NOT_IN_THIS_VERSION;
  }
  return why;
}

function whyOfMap(
  shooting: SiteShooting,
  view: ComposedView,
  airPathWhy: string | null,
): Record<string, string> {
  const why: Record<string, string> = {};
  if (airPathWhy !== null) why.airPath = airPathWhy;
  if (view.why !== null) why.view = view.why;
  if (shooting.lines === null) why.linesOfFire = shooting.linesWhy;
  if (shooting.closed === null) why.noShoot = shooting.closedWhy;
  return why;
}
