import { resolve } from "node:path";
import { commandLine, optionsText } from "../commandLine.ts";
import { UsageError } from "../UsageError.ts";

export const PAPERS = ["A4", "Letter", "A5"] as const;
export type Paper = (typeof PAPERS)[number];

/** What a pack is asked to be; null where the content or the date decides. */
export interface PackOptions {
  /** absolute paths */
  contentDir: string;
  outDir: string;
  edition: "owner";
  area: string | null;
  trip: string | null;
  year: number | null;
  asOf: Date | null;
  paper: Paper | null;
  /** the declared time of the build, the one thing that may differ between two equal packs */
  builtAt: Date;
}

export const PACK_OPTIONS = {
  content: "DIR",
  out: "DIR",
  edition: "owner",
  area: "ID",
  trip: "ID",
  year: "YYYY",
  "as-of": "INSTANT",
  paper: PAPERS.join("|"),
} as const;

export const PACK_USAGE = `npm run pack -- ${optionsText(PACK_OPTIONS)}

  --content   folder with the areas, default content
  --out       folder to write, replaced as a whole, default _site
  --edition   owner
  --area      only this area, default all
  --trip      only this trip, default all
  --year      year of the almanac, default that of the earliest trip or season
  --as-of     the moment that decides what is old, such as 2027-11-04T12:00:00-04:00
  --paper     ${PAPERS.join(", ")}, default that of each area

SOURCE_DATE_EPOCH (seconds) in the environment sets the declared time of the build.`;

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d)?(?:Z|[+-]\d\d:\d\d)$/;
const OTHER_EDITIONS = ["party", "member", "public"];

/**
 * The options of a pack from its arguments; null when help was asked for.
 *
 * @param now the time of the build unless `sourceDateEpoch` (seconds since 1970, as text) gives another
 * @throws {UsageError} anything that is not understood, in words
 */
export function packOptions(
  args: readonly string[],
  now: Date,
  sourceDateEpoch: string | undefined,
): PackOptions | null {
  const { options: given, help } = commandLine(args, PACK_OPTIONS);
  if (help) return null;
  return {
    contentDir: resolve(given.content ?? "content"),
    outDir: resolve(given.out ?? "_site"),
    edition: editionOf(given.edition ?? "owner"),
    area: idOf("area", given.area),
    trip: idOf("trip", given.trip),
    year: yearOf(given.year),
    asOf: instantOf(given["as-of"]),
    paper: paperOf(given.paper),
    builtAt: builtAtOf(sourceDateEpoch) ?? now,
  };
}

function editionOf(text: string): "owner" {
  if (text === "owner") return text;
  if (OTHER_EDITIONS.includes(text)) throw new UsageError(`edition ${text} is not available yet; use owner`);
  throw new UsageError(`--edition must be owner, found ${JSON.stringify(text)}`);
}

function idOf(name: "area" | "trip", text: string | undefined): string | null {
  if (text === undefined) return null;
  if (ID.test(text)) return text;
  throw new UsageError(
    `--${name} must be an id, the name of its file or folder (a-z, 0-9, -), found ${JSON.stringify(text)}`,
  );
}

function yearOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  const year = Number(text);
  if (/^\d{4}$/.test(text) && year >= 1900 && year <= 2199) return year;
  throw new UsageError(`--year must be a year, 1900 to 2199, found ${JSON.stringify(text)}`);
}

function instantOf(text: string | undefined): Date | null {
  if (text === undefined) return null;
  const at = new Date(text);
  if (INSTANT.test(text) && !Number.isNaN(at.getTime()) && isRealDay(text.slice(0, 10))) return at;
  throw new UsageError(
    `--as-of must be an instant with its offset, such as 2027-11-04T12:00:00-04:00, found ${JSON.stringify(text)}`,
  );
}

/** Date.parse lets 30 February pass as 2 March. */
function isRealDay(localDate: string): boolean {
  const day = new Date(`${localDate}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(localDate);
}

function paperOf(text: string | undefined): Paper | null {
  if (text === undefined) return null;
  const paper = PAPERS.find((name) => name.toLowerCase() === text.toLowerCase());
  if (paper !== undefined) return paper;
  throw new UsageError(`--paper must be ${PAPERS.join(", ")}, found ${JSON.stringify(text)}`);
}

function builtAtOf(sourceDateEpoch: string | undefined): Date | null {
  if (sourceDateEpoch === undefined || sourceDateEpoch === "") return null;
  const seconds = Number(sourceDateEpoch);
  // up to the year 9999
  if (/^\d+$/.test(sourceDateEpoch) && seconds <= 253402300799) return new Date(seconds * 1000);
  throw new UsageError(
    `SOURCE_DATE_EPOCH must be whole seconds since 1970, found ${JSON.stringify(sourceDateEpoch)}`,
  );
}
