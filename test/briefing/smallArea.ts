import { readFileSync } from "node:fs";
import type { LoadedArea } from "../../scripts/briefing/loadedArea.ts";
import type { AreaContent, SharedData } from "../../scripts/content/areaContent.ts";
import { type AreaFile, areaFile } from "../../scripts/content/schema/areaSchema.ts";
import { type MapFile, mapFile } from "../../scripts/content/schema/mapFeaturesSchema.ts";
import {
  cautionsFile,
  emergencyFile,
  firearmsFile,
  modelFile,
  standsFile,
  wordingFile,
} from "../../scripts/content/schema/sharedDataSchema.ts";
import { siteFile } from "../../scripts/content/schema/siteSchema.ts";
import { tripFile } from "../../scripts/content/schema/tripSchema.ts";

const read = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../data/${name}.json`, import.meta.url), "utf8"));

/** What all areas share, from the data folder. */
export const SHARED: SharedData = {
  stands: standsFile.parse(read("stands")),
  firearms: firearmsFile.parse(read("firearms")),
  cautions: cautionsFile.parse(read("cautions")),
  emergency: emergencyFile.parse(read("emergency")),
  model: modelFile.parse(read("model")),
  wording: wordingFile.parse(read("wording")),
};

export interface SmallArea {
  facts?: Partial<Record<keyof AreaFile, unknown>>;
  map?: MapFile["features"];
  sites?: Record<string, unknown>[];
  trips?: Record<string, unknown>[];
}

/** A made-up site of 18 degrees facing north-east; the facts given win. */
export const SLOPING_SITE = {
  number: 1,
  name: "Sloping site",
  overlooks: "other",
  position: { lat: -45.0305, lon: 168.6641 },
  platformHeightM: 5,
  facingDeg: 45,
  cover: "timber",
  slope: { slopeDeg: 18, aspectDeg: 45, reason: "by hand" },
  approaches: {
    morning: [{ id: "bench", bearingsDeg: [115, 155], distanceM: [20, 200], use: 0.8 }],
    evening: [{ id: "bench", bearingsDeg: [115, 155], distanceM: [20, 200], use: 0.8 }],
  },
};

/** A made-up area without terrain, checked by the schemas; sites get the ids "site-1", "site-2" ..., trips "trip-1" ... */
export function smallContent({
  facts = {},
  map,
  sites = [SLOPING_SITE],
  trips = [],
}: SmallArea): AreaContent {
  return {
    id: "small-area",
    folder: "/small-area",
    facts: areaFile.parse({
      name: "Small area",
      summary: "Made up.",
      centre: { lat: -45.0312, lon: 168.6626 },
      timezone: "Pacific/Auckland",
      elevationM: 640,
      ...facts,
    }),
    prose: null,
    terrainPath: null,
    map: map === undefined ? null : mapFile.parse({ type: "FeatureCollection", features: map }),
    sites: sites.map((site, i) => ({ id: `site-${i + 1}`, facts: siteFile.parse(site), prose: null })),
    trips: trips.map((trip, i) => ({ id: `trip-${i + 1}`, facts: smallTrip(trip), prose: null })),
    cameras: [],
    roster: null,
    shootingTables: {},
    sourceFiles: [],
  };
}

export function smallArea(area: SmallArea): LoadedArea {
  return { content: smallContent(area), ground: null };
}

function smallTrip(trip: Record<string, unknown>) {
  const kg = { body: 80, clothing: 4, harness: 1.5, pack: 3, weapon: 4, water: 1.5 };
  const harness = { madeOn: null, replaceBy: null, fallen: null };
  const hunter = { id: "a", name: "A", standId: null, firearmId: null, loadKg: kg, handed: null, harness };
  return tripFile.parse({ name: "A trip", hunters: [hunter], ...trip });
}
