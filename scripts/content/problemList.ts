const START = "<!-- problem codes: written by npx tsx scripts/writeProblemList.ts -->";
const END = "<!-- end of problem codes -->";

/** The codes of problems as a Markdown table, in order of the alphabet. */
export function problemList(codes: Readonly<Record<string, string>>): string {
  const rows = Object.keys(codes)
    .sort()
    .map((code) => `| \`${code}\` | ${codes[code]} |`);
  return ["| code | what it means |", "|---|---|", ...rows].join("\n");
}

/**
 * A guide with the list between its two marks.
 *
 * @throws {RangeError} a mark is missing
 */
export function listedIn(guide: string, list: string): string {
  const from = guide.indexOf(START);
  const to = guide.indexOf(END);
  if (from < 0 || to < from) throw new RangeError(`the guide must hold "${START}" and then "${END}"`);
  return `${guide.slice(0, from)}${START}\n\n${list}\n\n${guide.slice(to)}`;
}
