import { mkdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { commandLine, optionsText } from "../commandLine.ts";
import { UsageError } from "../UsageError.ts";
import { describeProblems } from "./describeProblem.ts";
import { nearestWord } from "./nearestWord.ts";
import { stopping } from "./problem.ts";
import { readContent } from "./readContent.ts";
import { newArea, newSite, newTrip } from "./scaffold.ts";
import { shownPath } from "./shownPath.ts";
import { slug } from "./slug.ts";

/** What the command reads and writes outside its arguments. */
export interface NewSurroundings {
  out: { write(text: string): unknown };
  err: { write(text: string): unknown };
  dataDir: string;
  /** Date of a new trip, "YYYY-MM-DD". */
  today: string;
}

const OPTIONS = { content: "DIR" } as const;

const USAGE = `npm run new -- area NAME
npm run new -- site AREA NAME
npm run new -- trip AREA NAME

  NAME is free text; AREA the folder of the area
  ${optionsText(OPTIONS)}   folder with the areas, default content`;

class NotWritten extends Error {}

/**
 * Writes the files of a new area, site or trip, which pass `check` as they are. Never writes over a file.
 *
 * @returns exit status: 0 written; 1 something stands in the way; 2 wrong usage
 */
export async function newCommand(args: readonly string[], around: NewSurroundings): Promise<number> {
  try {
    const { options, words, help } = commandLine(args, OPTIONS, 40);
    if (help) {
      around.out.write(`${USAGE}\n`);
      return 0;
    }
    const written = await make(words, options.content ?? "content", around);
    around.out.write(`${written.path}\n${written.next}\n`);
    return 0;
  } catch (error) {
    if (error instanceof UsageError) {
      around.err.write(`${error.message}\n\n${USAGE}\n`);
      return 2;
    }
    if (!(error instanceof NotWritten)) throw error;
    around.err.write(`${error.message}\n`);
    return 1;
  }
}

interface Written {
  path: string;
  next: string;
}

async function make(words: readonly string[], contentDir: string, around: NewSurroundings): Promise<Written> {
  const [kind = "", ...rest] = words;
  if (kind === "area") {
    const name = nameOf(rest);
    const path = join(contentDir, "areas", idOf(name), "area.json");
    await write(path, newArea(name));
    const next =
      "Now write centre, time zone and height, and add a terrain file if there is one; then npm run check.";
    return { path: shownPath(path), next };
  }
  if (kind !== "site" && kind !== "trip") {
    const near = nearestWord(kind, ["area", "site", "trip"]);
    throw new UsageError(
      `${JSON.stringify(kind)} is nothing to make; ${near ? `did you mean ${near}?` : "area, site or trip"}`,
    );
  }
  const [areaId = "", ...nameWords] = rest;
  const name = nameOf(nameWords);
  const path = join(contentDir, "areas", areaId, `${kind}s`, `${idOf(name)}.json`);
  const area = await areaOf(contentDir, areaId, around.dataDir);
  if (kind === "trip") {
    await write(path, newTrip(name, around.today));
    return {
      path: shownPath(path),
      next: "Now write dates, hunters and, when it is known, the forecast; then npm run check.",
    };
  }
  const site = newSite(name, area);
  if (site === null) throw new NotWritten("all site numbers from 1 to 99 are in use");
  await write(path, site);
  return {
    path: shownPath(path),
    next: `Site number ${site.number}. Now write its position, tree and approaches; then npm run check.`,
  };
}

function nameOf(words: readonly string[]): string {
  const name = words.join(" ").trim().replace(/\s+/g, " ");
  if (name === "") throw new UsageError("a name is missing");
  return name;
}

function idOf(name: string): string {
  const id = slug(name);
  if (id === null)
    throw new UsageError(`${JSON.stringify(name)} holds no letter from a to z or digit to make an id of`);
  return id;
}

async function areaOf(contentDir: string, areaId: string, dataDir: string) {
  const { areas, problems } = await readContent(contentDir, dataDir, { areas: [areaId] });
  const area = areas.find(({ id }) => id === areaId);
  const stops = stopping(problems);
  if (!area || stops.length > 0) {
    throw new NotWritten(`${describeProblems(stops)}\n\nNothing was written: put this right first.`);
  }
  return area;
}

async function write(path: string, facts: object): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  try {
    await writeFile(path, `${JSON.stringify(facts, null, 2)}\n`, { flag: "wx" });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    throw new NotWritten(`${shownPath(path)} exists; nothing was written. Choose another name.`);
  }
}
