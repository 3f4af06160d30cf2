import { readFile, realpath, stat } from "node:fs/promises";
import { relative, sep } from "node:path";
import type { Problem } from "./problem.ts";

const MEGABYTE = 1_000_000;

/** Greatest size of a file of each kind, bytes. */
export const SIZE_LIMITS = {
  json: 2 * MEGABYTE,
  markdown: MEGABYTE,
  csv: 50 * MEGABYTE,
  geojson: 50 * MEGABYTE,
} as const;

export type TextKind = keyof typeof SIZE_LIMITS;

/** A file on the disk: where it is, and how it is told in problems. */
export interface FilePlace {
  path: string;
  shown: string;
}

/**
 * Text of a file inside a folder that the owner's files may not leave, or the problem why there is none: missing, not a
 * file, a link out of the folder, over its size, not UTF-8.
 *
 * @param root real path of the folder that no link may lead out of
 */
export async function readTextFile(
  place: FilePlace,
  kind: TextKind,
  root: string,
): Promise<{ text: string } | { problem: Problem }> {
  const outside = await linkProblem(place, root);
  if (outside) return { problem: outside };
  const at = { file: place.shown, field: "" };
  try {
    const { size } = await stat(place.path);
    const most = SIZE_LIMITS[kind];
    if (size > most) {
      const expected = `at most ${most / MEGABYTE} MB`;
      const found = `${(size / MEGABYTE).toFixed(1)} MB`;
      return {
        problem: {
          ...at,
          code: "file-too-large",
          found,
          expected,
          fix: "keep what the pack needs, and cut the rest",
        },
      };
    }
    const bytes = await readFile(place.path);
    return { text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (error) {
    return { problem: readProblem(place, error) };
  }
}

/** The problem of a link that leads out of the folder, or nowhere; null for all else. */
export async function linkProblem(place: FilePlace, root: string): Promise<Problem | null> {
  try {
    const real = await realpath(place.path);
    const inside = relative(root, real);
    if (inside !== ".." && !inside.startsWith(`..${sep}`)) return null;
    return {
      code: "symlink-outside",
      file: place.shown,
      field: "",
      found: "a link that leads out of the folder",
      expected: "files inside the folder; links out of it are not followed",
      fix: "copy the file to this place",
    };
  } catch (error) {
    return readProblem(place, error);
  }
}

function readProblem(place: FilePlace, error: unknown): Problem {
  const at = { file: place.shown, field: "" };
  if (error instanceof TypeError) {
    return {
      ...at,
      code: "file-not-utf8",
      found: "bytes that are not UTF-8",
      expected: "text as UTF-8",
      fix: "save the file as UTF-8",
    };
  }
  const code = (error as NodeJS.ErrnoException).code;
  if (code === undefined) throw error;
  if (code === "ENOENT") {
    return {
      ...at,
      code: "file-missing",
      found: "no such file",
      expected: "the file",
      fix: "write the file",
    };
  }
  return {
    ...at,
    code: "file-unreadable",
    found: code === "EISDIR" ? "a folder" : `the disk says ${code}`,
    expected: "a file that can be read",
    fix:
      code === "EISDIR"
        ? "give the folder another name"
        : "check the rights of the file, and that it is no link to itself",
  };
}
