import { TerrainError } from "./TerrainError.ts";

/** Reads the numbers straight from the bytes: splitting text of 36 million numbers would need gigabytes. */
export function readAsciiHeights(
  bytes: Uint8Array,
  startsAt: number,
  rows: number,
  columns: number,
  noData: number,
): Float32Array {
  const heightsM = new Float32Array(rows * columns);
  const length = bytes.length;
  let at = startsAt;
  let cell = 0;
  for (;;) {
    while (at < length && bytes[at]! <= 32) at++;
    if (at >= length) break;
    const wordStart = at;
    let byte = bytes[at]!;
    const negative = byte === 45;
    if (negative || byte === 43) byte = bytes[++at] ?? 32;
    let digits = 0;
    let decimals = 0;
    let mantissa = 0;
    for (; byte >= 48 && byte <= 57; byte = bytes[++at] ?? 32) {
      mantissa = mantissa * 10 + byte - 48;
      digits++;
    }
    if (byte === 46) {
      byte = bytes[++at] ?? 32;
      for (; byte >= 48 && byte <= 57; byte = bytes[++at] ?? 32) {
        mantissa = mantissa * 10 + byte - 48;
        digits++;
        decimals++;
      }
    }
    let value = (negative ? -mantissa : mantissa) / POWERS_OF_TEN[Math.min(decimals, 22)]!;
    if (byte > 32 || digits === 0 || digits > 15) {
      const word = wordAt(bytes, wordStart)!;
      value = slowNumber(word.text, cell, columns);
      at = word.endsAt;
    }
    if (cell < heightsM.length) heightsM[cell] = value === noData ? Number.NaN : value;
    cell++;
  }
  if (cell !== heightsM.length) {
    throw new TerrainError({
      code: cell < heightsM.length ? "terrain-truncated" : "terrain-format",
      found: `${cell} heights`,
      expected: `${heightsM.length} heights (${columns} x ${rows})`,
      fix: "fetch or write the file again",
    });
  }
  return heightsM;
}

const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

/** Exponents, "nan" and long decimals; everything else is not a number. */
function slowNumber(text: string, cell: number, columns: number): number {
  if (/^[+-]?nan$/i.test(text)) return Number.NaN;
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
  if (!Number.isFinite(value)) {
    throw new TerrainError({
      code: "terrain-format",
      found: `"${text.slice(0, 40)}" at row ${Math.floor(cell / columns)}, column ${cell % columns} (counted from 0 in the north-west)`,
      expected: "a height in metres with a decimal point",
      fix: "write the file again as ESRI ASCII grid",
    });
  }
  return value;
}

/** The next word of the text from a place on, with where it ends; null at the end. Words over 200 letters are cut. */
export function wordAt(bytes: Uint8Array, from: number): { text: string; endsAt: number } | null {
  let at = from;
  while (at < bytes.length && bytes[at]! <= 32) at++;
  const startsAt = at;
  while (at < bytes.length && bytes[at]! > 32 && at - startsAt < 200) at++;
  return at === startsAt ? null : { text: String.fromCharCode(...bytes.subarray(startsAt, at)), endsAt: at };
}
