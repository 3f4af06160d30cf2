import { join } from "node:path";
import type { ShootingTableRow } from "./areaContent.ts";
import type { AreaDraft, CameraDraft, NamedDraft, TripDraft } from "./areaDraft.ts";
import { oneGeometryProblemEach } from "./checks/checkMap.ts";
import { AREA_FILES, AREA_FOLDERS, isKnownInArea, isTerrainName, notPartWarning } from "./folderNames.ts";
import { localPathProblem } from "./localPath.ts";
import { packHref } from "./packHref.ts";
import { parseCameraTable } from "./parseCameraTable.ts";
import { parseForecastTable } from "./parseForecastTable.ts";
import { parseShootingTable } from "./parseShootingTable.ts";
import type { Problem } from "./problem.ts";
import { type FolderEntry, readFolder } from "./readFolder.ts";
import { factsOf, proseOf, type Reading, readNamedFiles, textOf } from "./readNamedFiles.ts";
import type { FilePlace } from "./readTextFile.ts";
import { type AreaFile, areaFile } from "./schema/areaSchema.ts";
import { cameraFile } from "./schema/cameraSchema.ts";
import { mapFile } from "./schema/mapFeaturesSchema.ts";
import { rosterFile } from "./schema/rosterSchema.ts";
import { SHOOTING_LAYERS } from "./schema/shootingRuleSchema.ts";
import { siteFile } from "./schema/siteSchema.ts";
import { tripFile } from "./schema/tripSchema.ts";

/** Every file of one area; problems are noted in `reading`, and nothing stops at the first. */
export async function readArea(reading: Reading, folder: FilePlace, id: string): Promise<AreaDraft> {
  const inside = (name: string): FilePlace => ({
    path: join(folder.path, name),
    shown: `${folder.shown}/${name}`,
  });
  const listed = await readFolder(folder, reading.root);
  reading.problems.push(...(listed?.problems ?? []));
  const entries = listed?.entries ?? [];
  const has = (name: string): boolean => entries.some((entry) => entry.name === name);

  const area = await readAreaFacts(reading, inside, has("area.md"), id);
  const beforeMap = reading.problems.length;
  const map = has("map.geojson")
    ? {
        file: inside("map.geojson").shown,
        ...(await factsOf(reading, inside("map.geojson"), mapFile, "geojson")),
      }
    : null;
  reading.problems.push(...oneGeometryProblemEach(reading.problems.splice(beforeMap)));
  const sites = await readNamedFiles(reading, inside("sites"), siteFile, () => false, packHref("../"));
  const trips = await readTrips(reading, inside("trips"));
  const cameras = await readCameras(reading, inside("cameras"));
  const roster = has("roster.json")
    ? { file: inside("roster.json").shown, ...(await factsOf(reading, inside("roster.json"), rosterFile)) }
    : null;
  const files = await filesBelow(reading, folder, entries);
  const { tables, names } = await readShootingTables(reading, inside, area, files);

  for (const entry of entries) {
    if (!isKnownInArea(entry.name, entry.isFolder) && !names.has(entry.name)) {
      reading.problems.push(notPartWarning(entry.shown, entry.name, [...AREA_FILES, ...AREA_FOLDERS]));
    }
  }
  const terrain = entries.filter((entry) => !entry.isFolder && isTerrainName(entry.name));
  if (terrain.length > 1) reading.problems.push(twoTerrains(terrain));
  if (terrain[0]) reading.sourceFiles.push(terrain[0].path);
  return {
    id,
    folder: folder.path,
    shown: folder.shown,
    area,
    map,
    sites,
    trips,
    cameras,
    roster,
    terrainPath: terrain[0]?.path ?? null,
    shootingTables: tables,
    files,
    sourceFiles: reading.sourceFiles,
  };
}

async function readAreaFacts(
  reading: Reading,
  inside: (name: string) => FilePlace,
  hasProse: boolean,
  id: string,
): Promise<NamedDraft<AreaFile>> {
  const { path, shown } = inside("area.json");
  const { facts, loose } = await factsOf(reading, { path, shown }, areaFile);
  const prose = hasProse ? await proseOf(reading, inside("area.md"), packHref("")) : null;
  return { id, file: shown, facts, loose, prose, proseFile: inside("area.md").shown };
}

async function readTrips(reading: Reading, folder: FilePlace): Promise<TripDraft[]> {
  const forecasts: FolderEntry[] = [];
  const isForecast = (entry: FolderEntry): boolean => {
    if (entry.isFolder || !/\.forecast\.(csv|json)$/.test(entry.name)) return false;
    forecasts.push(entry);
    return true;
  };
  const named = await readNamedFiles(reading, folder, tripFile, isForecast, packHref("../../"));
  const trips: TripDraft[] = named.map((trip) => ({ ...trip, forecastFile: null }));
  for (const entry of forecasts) {
    const id = entry.name.replace(/\.forecast\.(csv|json)$/, "");
    if (entry.name.endsWith(".json")) {
      reading.problems.push(unreadForecast(entry, `${id}.forecast.csv`));
      continue;
    }
    const text = await textOf(reading, entry, "csv");
    if (text === null) continue;
    const { rows, problems } = parseForecastTable(text, entry.shown);
    reading.problems.push(...problems);
    const trip = trips.find((candidate) => candidate.id === id);
    if (trip) trip.forecastFile = { file: entry.shown, rows };
    else noteWithoutFacts(reading, entry, `${id}.json`);
  }
  return trips;
}

/** A forecast that nobody reads would leave its days without one: said, with the form that is read. */
function unreadForecast({ shown, name }: FolderEntry, readName: string): Problem {
  return {
    ...notPartWarning(shown, name, []),
    expected: readName,
    fix: `a forecast in JSON is not read and its days go without; write its rows into ${readName}`,
  };
}

async function readCameras(reading: Reading, folder: FilePlace): Promise<CameraDraft[]> {
  const tables: FolderEntry[] = [];
  const isExtra = (entry: FolderEntry): boolean => {
    if (entry.isFolder) return entry.name === "camtrap-dp";
    if (!entry.name.endsWith(".csv")) return false;
    tables.push(entry);
    return true;
  };
  const named = await readNamedFiles(reading, folder, cameraFile, isExtra, (target) => target);
  const cameras: CameraDraft[] = named.map((camera) => ({ ...camera, rows: [] }));
  for (const entry of tables) {
    const id = entry.name.slice(0, -".csv".length);
    const text = await textOf(reading, entry, "csv");
    if (text === null) continue;
    const { rows, problems } = parseCameraTable(text, entry.shown);
    reading.problems.push(...problems);
    const camera = cameras.find((candidate) => candidate.id === id);
    if (camera) camera.rows = rows;
    else noteWithoutFacts(reading, entry, `${id}.json`);
  }
  return cameras;
}

function noteWithoutFacts(reading: Reading, entry: FolderEntry, needed: string): void {
  reading.problems.push({
    code: "file-missing",
    file: entry.shown,
    field: "",
    found: `${entry.name} without ${needed}`,
    expected: `the facts in ${needed} beside it`,
    fix: `write ${needed}, or delete ${entry.name}`,
  });
}

async function readShootingTables(
  reading: Reading,
  inside: (name: string) => FilePlace,
  area: NamedDraft<AreaFile>,
  files: ReadonlySet<string>,
): Promise<{ tables: Record<string, ShootingTableRow[]>; names: Set<string> }> {
  const tables: Record<string, ShootingTableRow[]> = {};
  const names = new Set<string>();
  for (const layer of SHOOTING_LAYERS) {
    for (const [i, rule] of (area.loose?.shootingLight?.[layer] ?? []).entries()) {
      const reference = rule?.reference;
      if (reference?.kind !== "table" || typeof reference.file !== "string" || names.has(reference.file))
        continue;
      names.add(reference.file);
      const field = `shootingLight.${layer}.${i}.reference.file`;
      const problem = localPathProblem(reference.file, { file: area.file, field }, files);
      if (problem) {
        reading.problems.push(problem);
        continue;
      }
      const place = inside(reference.file);
      const text = await textOf(reading, place, "csv");
      if (text === null) continue;
      const { rows, problems } = parseShootingTable(text, place.shown);
      reading.problems.push(...problems);
      tables[reference.file] = rows;
    }
  }
  return { tables, names };
}

async function filesBelow(
  reading: Reading,
  folder: FilePlace,
  entries: readonly FolderEntry[],
): Promise<Set<string>> {
  const files = new Set(entries.filter((entry) => !entry.isFolder).map((entry) => entry.name));
  for (const { name } of entries.filter((entry) => entry.isFolder)) {
    const listed = await readFolder(
      { path: join(folder.path, name), shown: `${folder.shown}/${name}` },
      reading.root,
    );
    if (name === "photos") reading.problems.push(...(listed?.problems ?? []));
    for (const entry of listed?.entries ?? []) if (!entry.isFolder) files.add(`${name}/${entry.name}`);
  }
  return files;
}

function twoTerrains(terrain: readonly FolderEntry[]): Reading["problems"][number] {
  return {
    code: "terrain-twice",
    file: terrain[1]!.shown,
    field: "",
    found: terrain.map((entry) => entry.name).join(", "),
    expected: "one elevation file in the folder of an area",
    fix: "keep the one that covers the area; merge tiles into one file first",
  };
}
