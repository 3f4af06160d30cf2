import { mkdir, writeFile } from "node:fs/promises";
import { schemaFiles } from "./content/schemaFiles.ts";

/** Writes data/schema/ from the schemas of the file kinds. */
const folder = new URL("../data/schema/", import.meta.url);
await mkdir(folder, { recursive: true });
const files = Object.entries(schemaFiles());
for (const [name, text] of files) await writeFile(new URL(name, folder), text);
console.log(`${files.length} schemas written to data/schema/`);
