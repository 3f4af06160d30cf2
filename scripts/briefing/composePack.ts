import { modelConstants } from "../air/modelConstants.ts";
import type { AreaContent, SharedData } from "../content/areaContent.ts";
import type { DetailsFile } from "../content/schema/detailsSchema.ts";
import type { PackFile, PackSite } from "../content/schema/packSchema.ts";
import { siteStop } from "../safety/siteChecks.ts";
import { elevationAtPosition } from "../terrain/elevationGrid.ts";
import { civilAt } from "../time/civilTime.ts";
import { composeCoverage } from "./composeCoverage.ts";
import { composeDays } from "./composeDays.ts";
import { composeHelicopterSpot } from "./composeHelicopterSpot.ts";
import { composeSite } from "./composeSite.ts";
import { daySessions } from "./daySessions.ts";
import { forecastHours } from "./forecastSeries.ts";
import { failedPermission } from "./heldPermission.ts";
import { areaHunt } from "./hunt.ts";
import { legalLight } from "./legalLight.ts";
import type { LoadedArea } from "./loadedArea.ts";
import { packMagnetic } from "./magneticNorth.ts";
import { mapShapes } from "./mapShapes.ts";
import { notChecked } from "./notChecked.ts";
import { packCheck } from "./packCheck.ts";
import type { PackContext } from "./packContext.ts";
import { notValidAfter, packYear, phaseDates, tableDate } from "./packDates.ts";
import { packInstant } from "./packInstant.ts";
import { packMetres, packPosition } from "./packNumbers.ts";
import { sunAnchorsOf } from "./sunAnchorsOf.ts";
import { sunTablesOf } from "./sunTables.ts";
import { composeTrips } from "./trips/composeTrips.ts";

/** What a pack is asked to be; null where content or the build decides. */
export interface ComposeOptions {
  edition: PackFile["edition"];
  trip: string | null;
  year: number | null;
  asOf: Date | null;
  builtAt: Date;
  /** name and version of the program */
  generator: string;
  /** version of the time zone rules that the times were computed with */
  tzVersion: string;
}

export interface ComposedPack {
  content: AreaContent;
  pack: PackFile;
  details: DetailsFile;
}

/** Every number of one area's pages: pack.json and details.json. Pure: the same content and options give the same values. */
export function composePack(area: LoadedArea, shared: SharedData, options: ComposeOptions): ComposedPack {
  const context = packContext(area, shared, options);
  const { content } = area;
  const { timezone, trips, year, asOf, asOfDate, tableDate: table } = context;
  const composed = content.sites.map((site) => composeSite(site, context));
  const sites = composed.map((entry) => entry.site);
  const covered = composeCoverage(
    sites.filter((site) => mayBeSat(site, context)),
    context.sessions.map((session) => session.id),
  );
  const days = composeDays(content, trips, year, context.sunOf);
  const tripDays = composeTrips(context, composed);
  const helicopter = composeHelicopterSpot(context);
  return {
    content,
    pack: {
      schemaVersion: 1,
      generator: options.generator,
      builtAt: packInstant(options.builtAt, timezone),
      asOf: packInstant(asOf, timezone),
      edition: options.edition,
      notValidAfter: notValidAfter(content, trips, asOfDate),
      year,
      tableDate: table,
      tzVersion: options.tzVersion,
      why: {},
      area: packArea(area, table),
      days: days.days,
      sites,
      coverage: covered.coverage,
      trips: tripDays.trips,
      notChecked: notChecked(sites, tripDays.trips, content, helicopter),
    },
    details: {
      schemaVersion: 1,
      area: content.id,
      sessions: context.sessions.map((session) => ({
        id: session.id,
        from: packInstant(session.from, timezone),
        to: packInstant(session.to, timezone),
        why: session.from === null ? { from: session.why.from ?? "", to: session.why.to ?? "" } : {},
      })),
      aboutEvents: days.aboutEvents,
      shootingNotes: days.shootingNotes,
      helicopterSpot: helicopter === null ? null : { ...packCheck(helicopter), id: "C17" },
      gapSentences: covered.gapSentences,
      sites: composed.map((entry) => entry.details),
      trips: tripDays.details,
    },
  };
}

/** What every part of the pack of an area is computed from, by the options of the build. */
export function packContext(area: LoadedArea, shared: SharedData, options: ComposeOptions): PackContext {
  const { content } = area;
  const { timezone, centre } = content.facts;
  const constants = modelConstants(shared.model);
  const trips = content.trips.filter((trip) => options.trip === null || trip.id === options.trip);
  const asOf =
    options.asOf ?? (content.facts.asOf === undefined ? options.builtAt : new Date(content.facts.asOf));
  const asOfDate = civilAt(asOf, timezone).localDate;
  const year = packYear(content, trips, options.year, asOfDate);
  const table = tableDate(content, trips, year);
  const sunOf = sunAnchorsOf(timezone);
  const hunt = areaHunt(content);
  const sessionsOn = (localDate: string) =>
    daySessions(content, localDate, legalLight(content, hunt, localDate, centre, sunOf), sunOf);
  const forecasts = trips.map((trip) => forecastHours(trip, timezone, sessionStartOf(sessionsOn)));
  return {
    area,
    shared,
    constants,
    trips,
    shapes: mapShapes(content.map),
    timezone,
    year,
    asOf,
    asOfDate,
    tableDate: table,
    phaseDates: phaseDates(trips, year, table),
    sunOf,
    sunTableOf: sunTablesOf(centre, timezone, constants),
    sessions: sessionsOn(table),
    forecastOf: (localDate) =>
      forecasts
        .map((hours) => hours.filter((hour) => hour.localDate === localDate))
        .find((hours) => hours.length > 0) ?? [],
  };
}

function sessionStartOf(sessionsOn: (localDate: string) => { id: string; from: Date | null }[]) {
  return (localDate: string, session: string): Date | null =>
    sessionsOn(localDate).find((entry) => entry.id === session)?.from ?? null;
}

/** A STOP takes a site off every list of sites to sit at, and so does a permission that is over. */
function mayBeSat(site: PackSite, { area, tableDate }: PackContext): boolean {
  return (
    siteStop(site.checks, site.id) === null && failedPermission(area.content, site.block, tableDate) === null
  );
}

function packArea(area: LoadedArea, table: string): PackFile["area"] {
  const { id, facts } = area.content;
  const elevationM =
    area.ground === null ? (facts.elevationM ?? null) : elevationAtPosition(area.ground.grid, facts.centre);
  const { magnetic, why: magneticWhy } = packMagnetic(area.content, elevationM, table);
  const why: Record<string, string> = {};
  if (elevationM === null) why.elevationM = "the height of the centre is not known";
  if (area.ground === null) why.terrain = "no terrain file";
  if (magneticWhy !== null) why.magnetic = magneticWhy;
  else if (magnetic?.yearlyChangeDeg === null) why.yearlyChangeDeg = "the owner's value gives none";
  return {
    id,
    name: facts.name,
    centre: packPosition(facts.centre),
    timezone: facts.timezone,
    locale: facts.locale ?? (facts.units === "us" ? "en-US" : "en-GB"),
    units: facts.units,
    elevationM: elevationM === null ? null : packMetres(elevationM),
    terrain: area.ground === null ? null : packTerrain(area.ground.grid),
    magnetic,
    why,
  };
}

function packTerrain(grid: NonNullable<LoadedArea["ground"]>["grid"]): PackFile["area"]["terrain"] {
  return {
    format: grid.source.format,
    zone: `${grid.zone.number}${grid.zone.hemisphere}`,
    cellSizeM: packMetres(grid.cellSizeM),
    sourceCellM: packMetres(Math.max(grid.sourceCellM.eastM, grid.sourceCellM.northM)),
    rows: grid.rows,
    columns: grid.columns,
    filledCells: grid.source.filledCells,
    voidCells: grid.source.voids,
  };
}
