import fc from "fast-check";
import { expect, test } from "vitest";
import { lzwBytes } from "../../scripts/demo/lzwBytes.ts";

/** Decoder written from the same chapter of TIFF 6.0, apart from the packer: it keeps its strings whole. */
function unpacked(packed: Uint8Array): number[] {
  const bits = [...packed].map((byte) => byte.toString(2).padStart(8, "0")).join("");
  const out: number[] = [];
  let table: number[][] = [];
  let width = 9;
  let before: number[] | null = null;
  for (let at = 0; ; ) {
    const code = Number.parseInt(bits.slice(at, at + width), 2);
    at += width;
    if (code === 257) return out;
    if (code === 256) {
      table = Array.from({ length: 258 }, (_, byte) => [byte]);
      width = 9;
      before = null;
      continue;
    }
    const text: number[] = table[code] ?? [...before!, before![0]!];
    out.push(...text);
    if (before !== null) table.push([...before, text[0]!]);
    before = text;
    width = table.length >= 2047 ? 12 : table.length >= 1023 ? 11 : table.length >= 511 ? 10 : 9;
  }
}

test("packed bytes come back whole, short or long, even or noisy", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 9000, size: "max" }), (bytes) => {
      expect(unpacked(lzwBytes(bytes))).toEqual([...bytes]);
    }),
    { seed: 11, numRuns: 60 },
  );
  const even = new Uint8Array(40_000);
  expect(unpacked(lzwBytes(even))).toEqual([...even]);
  expect(lzwBytes(even).length).toBeLessThan(800);
});
