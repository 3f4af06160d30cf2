import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { AreaContent, SharedData } from "../../scripts/content/areaContent.ts";
import type { Problem } from "../../scripts/content/problem.ts";
import type { DetailsFile } from "../../scripts/content/schema/detailsSchema.ts";
import type { PackFile } from "../../scripts/content/schema/packSchema.ts";
import type { AreaPack } from "../../scripts/publish/areaPack.ts";
import type { PackOptions } from "../../scripts/publish/packOptions.ts";
import type { PackSteps } from "../../scripts/publish/preparePack.ts";

/** Reads `name` and `summary` of areas/<id>/area.json and nothing else; a name that is no text is a problem. */
export const stubSteps: PackSteps = {
  async loadAreas({ contentDir, area }) {
    const folder = join(contentDir, "areas");
    const ids = (existsSync(folder) ? readdirSync(folder).sort() : []).filter(
      (id) => area === null || id === area,
    );
    const problems: Problem[] = [];
    const areas = ids.map((id) => {
      const facts = JSON.parse(readFileSync(join(folder, id, "area.json"), "utf8"));
      if (typeof facts.name !== "string") problems.push(nameProblem(id, facts.name));
      return { content: stubContent(id, join(folder, id), facts) };
    });
    return { areas, shared: stubShared, problems };
  },
  composePack: ({ content }, _shared, options) => stubPack(content, options),
  composePages: (packs) => ({
    index: [
      {
        permalink: "index.html",
        root: "",
        title: "Areas",
        areas: packs.map(({ content, pack }) => ({
          name: pack.area.name,
          href: `areas/${content.id}/index.html`,
        })),
      },
    ],
    area: packs.map(({ content, pack }) => ({
      permalink: `areas/${content.id}/index.html`,
      root: "../../",
      title: pack.area.name,
      summary: content.facts.summary,
      builtAt: pack.builtAt,
    })),
    day: [],
  }),
};

export const stubShared: SharedData = {
  stands: [],
  firearms: [],
  cautions: [],
  emergency: { call: [], firstAid: [] },
  model: [],
  wording: {},
};

function nameProblem(id: string, found: unknown): Problem {
  return {
    code: "terrain-stub",
    file: `content/areas/${id}/area.json`,
    field: "name",
    found: String(found),
    expected: "text",
    fix: 'write "name": "Larch Valley"',
  };
}

function stubContent(
  id: string,
  folder: string,
  facts: { name: string; summary: string; trips?: string[] },
): AreaContent {
  return {
    id,
    folder,
    facts: {
      name: facts.name,
      summary: facts.summary,
      centre: { lat: -45, lon: 168 },
      timezone: "Pacific/Auckland",
    } as AreaContent["facts"],
    prose: null,
    terrainPath: null,
    map: null,
    sites: [],
    trips: (facts.trips ?? []).map((trip) => ({ id: trip, facts: {} as never, prose: null })),
    cameras: [],
    roster: null,
    shootingTables: {},
    sourceFiles: [],
  };
}

export function stubPack(content: AreaContent, options: Pick<PackOptions, "builtAt">): AreaPack {
  const builtAt = options.builtAt.toISOString().replace(/\.\d+Z$/, "+00:00");
  const pack: PackFile = {
    schemaVersion: 1,
    generator: "leelight 0.1.0",
    builtAt,
    asOf: "2026-03-30T20:00:00+13:00",
    edition: "owner",
    notValidAfter: "2026-04-05",
    year: 2026,
    tableDate: "2026-04-04",
    tzVersion: "2025c",
    why: {},
    area: {
      id: content.id,
      name: content.facts.name,
      centre: content.facts.centre,
      timezone: content.facts.timezone,
      locale: "en-NZ",
      units: "metric",
      elevationM: 640,
      terrain: null,
      magnetic: null,
      why: { terrain: "no terrain file", magnetic: "not computed" },
    },
    days: [],
    sites: [],
    coverage: [],
    trips: [],
    notChecked: [],
  };
  const details: DetailsFile = {
    schemaVersion: 1,
    area: content.id,
    sessions: [],
    aboutEvents: [],
    shootingNotes: [],
    helicopterSpot: null,
    gapSentences: [],
    sites: [],
    trips: null,
  };
  return { content, pack, details };
}
