import { fileURLToPath } from "node:url";
import { areaFiles } from "./demo/areaFiles.ts";
import { demoAreas } from "./demo/demoAreas.ts";
import { writeAreaFolder } from "./demo/writeAreaFolder.ts";

// Generates content/areas/ of both demonstration areas: npx tsx scripts/demo.ts
for (const area of demoAreas) {
  const made = areaFiles(area);
  await writeAreaFolder(fileURLToPath(new URL(`../content/areas/${area.id}`, import.meta.url)), made);
  console.log(`${area.id}: ${made.files.size} files`);
  for (const { id, heightM, slopeDeg, facingDeg } of made.grounds) {
    console.log(
      `  ${id}: ${heightM.toFixed(0)} m, slope ${slopeDeg.toFixed(1)}, faces ${facingDeg.toFixed(0)} (grid)`,
    );
  }
}
