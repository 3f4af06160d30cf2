import { describe, expect, test } from "vitest";
import type { AreaContent } from "../../scripts/content/areaContent.ts";
import { checkCommand } from "../../scripts/content/checkCommand.ts";
import type { Problem } from "../../scripts/content/problem.ts";
import { readChanged } from "./contentFolder.ts";

const problem: Problem = {
  code: "value-type",
  file: "content/areas/larch-valley/sites/north-bench.json",
  field: "slope.aspectDeg",
  found: '"NE"',
  expected: "a number, 0 ≤ bearing < 360, degrees clockwise from true north",
  fix: 'write "aspectDeg": 45',
};
const warning: Problem = { ...problem, severity: "warning", code: "timezone-far", field: "" };

async function run(args: string[], problems: Problem[], areas: AreaContent[] = []) {
  const texts = { out: "", err: "", asked: [] as unknown[] };
  const status = await checkCommand(args, {
    out: { write: (text) => (texts.out += text) },
    err: { write: (text) => (texts.err += text) },
    load: async (...asked) => {
      texts.asked = asked;
      return { areas, problems };
    },
  });
  return { status, ...texts };
}

describe("the check command", () => {
  test("counts what it found without a problem, and ends with 0", async () => {
    const { areas } = await readChanged({});
    expect(await run([], [], areas)).toEqual({
      status: 0,
      out: "No problems in 1 area, 1 site, 1 trip.\n",
      err: "",
      asked: ["content", null],
    });
  });

  test("tells every problem in four lines, warnings last, and ends with 1", async () => {
    const { status, out, err } = await run(["--content", "c", "--area", "larch-valley"], [warning, problem]);
    expect(status).toBe(1);
    expect(out).toBe("");
    expect(err).toBe(
      [
        "content/areas/larch-valley/sites/north-bench.json: slope.aspectDeg [value-type]",
        '  found     "NE"',
        "  expected  a number, 0 ≤ bearing < 360, degrees clockwise from true north",
        '  fix       write "aspectDeg": 45',
        "",
        "content/areas/larch-valley/sites/north-bench.json [warning timezone-far]",
        '  found     "NE"',
        "  expected  a number, 0 ≤ bearing < 360, degrees clockwise from true north",
        '  fix       write "aspectDeg": 45',
        "",
        "1 problem. 1 warning above.",
        "",
      ].join("\n"),
    );
  });

  test("a warning alone ends with 0", async () => {
    const { status, out } = await run([], [warning]);
    expect(status).toBe(0);
    expect(out).toBe("No problems in 0 areas, 0 sites, 0 trips. 1 warning above.\n");
  });

  test("wrong usage ends with 2 and reads nothing", async () => {
    const { status, err, asked } = await run(["--are", "x"], []);
    expect(status).toBe(2);
    expect(err).toContain("option --are is not known; did you mean --area?");
    expect(asked).toEqual([]);
  });

  test("control characters of a file name do not reach the terminal", async () => {
    const { err } = await run([], [{ ...problem, file: "a\u001b[2J\u202e.json" }]);
    expect(err).toContain("a\\u001b[2J\\u202e.json: slope");
  });
});
