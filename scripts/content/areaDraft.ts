import type { CameraRow, ShootingTableRow } from "./areaContent.ts";
import type { Loose } from "./loose.ts";
import type { ReadProse } from "./proseFromMarkdown.ts";
import type { AreaFile } from "./schema/areaSchema.ts";
import type { CameraFile } from "./schema/cameraSchema.ts";
import type { MapFile } from "./schema/mapFeaturesSchema.ts";
import type { RosterFile } from "./schema/rosterSchema.ts";
import type { SiteFile } from "./schema/siteSchema.ts";
import type { ForecastRow, TripFile } from "./schema/tripSchema.ts";

/** One file of facts as read: whole when right, else as far as it could be read. */
export interface FactsDraft<T> {
  /** Path as shown in problems. */
  file: string;
  facts: T | null;
  loose: Loose<T> | null;
}

/** Facts with the prose beside them; the id is the file name. */
export interface NamedDraft<T> extends FactsDraft<T> {
  id: string;
  prose: ReadProse | null;
  proseFile: string;
}

/** A row with the line of its table. */
export type Lined<T> = { line: number; row: T };

export interface ForecastFileDraft {
  file: string;
  rows: Lined<ForecastRow>[];
}

export interface TripDraft extends NamedDraft<TripFile> {
  forecastFile: ForecastFileDraft | null;
}

export interface CameraDraft extends NamedDraft<CameraFile> {
  rows: CameraRow[];
}

/** One area as read from the disk, before it is judged as a whole. */
export interface AreaDraft {
  id: string;
  /** Absolute path of the folder. */
  folder: string;
  /** Folder as shown in problems. */
  shown: string;
  area: NamedDraft<AreaFile>;
  /** null when there is no map file. */
  map: FactsDraft<MapFile> | null;
  sites: NamedDraft<SiteFile>[];
  trips: TripDraft[];
  cameras: CameraDraft[];
  roster: FactsDraft<RosterFile> | null;
  terrainPath: string | null;
  shootingTables: Record<string, ShootingTableRow[]>;
  /** Files that exist below the folder, "photos/bench.jpg", for links and photos. */
  files: ReadonlySet<string>;
  /** Absolute paths of files whose bytes decide the pack. */
  sourceFiles: string[];
}
