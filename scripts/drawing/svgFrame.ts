import { escapeXml, mm } from "./svgText.ts";

/** A drawing at its true size, units millimetres, with its title and description for readers who do not see it. */
export function svgFrame(
  id: string,
  size: { widthMm: number; heightMm: number },
  words: { title: string; desc: string },
  content: string,
): string {
  const [width, height] = [mm(size.widthMm), mm(size.heightMm)];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"` +
    ` role="img" aria-labelledby="${id}-t ${id}-d" font-family="sans-serif">` +
    `<title id="${id}-t">${escapeXml(words.title)}</title><desc id="${id}-d">${escapeXml(words.desc)}</desc>` +
    `${content}</svg>`
  );
}

/** Hatch at 45 degrees that survives a copier: lines of 0.35 mm, 1.4 mm apart. The id is used as fill="url(#id)". */
export function hatchPattern(id: string): string {
  return (
    `<defs><pattern id="${id}" width="1.4" height="1.4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">` +
    `<rect class="draw-ink" width="0.35" height="1.4" fill="#000"/></pattern></defs>`
  );
}
