/** A field of a TIFF directory: tag, type (2 text, 3 short, 4 long, 12 double) and values. */
type Field = readonly [number, 2 | 3 | 4 | 12, string | readonly number[]];

export interface TinyGeoTiff {
  rows: number;
  columns: number;
  heights: readonly number[];
  /** GeoKey number to value; only keys that hold a short. */
  geoKeys: Readonly<Record<number, number>>;
  pixelScale?: readonly [number, number];
  /** Raster i, j and world x, y of the tie point. */
  tiePoint?: readonly [number, number, number, number];
  transformation?: readonly number[];
  noData?: string;
  metadata?: string;
}

const SIZES = { 2: 1, 3: 2, 4: 4, 12: 8 } as const;

/** An uncompressed little-endian 32-bit float GeoTIFF in one strip, written byte by byte. */
export function tinyGeoTiff(file: TinyGeoTiff): Uint8Array {
  const keys = Object.entries(file.geoKeys).map(([key, value]) => [Number(key), 0, 1, value]);
  const strip = file.heights.length * 4;
  const fields: Field[] = [
    [256, 4, [file.columns]],
    [257, 4, [file.rows]],
    [258, 3, [32]],
    [259, 3, [1]],
    [262, 3, [1]],
    [273, 4, [8]],
    [277, 3, [1]],
    [278, 4, [file.rows]],
    [279, 4, [strip]],
    [339, 3, [3]],
  ];
  if (file.pixelScale) fields.push([33550, 12, [...file.pixelScale, 0]]);
  if (file.tiePoint) {
    const [i, j, x, y] = file.tiePoint;
    fields.push([33922, 12, [i, j, 0, x, y, 0]]);
  }
  if (file.transformation) fields.push([34264, 12, file.transformation]);
  if (keys.length > 0) fields.push([34735, 3, [1, 1, 0, keys.length, ...keys.flat()]]);
  if (file.metadata !== undefined) fields.push([42112, 2, `${file.metadata}\0`]);
  if (file.noData !== undefined) fields.push([42113, 2, file.noData]);

  const directoryAt = 8 + strip;
  let extraAt = directoryAt + 2 + fields.length * 12 + 4;
  const bytes = new Uint8Array(extraAt + 2000);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0x4949, true);
  view.setUint16(2, 42, true);
  view.setUint32(4, directoryAt, true);
  file.heights.forEach((height, at) => {
    view.setFloat32(8 + at * 4, height, true);
  });
  view.setUint16(directoryAt, fields.length, true);
  fields.forEach(([tag, type, value], index) => {
    const at = directoryAt + 2 + index * 12;
    const values = typeof value === "string" ? [...value].map((letter) => letter.charCodeAt(0)) : value;
    view.setUint16(at, tag, true);
    view.setUint16(at + 2, type, true);
    view.setUint32(at + 4, values.length, true);
    const inline = values.length * SIZES[type] <= 4;
    let target = at + 8;
    if (!inline) {
      view.setUint32(at + 8, extraAt, true);
      target = extraAt;
      extraAt += values.length * SIZES[type] + (values.length % 2);
    }
    values.forEach((part, place) => {
      const where = target + place * SIZES[type];
      if (type === 2) view.setUint8(where, part);
      if (type === 3) view.setUint16(where, part, true);
      if (type === 4) view.setUint32(where, part, true);
      if (type === 12) view.setFloat64(where, part, true);
    });
  });
  return bytes.slice(0, extraAt);
}
