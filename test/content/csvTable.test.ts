import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvTable } from "../../scripts/content/csvTable.ts";

const columns = { needed: ["at", "species"], allowed: ["at", "species", "note"] };
const read = (text: string) => csvTable(text, "bench.csv", columns);

describe("a table of an owner", () => {
  test("is read with quotes, byte order mark, CRLF and empty lines, and rows know their line", () => {
    const text =
      '\ufeffat,species,note\r\n\r\n2027-10-01 06:10,"red deer","two, ""big"" ones\nand a calf"\r\n2027-10-02 06:10,hind,\r\n';
    expect(read(text)).toEqual({
      rows: [
        {
          line: 3,
          cells: { at: "2027-10-01 06:10", species: "red deer", note: 'two, "big" ones\nand a calf' },
        },
        { line: 5, cells: { at: "2027-10-02 06:10", species: "hind", note: "" } },
      ],
      problems: [],
    });
  });

  test("gives back every cell that was written", () => {
    const cell = fc
      .string({ unit: fc.constantFrom("a", '"', ",", "\n", " ", "ø", "'") })
      .map((text) => text.trim());
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 }), (rows) => {
        const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
        const text = ["at,species", ...rows.map((row) => row.map(quoted).join(","))].join("\n");
        const kept = rows.filter((row) => row.some((value) => value !== ""));
        const { rows: found, problems } = read(text);
        expect(problems).toEqual([]);
        expect(found.map(({ cells }) => [cells.at, cells.species])).toEqual(kept);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  test.each([
    ["", "file-empty", ""],
    ["\n\n", "file-empty", ""],
    ["at,species\n1,2,3", "csv-ragged", "line 2"],
    ["at,species\n\n1", "csv-ragged", "line 3"],
    ['at,species\n1,"x', "csv-broken", "line 2"],
    ['at,species\n1,"x"y', "csv-broken", "line 2"],
    ['at,species\n1,x"y', "csv-broken", "line 2"],
    ["at,species,at\n1,2,3", "csv-columns", "line 1"],
    ["at,Species,species\n1,2,3", "csv-columns", "line 1"],
    ["at\n1", "csv-columns", "line 1"],
    ["at;species\n1;2", "csv-columns", "line 1"],
  ])("%j is a problem with its line", (text, code, field) => {
    const { problems } = read(text);
    expect(problems.map((problem) => problem.code)).toContain(code);
    expect(problems[0]).toMatchObject({ code, field });
  });

  test("a column named __proto__ changes nothing else", () => {
    const { problems } = read("at,species,__proto__\n1,2,3");
    expect(problems).toMatchObject([{ code: "csv-columns", found: 'the column "__proto__"' }]);
    expect("3" in {}).toBe(false);
  });
});
