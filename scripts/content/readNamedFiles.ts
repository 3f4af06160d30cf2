import type { z } from "zod";
import type { NamedDraft } from "./areaDraft.ts";
import { idNameProblem, notPartWarning } from "./folderNames.ts";
import type { Problem } from "./problem.ts";
import { proseFromMarkdown, type ReadProse } from "./proseFromMarkdown.ts";
import { type FolderEntry, readFolder } from "./readFolder.ts";
import { type FilePlace, readTextFile, type TextKind } from "./readTextFile.ts";
import { type Checked, checkedBySchema } from "./schemaProblems.ts";
import { strictJson } from "./strictJson.ts";

/** What reading gathers on its way through the files of one area. */
export interface Reading {
  /** Real path that no link may lead out of. */
  root: string;
  problems: Problem[];
  /** Absolute paths of the files that were read. */
  sourceFiles: string[];
}

/** Text of a file that should be there; its problem is noted and null given back. */
export async function textOf(reading: Reading, place: FilePlace, kind: TextKind): Promise<string | null> {
  const read = await readTextFile(place, kind, reading.root);
  if ("problem" in read) {
    reading.problems.push(read.problem);
    return null;
  }
  reading.sourceFiles.push(place.path);
  return read.text;
}

/** Facts of a JSON file judged by its schema. */
export async function factsOf<T extends z.ZodType>(
  reading: Reading,
  place: FilePlace,
  schema: T,
  kind: "json" | "geojson" = "json",
): Promise<Omit<Checked<z.infer<T>>, "problems">> {
  const text = await textOf(reading, place, kind);
  if (text === null) return { facts: null, loose: null };
  const { value, problems } = strictJson(text, place.shown);
  reading.problems.push(...problems);
  if (value === undefined) return { facts: null, loose: null };
  const checked = checkedBySchema(schema, value, place.shown);
  reading.problems.push(...checked.problems);
  return { facts: checked.facts, loose: checked.loose };
}

/** Prose of a Markdown file; a block of facts at its start is a problem, since nothing would read it. */
export async function proseOf(
  reading: Reading,
  place: FilePlace,
  hrefOf: (target: string) => string,
): Promise<ReadProse | null> {
  const text = await textOf(reading, place, "markdown");
  if (text === null) return null;
  const firstLine = text.replace(/^\ufeff/, "").split(/\r?\n/, 1)[0]!;
  if (!/^---/.test(firstLine)) return proseFromMarkdown(text, hrefOf);
  reading.problems.push({
    code: "markdown-front-matter",
    file: place.shown,
    field: "line 1",
    found: JSON.stringify(firstLine.slice(0, 40)),
    expected: "prose from the first line on",
    fix: "move the facts into the JSON file of the same name, and delete the block",
  });
  return null;
}

/**
 * Pairs `<id>.json` and `<id>.md` of a folder, by id; other files are handed to `isExtra`, and warned of when it does
 * not want them. A folder that does not exist has none.
 */
export async function readNamedFiles<T extends z.ZodType>(
  reading: Reading,
  folder: FilePlace,
  schema: T,
  isExtra: (entry: FolderEntry) => boolean,
  hrefOf: (target: string) => string,
): Promise<NamedDraft<z.infer<T>>[]> {
  const listed = await readFolder(folder, reading.root);
  reading.problems.push(...(listed?.problems ?? []));
  const drafts: NamedDraft<z.infer<T>>[] = [];
  const entries = listed?.entries ?? [];
  const names = new Set(entries.map(({ name }) => name));
  for (const entry of entries) {
    const id = entry.name.replace(/\.(json|md)$/, "");
    if (isExtra(entry)) continue;
    if (entry.isFolder || id === entry.name) {
      reading.problems.push(notPartWarning(entry.shown, entry.name, []));
    } else if (entry.name.endsWith(".md")) {
      if (!names.has(`${id}.json`)) reading.problems.push(withoutFacts(entry, id));
    } else {
      const wrongName = idNameProblem(entry.shown, id);
      if (wrongName) reading.problems.push(wrongName);
      const proseFile = {
        path: entry.path.replace(/json$/, "md"),
        shown: entry.shown.replace(/json$/, "md"),
      };
      const { facts, loose } = await factsOf(reading, entry, schema);
      const prose = names.has(`${id}.md`) ? await proseOf(reading, proseFile, hrefOf) : null;
      drafts.push({ id, file: entry.shown, facts, loose, prose, proseFile: proseFile.shown });
    }
  }
  return drafts;
}

function withoutFacts(entry: FolderEntry, id: string): Problem {
  return {
    code: "file-missing",
    file: entry.shown,
    field: "",
    found: `${id}.md without ${id}.json`,
    expected: `the facts in ${id}.json beside it`,
    fix: `write ${id}.json (npm run new makes one), or delete ${id}.md`,
  };
}
