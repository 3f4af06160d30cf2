import { realpath } from "node:fs/promises";
import { join, resolve } from "node:path";
import type { AreaContent, SharedData } from "./areaContent.ts";
import { areaFromDraft } from "./areaFromDraft.ts";
import { idNameProblem, notPartWarning } from "./folderNames.ts";
import { judgeArea } from "./judgeArea.ts";
import { nearestWord } from "./nearestWord.ts";
import { inFileOrder, type Problem } from "./problem.ts";
import { readArea } from "./readArea.ts";
import { type FolderEntry, readFolder } from "./readFolder.ts";
import type { Reading } from "./readNamedFiles.ts";
import { readSharedData } from "./readSharedData.ts";
import { shownPath } from "./shownPath.ts";

export interface ReadContent {
  /** Areas by id. Whole only when no problem stops the build: files that are wrong are left out. */
  areas: AreaContent[];
  shared: SharedData;
  /** Every problem of every file, by file; warnings among them. */
  problems: Problem[];
}

export interface ReadContentOptions {
  /** Only these areas; all when absent. */
  areas?: readonly string[];
  /** Instant, ISO 8601 with offset, that wins over the `asOf` of an area. */
  asOf?: string;
}

/**
 * Reads an owner's folder and the shared data, and judges both: nothing stops at the first problem, and nothing is
 * thrown for what an author wrote. Links on the disk that lead out of the folders are not followed.
 */
export async function readContent(
  contentDir: string,
  dataDir: string,
  options: ReadContentOptions = {},
): Promise<ReadContent> {
  const dataReading: Reading = { root: await rootOf(dataDir), problems: [], sourceFiles: [] };
  const { shared, ids } = await readSharedData(dataReading, resolve(dataDir));
  const problems: Problem[] = [...dataReading.problems];
  const { folders, problems: found } = await areaFolders(resolve(contentDir));
  problems.push(...found);
  const wanted = options.areas;
  problems.push(...(wanted ?? []).flatMap((id) => unknownArea(id, folders, contentDir)));

  const areas: AreaContent[] = [];
  for (const folder of folders.filter(({ name }) => wanted?.includes(name) ?? true)) {
    const reading: Reading = { root: await rootOf(contentDir), problems: [], sourceFiles: [] };
    const draft = await readArea(reading, folder, folder.name);
    problems.push(...reading.problems, ...judgeArea(draft, ids, options.asOf));
    const area = areaFromDraft(draft);
    if (area) areas.push(area);
  }
  return { areas, shared, problems: inFileOrder(problems) };
}

async function rootOf(dir: string): Promise<string> {
  return realpath(dir).catch(() => resolve(dir));
}

async function areaFolders(contentDir: string): Promise<{ folders: FolderEntry[]; problems: Problem[] }> {
  const root = await rootOf(contentDir);
  const at = (path: string) => ({ path, shown: shownPath(path) });
  const content = await readFolder(at(contentDir), root);
  const listed = await readFolder(at(join(contentDir, "areas")), root);
  if (!content || !listed) {
    const missing = at(content ? join(contentDir, "areas") : contentDir).shown;
    const fix = "make the first area: npm run new -- area NAME";
    const expected = "a folder of areas, areas/<area>/area.json";
    const problem: Problem = {
      code: "content-missing",
      file: missing,
      field: "",
      found: "no such folder",
      expected,
      fix,
    };
    return { folders: [], problems: [problem] };
  }
  const problems = [...content.problems, ...listed.problems];
  for (const entry of content.entries) {
    if (entry.name !== "areas") problems.push(notPartWarning(entry.shown, entry.name, ["areas"]));
  }
  for (const entry of listed.entries) {
    if (!entry.isFolder) problems.push(notPartWarning(entry.shown, entry.name, []));
  }
  const folders = listed.entries.filter((entry) => entry.isFolder);
  problems.push(...folders.flatMap((entry) => idNameProblem(entry.shown, entry.name) ?? []));
  if (folders.length === 0) {
    const fix = "make the first area: npm run new -- area NAME";
    const file = at(join(contentDir, "areas")).shown;
    problems.push({
      code: "content-empty",
      file,
      field: "",
      found: "no area",
      expected: "a folder for each area",
      fix,
    });
  }
  return { folders, problems };
}

function unknownArea(id: string, folders: readonly FolderEntry[], contentDir: string): Problem[] {
  const names = folders.map(({ name }) => name);
  if (names.includes(id)) return [];
  const near = nearestWord(id, names);
  return [
    {
      code: "area-unknown",
      file: shownPath(join(resolve(contentDir), "areas")),
      field: "",
      found: JSON.stringify(id),
      expected: names.length > 0 ? `one of ${names.join(", ")}` : "an area",
      fix: near ? `write --area ${near}` : "write the name of a folder in areas/",
    },
  ];
}
