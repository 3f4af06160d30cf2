import type { PostLattice } from "./groundPlan.ts";
import type { BoxCorner } from "./localFrame.ts";
import { lzwBytes } from "./lzwBytes.ts";

const NO_DATA = "-9999";
const ROWS_PER_STRIP = 32;
const SIZES = { ascii: 1, short: 2, long: 4, double: 8 };
const TYPES = { ascii: 2, short: 3, long: 4, double: 12 };

interface Tag {
  id: number;
  kind: keyof typeof SIZES;
  values: number[];
}

/**
 * A GeoTIFF of heights: 32-bit floats in LZW strips, one post a pixel, the tie point at the middle of the first post
 * (PixelIsPoint), no-data declared. NaN is written as the no-data number.
 *
 * @source TIFF Revision 6.0 (1992); OGC 19-008r4, GeoTIFF 1.1
 */
export function geoTiff(heightsM: Float64Array, lattice: PostLattice, corner: BoxCorner): Uint8Array {
  const strips = heightStrips(heightsM, lattice);
  const { spacingM, rows, columns } = lattice;
  const epsg = (corner.zone.hemisphere === "N" ? 32600 : 32700) + corner.zone.number;
  const tags: Tag[] = [
    { id: 256, kind: "long", values: [columns] },
    { id: 257, kind: "long", values: [rows] },
    { id: 258, kind: "short", values: [32] },
    { id: 259, kind: "short", values: [5] }, // LZW
    { id: 262, kind: "short", values: [1] }, // black is zero
    { id: 273, kind: "long", values: strips.map(() => 0) }, // offsets, filled in below
    { id: 277, kind: "short", values: [1] },
    { id: 278, kind: "long", values: [ROWS_PER_STRIP] },
    { id: 279, kind: "long", values: strips.map((strip) => strip.length) },
    { id: 317, kind: "short", values: [3] }, // floating-point predictor
    { id: 339, kind: "short", values: [3] }, // IEEE floats
    { id: 33550, kind: "double", values: [spacingM, spacingM, 0] },
    {
      id: 33922,
      kind: "double",
      values: [0, 0, 0, corner.eastingM + lattice.westX, corner.northingM + lattice.northY, 0],
    },
    // GeoKeys 1.1: projected model, PixelIsPoint, the projection by its EPSG number
    { id: 34735, kind: "short", values: [1, 1, 1, 3, 1024, 0, 1, 1, 1025, 0, 1, 2, 3072, 0, 1, epsg] },
    { id: 42113, kind: "ascii", values: [...`${NO_DATA}\0`].map((letter) => letter.charCodeAt(0)) },
  ];
  const directoryEnd = 8 + 2 + tags.length * 12 + 4;
  const extras = tags
    .filter((tag) => byteLength(tag) > 4)
    .reduce((sum, tag) => sum + even(byteLength(tag)), 0);
  const offsets = tags.find(({ id }) => id === 273)!.values;
  let end = directoryEnd + extras;
  for (const [index, strip] of strips.entries()) {
    offsets[index] = end;
    end = even(end + strip.length);
  }
  const file = new Uint8Array(end);
  writeDirectory(new DataView(file.buffer), tags, directoryEnd);
  for (const [index, strip] of strips.entries()) file.set(strip, offsets[index]!);
  return file;
}

function writeDirectory(view: DataView, tags: Tag[], directoryEnd: number): void {
  view.setUint16(0, 0x4949, true); // little-endian
  view.setUint16(2, 42, true);
  view.setUint32(4, 8, true);
  view.setUint16(8, tags.length, true);
  let extraAt = directoryEnd;
  for (const [index, tag] of tags.entries()) {
    const at = 10 + index * 12;
    view.setUint16(at, tag.id, true);
    view.setUint16(at + 2, TYPES[tag.kind], true);
    view.setUint32(at + 4, tag.values.length, true);
    const isInline = byteLength(tag) <= 4;
    if (!isInline) view.setUint32(at + 8, extraAt, true);
    writeValues(view, isInline ? at + 8 : extraAt, tag);
    if (!isInline) extraAt += even(byteLength(tag));
  }
}

function writeValues(view: DataView, at: number, { kind, values }: Tag): void {
  for (const [index, value] of values.entries()) {
    const place = at + index * SIZES[kind];
    if (kind === "double") view.setFloat64(place, value, true);
    else if (kind === "long") view.setUint32(place, value, true);
    else if (kind === "short") view.setUint16(place, value, true);
    else view.setUint8(place, value);
  }
}

function heightStrips(heightsM: Float64Array, { rows, columns }: PostLattice): Uint8Array[] {
  const strips: Uint8Array[] = [];
  for (let row = 0; row < rows; row += ROWS_PER_STRIP) {
    const count = Math.min(ROWS_PER_STRIP, rows - row);
    const plain = new Uint8Array(count * columns * 4);
    for (let at = 0; at < count; at++) {
      const heights = heightsM.subarray((row + at) * columns, (row + at + 1) * columns);
      plain.set(predictedRow(heights), at * columns * 4);
    }
    strips.push(lzwBytes(plain));
  }
  return strips;
}

/** The bytes of one row of floats, highest bytes first in planes, each byte less the one before it. */
function predictedRow(heightsM: Float64Array): Uint8Array {
  const view = new DataView(new ArrayBuffer(4));
  const planes = new Uint8Array(heightsM.length * 4);
  for (const [column, heightM] of heightsM.entries()) {
    view.setFloat32(0, Number.isNaN(heightM) ? Number(NO_DATA) : heightM, false);
    for (let byte = 0; byte < 4; byte++) planes[byte * heightsM.length + column] = view.getUint8(byte);
  }
  for (let at = planes.length - 1; at > 0; at--) planes[at] = planes[at]! - planes[at - 1]!;
  return planes;
}

function byteLength({ kind, values }: Tag): number {
  return values.length * SIZES[kind];
}

function even(length: number): number {
  return length + (length % 2);
}
