import { readdir, readFile } from "node:fs/promises";
import { expect, test } from "vitest";
import { schemaFiles } from "../../scripts/content/schemaFiles.ts";

const folder = new URL("../../data/schema/", import.meta.url);

test("the schema files for editors are those of the code (npx tsx scripts/writeSchemas.ts writes them)", async () => {
  const files = schemaFiles();
  expect((await readdir(folder)).sort()).toEqual(Object.keys(files).sort());
  for (const [name, text] of Object.entries(files)) {
    expect(await readFile(new URL(name, folder), "utf8"), name).toBe(text);
  }
});

test("fields with a default may be left out, unknown keys may not stand", () => {
  const site = JSON.parse(schemaFiles()["site.schema.json"]!) as {
    required: string[];
    additionalProperties: boolean;
  };
  expect(site.required).toEqual([
    "number",
    "name",
    "overlooks",
    "position",
    "platformHeightM",
    "facingDeg",
    "cover",
  ]);
  expect(site.additionalProperties).toBe(false);
});
