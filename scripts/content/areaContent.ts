import type { AreaFile } from "./schema/areaSchema.ts";
import type { CameraFile } from "./schema/cameraSchema.ts";
import type { MapFile } from "./schema/mapFeaturesSchema.ts";
import type { RosterFile } from "./schema/rosterSchema.ts";
import type { Caution, EmergencyTexts, Firearm, ModelRow, Stand } from "./schema/sharedDataSchema.ts";
import type { SiteFile } from "./schema/siteSchema.ts";
import type { TripFile } from "./schema/tripSchema.ts";

/** Prose of an area, site or trip, rendered to HTML without raw HTML; one section a heading, the first may have none. */
export interface Prose {
  sections: { id: string; heading: string | null; html: string }[];
}

export interface SiteContent {
  id: string;
  facts: SiteFile;
  prose: Prose | null;
}

/** A trip; `facts.forecast.rows` holds the rows of its forecast file too, in the units of the trip. */
export interface TripContent {
  id: string;
  facts: TripFile;
  prose: Prose | null;
}

/** One detection as the camera wrote it: its own clock, not corrected. */
export interface CameraRow {
  at: string;
  species: string;
  class: string | null;
  count: number;
  direction: string | null;
}

export interface CameraContent {
  id: string;
  facts: CameraFile;
  rows: CameraRow[];
}

/** One row of an official table of legal hours: a date, or a span of the year MM-DD to MM-DD. */
export type ShootingTableRow = { start: string; end: string } & (
  | { localDate: string }
  | { from: string; to: string }
);

/** One area as its owner wrote it, checked; sites by number, trips by date then id. */
export interface AreaContent {
  id: string;
  /** absolute path of the folder of the area */
  folder: string;
  facts: AreaFile;
  prose: Prose | null;
  /** absolute path of the elevation file, or null */
  terrainPath: string | null;
  map: MapFile | null;
  sites: SiteContent[];
  trips: TripContent[];
  cameras: CameraContent[];
  roster: RosterFile | null;
  /** official tables of legal hours by the file name that a rule gives */
  shootingTables: Record<string, ShootingTableRow[]>;
  /** files whose bytes decide the pack, for caches and reproducibility */
  sourceFiles: string[];
}

/** What all areas share (data/). */
export interface SharedData {
  stands: Stand[];
  firearms: Firearm[];
  cautions: Caution[];
  emergency: EmergencyTexts;
  model: ModelRow[];
  wording: Record<string, string>;
}
