import { z } from "zod";
import { areaFile } from "./schema/areaSchema.ts";
import { cameraFile } from "./schema/cameraSchema.ts";
import { detailsFile } from "./schema/detailsSchema.ts";
import { mapFile } from "./schema/mapFeaturesSchema.ts";
import { packFile } from "./schema/packSchema.ts";
import { rosterFile } from "./schema/rosterSchema.ts";
import {
  cautionsFile,
  emergencyFile,
  firearmsFile,
  modelFile,
  standsFile,
  wordingFile,
} from "./schema/sharedDataSchema.ts";
import { siteFile } from "./schema/siteSchema.ts";
import { tripFile } from "./schema/tripSchema.ts";

const SCHEMAS: Readonly<Record<string, { title: string; schema: z.ZodType }>> = {
  area: { title: "area.json: the facts of one hunting area", schema: areaFile },
  site: { title: "sites/<site>.json: one prepared place", schema: siteFile },
  trip: { title: "trips/<trip>.json: one outing", schema: tripFile },
  camera: { title: "cameras/<camera>.json: one trail camera", schema: cameraFile },
  map: { title: "map.geojson: everything that is drawn", schema: mapFile },
  roster: { title: "roster.json: blocks, dates and parties", schema: rosterFile },
  stands: { title: "data/stands.json: climbing stands", schema: standsFile },
  firearms: { title: "data/firearms.json: firearms and bows", schema: firearmsFile },
  cautions: { title: "data/cautions.json: texts of the cautions", schema: cautionsFile },
  emergency: { title: "data/emergency.json: texts of the emergency sheet", schema: emergencyFile },
  model: { title: "data/model.json: constants of the model", schema: modelFile },
  wording: { title: "data/wording.json: standing sentences", schema: wordingFile },
  pack: { title: "pack.json: every number of a pack", schema: packFile },
  details: { title: "details.json: what pages show beyond pack.json", schema: detailsFile },
};

/** JSON Schema files (draft 2020-12) by file name, as text, for editors that complete and check while typing. */
export function schemaFiles(): Record<string, string> {
  return Object.fromEntries(
    Object.entries(SCHEMAS).map(([kind, { title, schema }]) => {
      const { $schema, ...rest } = z.toJSONSchema(schema, {
        target: "draft-2020-12",
        io: "input",
        reused: "ref",
      });
      return [`${kind}.schema.json`, `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`];
    }),
  );
}
