import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { areaFile } from "../../scripts/content/schema/areaSchema.ts";
import { cameraFile } from "../../scripts/content/schema/cameraSchema.ts";
import { mapFile } from "../../scripts/content/schema/mapFeaturesSchema.ts";
import { rosterFile } from "../../scripts/content/schema/rosterSchema.ts";
import { firearmsFile, standsFile } from "../../scripts/content/schema/sharedDataSchema.ts";
import { siteFile } from "../../scripts/content/schema/siteSchema.ts";
import { tripFile } from "../../scripts/content/schema/tripSchema.ts";
import { demoAreas } from "../../scripts/demo/demoAreas.ts";
import { areaFolder, filesBelow, readJson } from "./demoContent.ts";

const data = join(areaFolder("."), "../../data");
const stands = standsFile.parse(readJson(data, "stands.json"));
const firearms = firearmsFile.parse(readJson(data, "firearms.json"));

const schemas = [
  { files: /^area\.json$/, schema: areaFile },
  { files: /^map\.geojson$/, schema: mapFile },
  { files: /^sites\/.*\.json$/, schema: siteFile },
  { files: /^trips\/.*\.json$/, schema: tripFile },
  { files: /^cameras\/.*\.json$/, schema: cameraFile },
  { files: /^roster\.json$/, schema: rosterFile },
];

describe.each(demoAreas.map(({ id }) => id))("%s", (id) => {
  const folder = areaFolder(id);
  const paths = filesBelow(folder);
  const named = (pattern: RegExp) => paths.filter((path) => pattern.test(path));
  const idsIn = (name: string) =>
    named(new RegExp(`^${name}/.*\\.json$`)).map((path) => path.slice(name.length + 1, -5));
  const area = areaFile.parse(readJson(folder, "area.json"));
  const features = mapFile
    .parse(readJson(folder, "map.geojson"))
    .features.map(({ properties }) => properties);
  const sites = idsIn("sites").map((site) => siteFile.parse(readJson(folder, `sites/${site}.json`)));
  const trips = idsIn("trips").map((trip) => tripFile.parse(readJson(folder, `trips/${trip}.json`)));

  test("keeps every file to its schema, unknown keys refused", () => {
    const problems = schemas.flatMap(({ files, schema }) =>
      named(files).flatMap((path) => {
        const found = schema.safeParse(readJson(folder, path));
        return found.success
          ? []
          : found.error.issues.map((issue) => `${path}: ${issue.path.join(".")} ${issue.message}`);
      }),
    );
    expect(problems).toEqual([]);
    expect(named(/\.json$/).length).toBeGreaterThan(14);
  });

  test("links every file to its schema, which is there", () => {
    const links = schemas.flatMap(({ files }) =>
      named(files).map((path) =>
        join(folder, path, "..", (readJson(folder, path) as { $schema: string }).$schema),
      ),
    );
    expect(links.length).toBeGreaterThan(16);
    expect(links.filter((link) => !existsSync(link))).toEqual([]);
  });

  test("names its features once, and every feature that a file names is there", () => {
    const featureIds = features.map((feature) => feature.id);
    expect(new Set(featureIds).size).toBe(featureIds.length);
    const wanted = sites.flatMap(({ walkIns }) => walkIns.map(({ along }) => along));
    expect(featureIds).toEqual(expect.arrayContaining([...wanted, area.emergency.helicopterSpot?.feature]));
  });

  test("starts every walk-in at a camp or a parking, and puts every site in a block", () => {
    const starts = [...area.camps, ...area.parkings].map((place) => place.id);
    expect(starts).toEqual(
      expect.arrayContaining(sites.flatMap(({ walkIns }) => walkIns.map(({ from }) => from))),
    );
    const blocks = area.blocks.map((block) => block.id);
    expect(blocks).toEqual(expect.arrayContaining(sites.map(({ block }) => block)));
    const lapsed = area.permission.flatMap(({ block }) => block ?? []);
    expect(blocks).toEqual(expect.arrayContaining(lapsed));
  });

  test("gives hunters stands and weapons that all areas share, and trips sites that are there", () => {
    const hunters = trips.flatMap((trip) => trip.hunters);
    expect(stands.map((stand) => stand.id)).toEqual(
      expect.arrayContaining(hunters.map(({ standId }) => standId)),
    );
    expect(firearms.map(({ id: firearm }) => firearm)).toEqual(
      expect.arrayContaining(hunters.map(({ firearmId }) => firearmId)),
    );
    expect(idsIn("sites")).toEqual(
      expect.arrayContaining(trips.flatMap(({ allowedSites = [] }) => allowedSites)),
    );
    const bases = [...area.camps, ...area.parkings].map((place) => place.id);
    expect(bases).toEqual(expect.arrayContaining(trips.map(({ base }) => base)));
  });

  test("pairs every prose file with its facts and every camera with its table", () => {
    const partners = named(/\.md$/).map((path) => path.replace(/md$/, "json"));
    expect(paths).toEqual(expect.arrayContaining(partners));
    const tables = idsIn("cameras").map((camera) => `cameras/${camera}.csv`);
    expect(tables).toEqual(named(/^cameras\/.*\.csv$/));
    const watched = idsIn("cameras").map(
      (camera) => cameraFile.parse(readJson(folder, `cameras/${camera}.json`)).site,
    );
    expect(idsIn("sites")).toEqual(expect.arrayContaining(watched));
  });

  test("says that it is a demonstration and cites nothing real", () => {
    expect(area.demonstration).toBe(true);
    const rules = Object.values(area.shootingLight).flatMap((layer) => layer ?? []);
    expect(rules.length).toBeGreaterThan(1);
    expect(rules.filter(({ source }) => !source.citation.endsWith("(invented)"))).toEqual([]);
    expect(area.emergency.number).toBe("DEMO: write your local number");
  });
});
