/** Text height of charts, millimetres: 9 pt in print, 12 px on a screen. */
export const TEXT_MM = 3.18;

/**
 * Width that a text may take, millimetres: a wide bound of common sans-serif faces, so that labels set by it do not touch.
 */
export function textWidthMm(text: string, heightMm: number = TEXT_MM): number {
  let ems = 0;
  for (const letter of text) ems += NARROW.has(letter) ? 0.4 : WIDE.has(letter) ? 0.98 : 0.66;
  return ems * heightMm;
}

/** A coordinate as written into a drawing: 0.01 mm. */
export function mm(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate must be a finite number, found ${value}`);
  return String(Math.round(value * 100) / 100 + 0);
}

/** Text as XML character data. */
export function escapeXml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/** A label at its baseline. */
export function label(
  text: string,
  xMm: number,
  yMm: number,
  anchor: "start" | "middle" | "end" = "start",
): string {
  return `<text class="draw-text" x="${mm(xMm)}" y="${mm(yMm)}" text-anchor="${anchor}" font-size="${TEXT_MM}" fill="#000">${escapeXml(text)}</text>`;
}

const NARROW = new Set([..." .,:;|!'()ijlIftr"]);
const WIDE = new Set([..."mwMW%@"]);
