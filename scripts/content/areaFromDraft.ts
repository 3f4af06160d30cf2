import type { AreaContent, SiteContent, TripContent } from "./areaContent.ts";
import type { AreaDraft, NamedDraft, TripDraft } from "./areaDraft.ts";
import type { ForecastRow } from "./schema/tripSchema.ts";

/**
 * The area as pages and checks of the ground use it: sites by number, trips by first day then id. Null when area.json is
 * wrong; other files that are wrong are left out, so the result is only whole when no problem was found.
 */
export function areaFromDraft(draft: AreaDraft): AreaContent | null {
  const facts = draft.area.facts;
  if (facts === null) return null;
  const sites: SiteContent[] = draft.sites.flatMap(whole);
  const trips: TripContent[] = draft.trips.flatMap((trip) => whole(withForecastFile(trip)));
  return {
    id: draft.id,
    folder: draft.folder,
    facts,
    prose: draft.area.prose?.prose ?? null,
    terrainPath: draft.terrainPath,
    map: draft.map?.facts ?? null,
    sites: sites.sort((a, b) => a.facts.number - b.facts.number),
    trips: trips.sort((a, b) => order(a.facts.from, b.facts.from) || order(a.id, b.id)),
    cameras: draft.cameras.flatMap((camera) =>
      camera.facts ? { id: camera.id, facts: camera.facts, rows: camera.rows } : [],
    ),
    roster: draft.roster?.facts ?? null,
    shootingTables: draft.shootingTables,
    sourceFiles: [...draft.sourceFiles].sort(),
  };
}

function whole<T>({
  id,
  facts,
  prose,
}: NamedDraft<T>): { id: string; facts: T; prose: SiteContent["prose"] }[] {
  return facts === null ? [] : [{ id, facts, prose: prose?.prose ?? null }];
}

function withForecastFile(trip: TripDraft): TripDraft {
  const forecast = trip.facts?.forecast;
  if (!trip.facts || !forecast) return trip;
  const rows = [...forecast.rows, ...(trip.forecastFile?.rows ?? []).map(({ row }) => row)];
  return { ...trip, facts: { ...trip.facts, forecast: { ...forecast, rows: rows.sort(byTime) } } };
}

function byTime(a: ForecastRow, b: ForecastRow): number {
  return order(a.localDate, b.localDate) || order(a.hour ?? "", b.hour ?? "");
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
