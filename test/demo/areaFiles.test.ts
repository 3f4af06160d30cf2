import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type AreaFiles, areaFiles } from "../../scripts/demo/areaFiles.ts";
import { demoAreas } from "../../scripts/demo/demoAreas.ts";
import { areaFolder, filesBelow } from "./demoContent.ts";

const made = new Map<string, AreaFiles>(demoAreas.map((area) => [area.id, areaFiles(area)]));

describe.each(demoAreas.map(({ id }) => id))("%s", (id) => {
  test("carved again has the very bytes that are kept", () => {
    const differing = [...made.get(id)!.files].filter(([path, content]) => {
      const kept = readFileSync(join(areaFolder(id), path));
      return !kept.equals(Buffer.from(content as string));
    });
    expect(differing.map(([path]) => path)).toEqual([]);
  });

  test("has no file that nothing generates", () => {
    expect(filesBelow(areaFolder(id))).toEqual([...made.get(id)!.files.keys()].sort());
  });

  test("writes plain sentences of at most 22 words", () => {
    const texts = [...made.get(id)!.files].filter(([path]) => path.endsWith(".md"));
    const long = texts.flatMap(([, text]) =>
      String(text)
        .split(/[.\n]\s*/)
        .filter((sentence) => sentence.split(/\s+/).length > 22),
    );
    expect(texts.length).toBeGreaterThan(8);
    expect(long).toEqual([]);
  });
});
