import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { strictJson } from "../../scripts/content/strictJson.ts";

const read = (text: string) => strictJson(text, "area.json");
const only = (text: string) => {
  const { problems } = read(text);
  expect(problems).toHaveLength(1);
  return problems[0]!;
};

describe("JSON of an owner's file", () => {
  test("is read as the standard reader reads it", () => {
    fc.assert(
      fc.property(fc.json({ noUnicodeString: false }), fc.constantFrom("", "\ufeff"), (text, mark) => {
        const { value, problems } = read(mark + text);
        const spoiled = problems.some((p) => p.code !== "json-text");
        if (!spoiled) expect(value).toEqual(JSON.parse(text));
      }),
      { seed: 20261125, numRuns: 400 },
    );
  });

  test("is refused wherever the standard reader refuses it, and nothing is thrown", () => {
    const pieces = [
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"a"',
      '"b"',
      "1",
      "-",
      ".5",
      "01",
      "1e3",
      "true",
      "nul",
      " ",
      "\n",
      "\\",
      '"',
    ];
    const text = fc.array(fc.constantFrom(...pieces), { maxLength: 9 }).map((parts) => parts.join(""));
    fc.assert(
      fc.property(text, (written) => {
        let isJson = true;
        try {
          JSON.parse(written);
        } catch {
          isJson = false;
        }
        const codes = read(written).problems.map((p) => p.code);
        const isBroken = codes.includes("json-broken") || codes.includes("file-empty");
        expect(isBroken).toBe(!isJson);
      }),
      { seed: 7, numRuns: 4000 },
    );
  });

  test("that breaks off is told with line and column", () => {
    expect(only('{\n  "name": "Larch"\n  "summary": "x"\n}')).toEqual({
      code: "json-broken",
      file: "area.json",
      field: "line 3",
      found: '"\\"summary\\": \\"x\\"" at line 3, column 3',
      expected: '"," or "}" after a value',
      fix: "put a comma between two lines of an object",
    });
  });

  test.each([
    ['{"heightM": NaN}', "NaN is not JSON: write null"],
    ['{"heightM": Infinity}', "Infinity is not JSON: write null"],
    ['{"heightM": -Infinity}', "Infinity is not JSON: write null"],
    ['{"a": True}', "write true"],
    ['{"a": .5}', "write 0.5"],
    ['{"a": +5}', "write 5"],
    ['{"a": 012}', "write 12, without the leading zero"],
    ['{"a": 1.}', "write 1"],
    ['{"a": 45°}', "write digits with a decimal point and no unit"],
    ['{"a": 1,5}', "write a decimal point, not a comma"],
    ['{"a": 1,}', "delete the comma before it"],
    ["{a: 1}", "put the key into double quotes"],
    ["{'a': 1}", "put the key into double quotes"],
    ["{\"a\": 'x'}", "use double quotes"],
    ['{"a": 1} // end', "delete what follows the end"],
    ['// start\n{"a": 1}', "delete the comment"],
    ['{"a": "x\ny"}', "close the text with a double quote"],
    ['{"a": 1', "put a comma"],
    ['{"a": 1e999}', "write the number in its unit"],
  ])("%s says how to mend it", (text, fix) => {
    const problem = only(text);
    expect(problem.code).toBe("json-broken");
    expect(problem.fix).toContain(fix);
  });

  test.each(["", "   \n", "\ufeff"])("that is empty is told as empty (%j)", (text) => {
    expect(only(text).code).toBe("file-empty");
  });

  test("a key given twice is a problem with both lines", () => {
    const problem = only('{\n"tree": {"girthMm": 900,\n"girthMm": 1900}}');
    expect(problem).toMatchObject({ code: "json-key-twice", field: "tree.girthMm" });
    expect(problem.found).toBe('the key "girthMm" at line 2 and at line 3');
  });

  test.each(["__proto__", "constructor", "prototype"])("the key %s is a problem and does nothing", (key) => {
    const { value, problems } = read(`{"slope": {"${key}": {"polluted": true}, "slopeDeg": 3}}`);
    expect(problems).toMatchObject([{ code: "json-key-forbidden", field: `slope.${key}` }]);
    expect(value).toEqual({ slope: { slopeDeg: 3 } });
    expect("polluted" in {}).toBe(false);
    expect(Object.getPrototypeOf((value as { slope: object }).slope)).toBe(Object.prototype);
  });

  test("deep nesting is a problem, not an overflow", () => {
    expect(only("[".repeat(100_000)).code).toBe("json-too-deep");
  });

  test.each(['"a\\u0000b"', '"\\ud800"', '"\\u001b[2J"'])("text %s can not be printed", (text) => {
    expect(only(`{"name": ${text}}`)).toMatchObject({ code: "json-text", field: "name" });
  });

  test("a megabyte of keys is read in time that grows with its length", () => {
    const text = `{${Array.from({ length: 60_000 }, (_, i) => `"key-${i}": [${i}, -0.5]`).join(",\n")}}`;
    const started = performance.now();
    expect(read(text).problems).toEqual([]);
    expect(performance.now() - started).toBeLessThan(3000); // quadratic reading of the same text takes over a minute
  });
});
