import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { describeProblems } from "../../scripts/content/describeProblem.ts";
import type { Problem } from "../../scripts/content/problem.ts";
import { type ReadContent, type ReadContentOptions, readContent } from "../../scripts/content/readContent.ts";

/** Files by path from a folder that holds content/ and data/; objects are written as JSON, null removes a file. */
export type Files = Record<string, string | object | Uint8Array | null>;

export const AREA = "content/areas/larch-valley";

export const area = {
  name: "Larch Valley",
  summary: "An invented valley.",
  centre: { lat: -45.0312, lon: 168.6626 },
  timezone: "Pacific/Auckland",
  elevationM: 640,
  asOf: "2027-04-01T12:00:00+13:00",
  camps: [{ id: "hut", name: "Hut", position: { lat: -45.033, lon: 168.66 } }],
  parkings: [{ id: "road-end", name: "Road end", position: { lat: -45.034, lon: 168.659 } }],
  blocks: [{ id: "east", name: "East block", centre: { lat: -45.03, lon: 168.665 } }],
  season: [
    {
      species: "red deer",
      from: "2027-03-01",
      to: "2027-05-31",
      method: "rifle",
      land: "public",
      source: "Demo rule (invented)",
      checkedOn: "2027-02-01",
    },
  ],
};

export const rule = {
  id: "half-hour",
  jurisdiction: "invented",
  source: { citation: "Demo rule (invented)", checkedOn: "2027-02-01", status: "confirmed" },
  valid: { from: "2027-01-01", to: "2027-12-31" },
  applies: { species: ["any"], method: ["any"], land: ["any"] },
  reading: "allowed",
  reference: { kind: "site" },
  windows: [{ start: { anchor: "sunrise", offsetMin: -30 }, end: { anchor: "sunset", offsetMin: 30 } }],
};

export const site = {
  number: 3,
  name: "Larch bench",
  block: "east",
  overlooks: "wallow",
  position: { lat: -45.0305, lon: 168.6641 },
  grid: "59G LL 15993 11006",
  platformHeightM: 5,
  facingDeg: 20,
  cover: "timber",
  approaches: { morning: [{ id: "bench-trail", distanceM: [20, 200], use: 0.8, along: "bench-trail" }] },
  walkIns: [{ id: "creek", name: "Creek way", from: "hut", along: "creek-way", minutes: [35, 50] }],
};

export const hunter = {
  id: "a",
  name: "A",
  standId: "stand-a",
  firearmId: "rifle",
  loadKg: { body: 80, clothing: 4, harness: 2, pack: 6, weapon: 4, water: 2 },
  handed: "right",
  harness: { madeOn: "2025-05", replaceBy: "2030-05", fallen: false },
};

export const trip = {
  name: "April",
  from: "2027-04-02",
  to: "2027-04-05",
  hunters: [hunter],
  base: "hut",
  allowedSites: ["larch-bench"],
  sits: [{ localDate: "2027-04-02", session: "morning", hunter: "a", site: "larch-bench", walkIn: "creek" }],
  forecast: {
    source: "valley forecast",
    issuedAt: "2027-04-01T18:00:00+13:00",
    units: { speed: "kmh", temp: "C", rain: "mm" },
  },
};

export const forecastCsv =
  "localDate,hour,windFrom,windSpeed,gust,cloudShare,temp\n2027-04-02,05:00,NW,6,12,0.1,9\n2027-04-02,13:00,315,,,0.3,15\n";

const line = (id: string, kind: string, coordinates: unknown) => ({
  type: "Feature",
  geometry: { type: "LineString", coordinates },
  properties: { id, kind },
});

export const features = {
  trail: line("bench-trail", "deer-trail", [
    [168.664, -45.031],
    [168.665, -45.03],
  ]),
  way: line("creek-way", "walk-in", [
    [168.66, -45.033],
    [168.6641, -45.0305],
  ]),
  boundary: {
    type: "Feature",
    geometry: {
      type: "Polygon",
      coordinates: [
        [
          [168.65, -45.04],
          [168.68, -45.04],
          [168.68, -45.02],
          [168.65, -45.04],
        ],
      ],
    },
    properties: { id: "boundary", kind: "boundary" },
  },
};

export const map = (...list: object[]) => ({ type: "FeatureCollection", features: list });

/** A whole small area without a problem, and the shared data. */
export const wholeContent: Files = {
  [`${AREA}/area.json`]: area,
  [`${AREA}/area.md`]:
    "# The valley\n\nSee [the bench](sites/larch-bench.md) and [the air](#the-air).\n\n# The air\n\nIt falls.\n",
  [`${AREA}/map.geojson`]: map(features.trail, features.way, features.boundary),
  [`${AREA}/sites/larch-bench.json`]: site,
  [`${AREA}/sites/larch-bench.md`]: "A bench above the creek.\n",
  [`${AREA}/trips/april.json`]: trip,
  [`${AREA}/trips/april.forecast.csv`]: forecastCsv,
  [`${AREA}/cameras/bench-camera.json`]: {
    name: "Bench camera",
    position: { lat: -45.0305, lon: 168.664 },
    site: "larch-bench",
    approach: "bench-trail",
  },
  [`${AREA}/cameras/bench-camera.csv`]: "at,species,class,count,direction\n2027-03-01 06:10,red deer,,2,\n",
  [`${AREA}/roster.json`]: {
    buffer: 1,
    rows: [{ block: "east", from: "2027-04-02", to: "2027-04-05", party: "Kettle", roadEnd: "road-end" }],
  },
  "data/stands.json": [
    {
      id: "stand-a",
      name: "stand",
      trunkMinMm: 200,
      trunkMaxMm: 500,
      ratedLoadKg: 136,
      weightKg: 11,
      maxPlatformHeightM: 6,
    },
  ],
  "data/firearms.json": [
    { id: "rifle", name: "rifle", weaponClass: "rifle", dangerM: 4800, laneLimitM: 200, source: "invented" },
  ],
  "data/cautions.json": [
    { id: "F1", severity: "S1", title: "Tied on", text: "Clip on.", defersTo: "the maker" },
  ],
  "data/emergency.json": { call: ["Say where you are."], firstAid: [] },
  "data/model.json": [
    { id: "lagMin", value: 20, unit: "min", low: 10, high: 30, reason: "a choice", status: "choice" },
  ],
  "data/wording.json": { tiedOn: "Clip on." },
};

/** Writes the files into a fresh folder, calls, and removes the folder again. */
export async function inFolder<T>(files: Files, use: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), "leelight-content-"));
  try {
    for (const [path, content] of Object.entries(files)) {
      if (content === null) continue;
      await mkdir(dirname(join(folder, path)), { recursive: true });
      const isRaw = typeof content === "string" || content instanceof Uint8Array;
      await writeFile(join(folder, path), isRaw ? content : JSON.stringify(content, null, 2));
    }
    return await use(folder);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** Reads the small area with changes; paths in problems start at content/ or data/. */
export async function readChanged(changes: Files, options: ReadContentOptions = {}): Promise<ReadContent> {
  return inFolder({ ...wholeContent, ...changes }, async (folder) => {
    const read = await readContent(join(folder, "content"), join(folder, "data"), options);
    return { ...read, problems: read.problems.map((problem) => inside(problem, folder)) };
  });
}

function inside(problem: Problem, folder: string): Problem {
  const at = problem.file.indexOf(`${folder.slice(1)}/`);
  return at === -1 ? problem : { ...problem, file: problem.file.slice(at + folder.length) };
}

/** Problems as one text each, for failures that tell what was found. */
export function told(problems: readonly Problem[]): string {
  return describeProblems(problems);
}
