import type { Problem } from "./problem.ts";

export interface JsonRead {
  /** The value, or undefined when the text is no JSON. */
  value: unknown;
  problems: Problem[];
}

const MOST_NESTING = 64;
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);
const UNPRINTABLE = /[\p{Cc}\p{Cs}\ufffe\uffff]/u;
const TEXT_CONTROLS = /[\t\n\r]/g;
const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /[^\s,:[\]{}"]{1,40}/y;

/**
 * Value of a JSON text (RFC 8259), with what JSON.parse is silent about: a key given twice, keys that mean something to
 * programs (left out of the value), numbers too great to hold, control characters in texts. Broken JSON is one problem
 * with line and column. A byte order mark at the start is skipped.
 *
 * @param file path as shown in problems
 */
export function strictJson(text: string, file: string): JsonRead {
  const problems: Problem[] = [];
  const source = text.startsWith("\ufeff") ? text.slice(1) : text;
  if (source.trim() === "") {
    const fix = "write the facts, or delete the file; npm run new makes one that works";
    return {
      value: undefined,
      problems: [
        { code: "file-empty", file, field: "", found: "an empty file", expected: "a JSON object", fix },
      ],
    };
  }
  try {
    const reader: Reader = { source, at: 0, file, path: [], problems };
    skipSpace(reader);
    const value = readValue(reader);
    skipSpace(reader);
    if (reader.at < source.length)
      throw new BrokenJson(reader.at, "the end of the file", "delete what follows the end");
    return { value, problems };
  } catch (error) {
    if (!(error instanceof BrokenJson)) throw error;
    const { line, column } = placeOf(source, error.at);
    problems.push({
      code: error.code,
      file,
      field: `line ${line}`,
      found: `${excerpt(source, error.at)} at line ${line}, column ${column}`,
      expected: error.expected,
      fix: error.fix,
    });
    return { value: undefined, problems };
  }
}

class BrokenJson extends Error {
  readonly at: number;
  readonly expected: string;
  readonly fix: string;
  readonly code: "json-broken" | "json-too-deep";

  constructor(
    at: number,
    expected: string,
    fix: string,
    code: "json-broken" | "json-too-deep" = "json-broken",
  ) {
    super(expected);
    this.at = at;
    this.expected = expected;
    this.fix = fix;
    this.code = code;
  }
}

interface Reader {
  source: string;
  at: number;
  file: string;
  path: (string | number)[];
  problems: Problem[];
}

function readValue(reader: Reader): unknown {
  const char = reader.source[reader.at];
  if (reader.path.length > MOST_NESTING) {
    const expected = `at most ${MOST_NESTING} objects and lists inside one another`;
    throw new BrokenJson(reader.at, expected, "write the facts flat", "json-too-deep");
  }
  if (char === "{") return readObject(reader);
  if (char === "[") return readList(reader);
  if (char === '"') return readString(reader);
  if (char === "-" || (char !== undefined && char >= "0" && char <= "9")) return readNumber(reader);
  return readWord(reader);
}

function readObject(reader: Reader): Record<string, unknown> {
  const object: Record<string, unknown> = {};
  const keys = new Map<string, number>();
  reader.at++;
  skipSpace(reader);
  if (reader.source[reader.at] === "}") {
    reader.at++;
    return object;
  }
  for (;;) {
    const keyAt = reader.at;
    if (reader.source[keyAt] !== '"')
      throw new BrokenJson(keyAt, 'a key in double quotes, or "}"', keyFix(reader));
    const key = readString(reader);
    skipSpace(reader);
    if (reader.source[reader.at] !== ":") {
      throw new BrokenJson(
        reader.at,
        `":" after the key ${JSON.stringify(key)}`,
        `write ${JSON.stringify(key)}: and its value`,
      );
    }
    reader.at++;
    skipSpace(reader);
    reader.path.push(key);
    const value = readValue(reader);
    if (isUsable(reader, key, keyAt, keys)) object[key] = value;
    reader.path.pop();
    skipSpace(reader);
    const next = reader.source[reader.at];
    if (next === "}") {
      reader.at++;
      return object;
    }
    if (next !== ",")
      throw new BrokenJson(
        reader.at,
        '"," or "}" after a value',
        "put a comma between two lines of an object",
      );
    reader.at++;
    skipSpace(reader);
  }
}

function isUsable(reader: Reader, key: string, keyAt: number, keys: Map<string, number>): boolean {
  const { source, file, path, problems } = reader;
  const found = JSON.stringify(key);
  const field = path.join(".");
  if (FORBIDDEN_KEYS.has(key)) {
    const expected = "keys of content only; this one means something to programs";
    const fix = `delete the key at line ${placeOf(source, keyAt).line}`;
    problems.push({ code: "json-key-forbidden", file, field, found, expected, fix });
    return false;
  }
  const earlierAt = keys.get(key);
  if (earlierAt !== undefined) {
    const lines = `at line ${placeOf(source, earlierAt).line} and at line ${placeOf(source, keyAt).line}`;
    const fix = "delete one of the two; only one can be meant";
    problems.push({
      code: "json-key-twice",
      file,
      field,
      found: `the key ${found} ${lines}`,
      expected: "each key once in an object",
      fix,
    });
  }
  keys.set(key, keyAt);
  return true;
}

function readList(reader: Reader): unknown[] {
  const list: unknown[] = [];
  reader.at++;
  skipSpace(reader);
  if (reader.source[reader.at] === "]") {
    reader.at++;
    return list;
  }
  for (;;) {
    reader.path.push(list.length);
    list.push(readValue(reader));
    reader.path.pop();
    skipSpace(reader);
    const next = reader.source[reader.at];
    if (next === "]") {
      reader.at++;
      return list;
    }
    if (next !== ",")
      throw new BrokenJson(
        reader.at,
        '"," or "]" after an entry',
        "put a comma between two entries of a list",
      );
    reader.at++;
    skipSpace(reader);
  }
}

function readString(reader: Reader): string {
  const start = reader.at;
  const text = parsedText(reader.source.slice(start, endOfText(reader.source, start)));
  if (text === null) {
    const fix = 'close the text with a double quote on the same line; inside it write \\" and \\\\ and \\n';
    throw new BrokenJson(start, "a text in double quotes on one line", fix);
  }
  reader.at = endOfText(reader.source, start);
  if (UNPRINTABLE.test(text.replace(TEXT_CONTROLS, ""))) {
    reader.problems.push({
      code: "json-text",
      file: reader.file,
      field: reader.path.join("."),
      found: JSON.stringify(text).slice(0, 80),
      expected: "text that can be printed, without control characters or half of a character pair",
      fix: "type the text again",
    });
  }
  return text;
}

/** Where a text that starts at a quote ends; the end of its line when no quote closes it. */
function endOfText(source: string, start: number): number {
  for (let at = start + 1; at < source.length; at++) {
    const char = source[at];
    if (char === "\\") at++;
    else if (char === '"') return at + 1;
    else if (char === "\n") return at;
  }
  return source.length;
}

function parsedText(raw: string): string | null {
  try {
    return JSON.parse(raw) as string;
  } catch {
    return null;
  }
}

function readNumber(reader: Reader): number {
  const start = reader.at;
  const raw = match(reader, NUMBER);
  const after = reader.source[reader.at];
  if (raw === null || (after !== undefined && !/[\s,\]}]/.test(after))) {
    const written = wordAt(reader, start);
    throw new BrokenJson(start, "a number such as 12 or -0.5", numberFix(written));
  }
  const value = Number(raw);
  if (!Number.isFinite(value))
    throw new BrokenJson(start, "a number that can be held", "write the number in its unit");
  return value;
}

function numberFix(written: string): string {
  if (/^-?0\d+(\.\d+)?$/.test(written)) return `write ${String(Number(written))}, without the leading zero`;
  if (/^-?\d+\.$/.test(written)) return `write ${written.slice(0, -1)}`;
  if (/^-Infinity$/.test(written)) return "Infinity is not JSON: write null where the value is not known";
  return "write digits with a decimal point and no unit";
}

function readWord(reader: Reader): unknown {
  const start = reader.at;
  const word = wordAt(reader, start);
  if (word === "true" || word === "false" || word === "null") {
    reader.at += word.length;
    return word === "null" ? null : word === "true";
  }
  throw new BrokenJson(
    start,
    "a value: text in double quotes, number, true, false, null, object or list",
    wordFix(word),
  );
}

function wordFix(word: string): string {
  if (word === "NaN" || /^[+-]?Infinity$/.test(word)) {
    return `${word} is not JSON: write null where the value is not known`;
  }
  if (/^(True|False|None|Null|TRUE|FALSE|NULL)$/.test(word)) {
    return `write ${word === "None" ? "null" : word.toLowerCase()}`;
  }
  if (word.startsWith("+")) return `write ${word.slice(1)}`;
  if (word.startsWith(".")) return `write 0${word}`;
  if (word.startsWith("//") || word.startsWith("/*")) return "delete the comment; JSON has none";
  if (word.startsWith("'")) return "use double quotes";
  if (word === "") return "delete the comma that has nothing after it, or write the value";
  return `write ${JSON.stringify(word)} in double quotes if it is text`;
}

function keyFix(reader: Reader): string {
  const char = reader.source[reader.at];
  if (char === "}") return "delete the comma before it";
  if (char === "/") return "delete the comment; JSON has none";
  if (char === undefined) return 'close the object with "}"';
  if (/\d/.test(char)) return "write a decimal point, not a comma, in the number before it";
  return "put the key into double quotes";
}

function skipSpace(reader: Reader): void {
  SPACE.lastIndex = reader.at;
  SPACE.exec(reader.source);
  reader.at = SPACE.lastIndex;
}

function match(reader: Reader, pattern: RegExp): string | null {
  pattern.lastIndex = reader.at;
  const found = pattern.exec(reader.source);
  if (!found) return null;
  reader.at = pattern.lastIndex;
  return found[0];
}

function wordAt(reader: Reader, at: number): string {
  WORD.lastIndex = at;
  return WORD.exec(reader.source)?.[0] ?? "";
}

function placeOf(source: string, at: number): { line: number; column: number } {
  let line = 1;
  let lineStart = 0;
  for (let next = source.indexOf("\n"); next !== -1 && next < at; next = source.indexOf("\n", next + 1)) {
    line++;
    lineStart = next + 1;
  }
  return { line, column: at - lineStart + 1 };
}

function excerpt(source: string, at: number): string {
  if (at >= source.length) return "the end of the file";
  return JSON.stringify(
    source
      .slice(at, at + 24)
      .split("\n")[0]!
      .trimEnd() || "the end of the line",
  );
}
