import type { Page } from "../browser.ts";

export interface PrintedPdf {
  pages: number;
  /** size of each sheet, millimetres */
  sizesMm: { width: number; height: number }[];
  /** the file without its dates and id, for comparing */
  body: string;
}

/** The page as the browser prints it, on the paper that its own style asks for. */
export async function printedPdf(page: Page, printBackground = false): Promise<PrintedPdf> {
  return readPdf(await page.pdf({ preferCSSPageSize: true, printBackground }));
}

/**
 * Sheets of a PDF as Chromium writes them: page objects stand uncompressed in the file.
 *
 * @throws {RangeError} a file whose pages can not be counted that way
 */
export function readPdf(bytes: Buffer): PrintedPdf {
  const text = bytes.toString("latin1");
  const pages = [...text.matchAll(/\/Type\s*\/Page(?![a-zA-Z])/g)].length;
  const counted = /\/Type\s*\/Pages\b[^>]*?\/Count\s+(\d+)/.exec(text)?.[1];
  if (pages === 0) throw new RangeError("a PDF must hold readable page objects, found none");
  if (counted !== undefined && text.match(/\/Type\s*\/Pages\b/g)?.length === 1 && Number(counted) !== pages) {
    throw new RangeError(`a PDF must hold as many pages as it counts, found ${pages} and ${counted}`);
  }
  const mm = (points: string): number => (Number(points) * 25.4) / 72;
  return {
    pages,
    sizesMm: [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)].map(([, width, height]) => ({
      width: mm(width!),
      height: mm(height!),
    })),
    body: text.replace(/\/(?:CreationDate|ModDate)\s*\([^)]*\)/g, "").replace(/\/ID\s*\[[^\]]*\]/g, ""),
  };
}
