import type { ProblemCode } from "./problemCodes.ts";

/** One wrong thing in an owner's files, in words its author can act on. `code` is permanent and listed in problemCodes.ts. */
export interface Problem {
  code: ProblemCode | `terrain-${string}` | "approach-away";
  /** Path from the folder the command was started in. */
  file: string;
  /** Dotted path of the field, "" for the whole file; in text and CSV "line 12", with its column "line 12, windFrom". */
  field: string;
  found: string;
  expected: string;
  fix: string;
  /** A warning is printed and does not stop a build; a problem does. */
  severity?: "warning";
}

/** Whether a problem is only a warning. */
export function isWarning(problem: Problem): boolean {
  return problem.severity === "warning";
}

/** The problems that stop a build. */
export function stopping(problems: readonly Problem[]): Problem[] {
  return problems.filter((problem) => !isWarning(problem));
}

/** Problems by file (code point order); inside a file in the order they were found. Exact repeats are dropped. */
export function inFileOrder(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  const unique = problems.filter((problem) => {
    const key = JSON.stringify(problem);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  return unique.sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
}
