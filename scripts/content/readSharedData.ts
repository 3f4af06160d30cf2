import { join } from "node:path";
import type { z } from "zod";
import type { SharedData } from "./areaContent.ts";
import { judgeShared } from "./checks/checkShared.ts";
import type { SharedIds } from "./checks/unknownIds.ts";
import { factsOf, type Reading } from "./readNamedFiles.ts";
import {
  cautionsFile,
  emergencyFile,
  firearmsFile,
  modelFile,
  standsFile,
  wordingFile,
} from "./schema/sharedDataSchema.ts";
import { shownPath } from "./shownPath.ts";

/**
 * What all areas share, from the files of the data folder. A file with a fault counts as empty; the problems are noted
 * in `reading`. `ids` holds null for a file that could not be read.
 */
export async function readSharedData(
  reading: Reading,
  dataDir: string,
): Promise<{ shared: SharedData; ids: SharedIds }> {
  const read = async <T extends z.ZodType>(name: string, schema: T) => {
    const path = join(dataDir, name);
    return { file: shownPath(path), ...(await factsOf(reading, { path, shown: shownPath(path) }, schema)) };
  };
  const stands = await read("stands.json", standsFile);
  const firearms = await read("firearms.json", firearmsFile);
  const cautions = await read("cautions.json", cautionsFile);
  const emergency = await read("emergency.json", emergencyFile);
  const model = await read("model.json", modelFile);
  const wording = await read("wording.json", wordingFile);
  reading.problems.push(...judgeShared({ stands, firearms, cautions, emergency, model }));
  return {
    shared: {
      stands: stands.facts ?? [],
      firearms: firearms.facts ?? [],
      cautions: cautions.facts ?? [],
      emergency: emergency.facts ?? { call: [], firstAid: [] },
      model: model.facts ?? [],
      wording: wording.facts ?? {},
    },
    ids: {
      stands: stands.loose?.flatMap((stand) => stand?.id ?? []) ?? null,
      firearms: firearms.loose?.flatMap((firearm) => firearm?.id ?? []) ?? null,
    },
  };
}
