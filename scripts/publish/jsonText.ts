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
  if (value === null || typeof value !== "object") return oneValue(value);
  const flat = oneLine(value, LINE_WIDTH - indent.length - lead.length);
  if (flat !== null) return flat;
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

/** The value on one line; null as soon as it is longer than there is room, so that no text is made over and over. */
function oneLine(value: unknown, room: number): string | null {
  if (value === null || typeof value !== "object") {
    const text = oneValue(value);
    return text.length <= room ? text : null;
  }
  const isArray = Array.isArray(value);
  let text = isArray ? "[" : "{ ";
  let separator = "";
  for (const [key, item] of isArray ? value.entries() : Object.entries(value)) {
    text += isArray ? separator : `${separator}${JSON.stringify(key)}: `;
    const own = oneLine(item, room - text.length - 1);
    if (own === null) return null;
    text += own;
    separator = ", ";
  }
  if (isArray) text += "]";
  else text = separator === "" ? "{}" : `${text} }`;
  return text.length <= room ? text : null;
}

function oneValue(value: unknown): string {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(`a number in JSON must be finite, found ${value}`);
  }
  const text = JSON.stringify(value);
  if (text === undefined) throw new RangeError("a value in JSON must be defined, found undefined");
  return text;
}

function wrapped(numbers: number[], indent: string): string {
  const deeper = `${indent}  `;
  const rows: string[] = [];
  let row = "";
  for (const text of numbers.map(oneValue)) {
    if (row !== "" && deeper.length + row.length + text.length + 2 > LINE_WIDTH) {
      rows.push(row);
      row = "";
    }
    row += row === "" ? text : `, ${text}`;
  }
  return `[\n${[...rows, row].map((text) => deeper + text).join(",\n")}\n${indent}]`;
}
