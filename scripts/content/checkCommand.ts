import { commandLine, optionsText } from "../commandLine.ts";
import { UsageError } from "../UsageError.ts";
import type { AreaContent } from "./areaContent.ts";
import { describeProblems } from "./describeProblem.ts";
import { isWarning, type Problem, stopping } from "./problem.ts";

export interface CheckedAreas {
  areas: readonly AreaContent[];
  problems: readonly Problem[];
}

/** What the command reads and writes outside its arguments. */
export interface CheckSurroundings {
  out: { write(text: string): unknown };
  err: { write(text: string): unknown };
  /** Reads and judges a content folder; `area` null for all areas. */
  load(contentDir: string, area: string | null): Promise<CheckedAreas>;
}

const OPTIONS = { content: "DIR", area: "ID" } as const;

const USAGE = `npm run check -- ${optionsText(OPTIONS)}

  --content   folder with the areas, default content
  --area      only this area, default all`;

/**
 * Judges an owner's files and tells every problem at once.
 *
 * @returns exit status: 0 no problem (warnings may stand); 1 problems; 2 wrong usage
 */
export async function checkCommand(args: readonly string[], around: CheckSurroundings): Promise<number> {
  try {
    const { options, help } = commandLine(args, OPTIONS);
    if (help) {
      around.out.write(`${USAGE}\n`);
      return 0;
    }
    const checked = await around.load(options.content ?? "content", options.area ?? null);
    return tell(checked, around);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    around.err.write(`${error.message}\n\n${USAGE}\n`);
    return 2;
  }
}

function tell({ areas, problems }: CheckedAreas, around: CheckSurroundings): number {
  const stops = stopping(problems);
  const warnings = problems.filter(isWarning);
  const told = [...stops, ...warnings];
  if (told.length > 0) around.err.write(`${describeProblems(told)}\n\n`);
  const aside = warnings.length > 0 ? ` ${counted(warnings.length, "warning")} above.` : "";
  if (stops.length > 0) {
    around.err.write(`${counted(stops.length, "problem")}.${aside}\n`);
    return 1;
  }
  const sites = areas.reduce((sum, area) => sum + area.sites.length, 0);
  const trips = areas.reduce((sum, area) => sum + area.trips.length, 0);
  const what = [counted(areas.length, "area"), counted(sites, "site"), counted(trips, "trip")].join(", ");
  around.out.write(`No problems in ${what}.${aside}\n`);
  return 0;
}

function counted(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? "" : "s"}`;
}
