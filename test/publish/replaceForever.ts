import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { replaceOutput } from "../../scripts/publish/replaceOutput.ts";

/** Replaces the folder given again and again, each time by one in which all files say the same number. */
const outDir = process.argv[2]!;
const quiet = { outDir, waitMs: 0, onWait: () => undefined, onRestored: () => undefined };
for (let round = 1; ; round += 1) {
  await replaceOutput(quiet, async (stage) => {
    for (let i = 0; i < 8; i += 1) writeFileSync(join(stage, `page-${i}.html`), String(round));
  });
  if (round === 3) process.stdout.write("ready\n");
}
