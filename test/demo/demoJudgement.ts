import { fileURLToPath } from "node:url";
import { type ModelConstants, modelConstants } from "../../scripts/air/modelConstants.ts";
import { sessionVerdict, type WindRow } from "../../scripts/air/sessionVerdict.ts";
import type { Verdict } from "../../scripts/air/slopeSite.ts";
import { type WindTableRow, windTableRows } from "../../scripts/air/windTableRows.ts";
import { daySessions, tableStretch } from "../../scripts/briefing/daySessions.ts";
import { forecastHours, weatherOfDay } from "../../scripts/briefing/forecastSeries.ts";
import { type Hunt, tripHunt } from "../../scripts/briefing/hunt.ts";
import { legalLight } from "../../scripts/briefing/legalLight.ts";
import type { LoadedArea } from "../../scripts/briefing/loadedArea.ts";
import { mapShapes } from "../../scripts/briefing/mapShapes.ts";
import { airOfDay, approachesOf, localNotesOf } from "../../scripts/briefing/siteAir.ts";
import { siteGround, slopeSite } from "../../scripts/briefing/siteGround.ts";
import { sunAnchorsOf } from "../../scripts/briefing/sunAnchorsOf.ts";
import { sunTablesOf } from "../../scripts/briefing/sunTables.ts";
import type { SharedData } from "../../scripts/content/areaContent.ts";
import { loadAreas } from "../../scripts/publish/loadAreas.ts";
import { civilAt } from "../../scripts/time/civilTime.ts";

const folder = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));

/** Both demonstration areas as the build reads them, without a problem. */
export async function demoLoaded(): Promise<{ areas: Map<string, LoadedArea>; shared: SharedData }> {
  const { areas, shared, problems } = await loadAreas(folder("content"), folder("data"), null);
  if (problems.length > 0) throw new Error(JSON.stringify(problems, null, 2));
  return { areas: new Map(areas.map((area) => [area.content.id, area])), shared };
}

/** One day of an area as a careful reader would ask about it. */
export function demoDay(area: LoadedArea, shared: SharedData, localDate: string) {
  const { content } = area;
  const { timezone, centre } = content.facts;
  const constants: ModelConstants = modelConstants(shared.model);
  const sunOf = sunAnchorsOf(timezone);
  const sunTableOf = sunTablesOf(centre, timezone, constants);
  const shapes = mapShapes(content.map);
  const trip = content.trips.find(({ facts }) => facts.from <= localDate && localDate <= facts.to)!;
  const shooting = legalLight(content, tripHunt(content, trip), localDate, centre, sunOf);
  const sessions = daySessions(content, localDate, shooting, sunOf).flatMap((session) => {
    const stretch = tableStretch(session);
    return stretch === null ? [] : [{ session: session.id, ...stretch }];
  });
  const hours = forecastHours(trip, timezone, () => null).filter((hour) => hour.localDate === localDate);
  const clock = (at: Date | null): string | null => (at === null ? null : civilAt(at, timezone).clock);

  const ofSite = (id: string) => {
    const site = content.sites.find((one) => one.id === id)!;
    const ground = siteGround(site, area.ground, null, constants);
    const { site: slope } = slopeSite(site, ground);
    return { site, ground, slope: slope! };
  };

  return {
    clock,
    siteIds: content.sites.map(({ id }) => id),
    landformOf: (id: string) => ofSite(id).ground.landform,
    /** slope air under a clear sky, as the tables have it */
    clearAir(id: string) {
      return airOfDay(ofSite(id).slope, localDate, timezone, [], sunTableOf, constants);
    },
    /** the wind table of a site on this day, local notes left out: what the model says */
    windTable(id: string): WindTableRow[] {
      const { site, slope } = ofSite(id);
      return windTableRows({
        site: slope,
        air: airOfDay(slope, localDate, timezone, [], sunTableOf, constants),
        airWhy: null,
        sessions: sessions.map((session) => ({
          ...session,
          approaches: approachesOf(site, session.session, shapes),
        })),
        localNotes: [],
        constants,
      });
    },
    /** one session under the forecast of the day, from a clock time on when one is given */
    underForecast(id: string, session: string, fromClock?: string) {
      const { site, slope } = ofSite(id);
      const stretch = sessions.find((one) => one.session === session)!;
      const startsAt = fromClock ? hours.find(({ at }) => clock(at) === fromClock)!.at : stretch.from;
      const wind: WindRow[] = hours.map(({ at, windFromDeg, windSpeedMps }) => ({
        at,
        windFromDeg,
        windSpeedMps,
      }));
      return sessionVerdict({
        site: slope,
        air: airOfDay(slope, localDate, timezone, weatherOfDay(hours, localDate), sunTableOf, constants),
        airWhy: null,
        window: { session, from: startsAt, to: stretch.to },
        approaches: approachesOf(site, session, shapes),
        wind,
        tableCell: null,
        localNotes: localNotesOf(site, localDate, timezone),
        clockText: (at) => civilAt(at, timezone).clock,
        constants,
      });
    },
    /** the legal hours of a hunt, "07:19-18:15", with the layer that sets the end */
    legal(hunt: Partial<Hunt> = {}) {
      const light = legalLight(content, { ...tripHunt(content, trip), ...hunt }, localDate, centre, sunOf);
      return {
        ...light,
        text: `${clock(light.start)}-${clock(light.end)}`,
        civil: civilAt(light.end ?? hours[0]!.at, timezone),
      };
    },
  };
}

/** Verdicts of a wind table for one session, phase and class, wind by wind. */
export function verdicts(
  table: WindTableRow[],
  session: string,
  phase: WindTableRow["phase"],
  windClass: WindTableRow["class"],
  winds: string[],
): Verdict[] {
  return winds.map(
    (wind) =>
      table.find(
        (row) =>
          row.session === session && row.phase === phase && row.class === windClass && row.windFrom === wind,
      )!.verdict,
  );
}
