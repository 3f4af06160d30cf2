const LINE_WIDTH = 110;

/**
 * JSON text for people and programs: keys in the order given, a value that fits on one line stands on one line, two spaces
 * for each level, one newline at the end. The same value gives the same bytes.
 *
 * @throws {RangeError} a number that JSON can not hold (NaN, Infinity), or undefined
 */
export function jsonText(value: unknown): string {
  return `${lines(value, "", "")}\n`;
}

function lines(value: unknown, indent: string, lead: string): string {
  const flat = oneLine(value);
  if (
    indent.length + lead.length + flat.length <= LINE_WIDTH ||
    value === null ||
    typeof value !== "object"
  ) {
    return flat;
  }
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.every((item) => typeof item === "number")) return wrapped(value, indent);
    return `[\n${value.map((item) => deeper + lines(item, deeper, "")).join(",\n")}\n${indent}]`;
  }
  const rows = Object.entries(value).map(([key, item]) => {
    const lead = `${JSON.stringify(key)}: `;
    return deeper + lead + lines(item, deeper, lead);
  });
  return `{\n${rows.join(",\n")}\n${indent}}`;
}

function oneLine(value: unknown): string {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(`a number in JSON must be finite, found ${value}`);
  }
  if (Array.isArray(value)) return `[${value.map(oneLine).join(", ")}]`;
  if (value !== null && typeof value === "object") {
    const rows = Object.entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`);
    return rows.length === 0 ? "{}" : `{ ${rows.join(", ")} }`;
  }
  const text = JSON.stringify(value);
  if (text === undefined) throw new RangeError("a value in JSON must be defined, found undefined");
  return text;
}

function wrapped(numbers: number[], indent: string): string {
  const deeper = `${indent}  `;
  const rows: string[] = [];
  let row = "";
  for (const text of numbers.map(oneLine)) {
    if (row !== "" && deeper.length + row.length + text.length + 2 > LINE_WIDTH) {
      rows.push(row);
      row = "";
    }
    row += row === "" ? text : `, ${text}`;
  }
  return `[\n${[...rows, row].map((text) => deeper + text).join(",\n")}\n${indent}]`;
}
