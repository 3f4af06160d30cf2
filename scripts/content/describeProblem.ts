import { isWarning, type Problem } from "./problem.ts";

/**
 * A problem as a person reads it: where, what was found, what was expected, what to write instead. Control characters
 * of file names and values are shown as escapes, so a file can not steer the terminal.
 *
 * @example
 * // content/areas/larch-valley/sites/north-bench.json: slope.aspectDeg [value-type]
 * //   found     "NE"
 * //   expected  a number, 0 ≤ bearing < 360, degrees clockwise from true north
 * //   fix       write "aspectDeg": 45
 */
export function describeProblem(problem: Problem): string {
  const place = problem.field === "" ? problem.file : `${problem.file}: ${problem.field}`;
  const kind = isWarning(problem) ? "warning " : "";
  return [
    `${printable(place)} [${kind}${problem.code}]`,
    `  found     ${printable(problem.found)}`,
    `  expected  ${printable(problem.expected)}`,
    `  fix       ${printable(problem.fix)}`,
  ].join("\n");
}

/** All problems, an empty line between two. */
export function describeProblems(problems: readonly Problem[]): string {
  return problems.map(describeProblem).join("\n\n");
}

const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;

function printable(text: string): string {
  return text.replace(UNPRINTABLE, (char) => `\\u${char.codePointAt(0)!.toString(16).padStart(4, "0")}`);
}
