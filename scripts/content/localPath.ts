import { nearestWord } from "./nearestWord.ts";
import type { Problem } from "./problem.ts";

/** Whether a path stays inside the folder of the area: relative, with slashes, without a step up. */
export function isLocalPath(path: string): boolean {
  if (/^[a-z][a-z0-9+.-]*:/i.test(path) || /[\\\p{Cc}]/u.test(path) || path.startsWith("/")) return false;
  return path.split("/").every((step) => step !== "" && step !== "." && step !== "..");
}

/** The problem of a named file that leads out of the area or is not there, or null. */
export function localPathProblem(
  path: string,
  at: { file: string; field: string },
  files: ReadonlySet<string>,
): Problem | null {
  const found = JSON.stringify(path);
  if (!isLocalPath(path)) {
    const expected = 'a path from the folder of the area, such as "photos/bench.jpg"';
    return {
      ...at,
      code: "photo-path",
      found,
      expected,
      fix: "copy the file into the area and name it there",
    };
  }
  if (files.has(path)) return null;
  const near = nearestWord(path, [...files]);
  return {
    ...at,
    code: /\.csv$/.test(path) ? "file-missing" : "photo-missing",
    found: `${found}, which does not exist`,
    expected: "a file in the folder of the area, capitals included",
    fix: near ? `write ${JSON.stringify(near)}` : "copy the file to this place, or delete the line",
  };
}
