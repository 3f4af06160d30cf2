import sharp from "sharp";
import type { Page } from "../browser.ts";
import { clipFaults, setReadersText } from "./narrowFaults.ts";
import { type PrintedPdf, printedPdf } from "./printedPdf.ts";
import { setTheme } from "./setTheme.ts";

export type Paper = "a4" | "letter" | "a5";

/** Sheet and frame of each paper, millimetres. A4 and Letter share one frame. */
const PAPERS = {
  a4: { width: 210, height: 297, frameWidth: 180 },
  letter: { width: 215.9, height: 279.4, frameWidth: 180 },
  a5: { width: 148, height: 210, frameWidth: 126 },
} as const;

const PX_A_MM = 96 / 25.4;

/** The paper a page asks for by the class of its body; null when it names none. */
export async function paperOf(page: Page): Promise<Paper | null> {
  const names = (await page.evaluate("document.body.className")) as string;
  return (Object.keys(PAPERS) as Paper[]).find((paper) => names.includes(`paper-${paper}`)) ?? null;
}

/** Puts the page on another paper of the same frame. */
export async function setPaper(page: Page, paper: Paper): Promise<void> {
  await page.evaluate(
    `document.body.className = document.body.className.replace(/paper-(a4|letter|a5)/, "paper-${paper}")`,
  );
}

/** Sheets that a page took more than it may, or on another paper than asked for. */
export function sheetFaults(pdf: PrintedPdf, paper: Paper, most: number): string[] {
  const { width, height } = PAPERS[paper];
  const other = pdf.sizesMm.find(
    (size) => Math.abs(size.width - width) > 0.5 || Math.abs(size.height - height) > 0.5,
  );
  return [
    ...(pdf.pages > most ? [`takes ${pdf.pages} sheets of ${paper}, at most ${most}`] : []),
    ...(pdf.sizesMm.length === 0 ? ["has sheets without size"] : []),
    ...(other === undefined
      ? []
      : [`prints on ${other.width.toFixed(0)} x ${other.height.toFixed(0)} mm instead of ${paper}`]),
  ];
}

/**
 * What does not fit the frame of the sheet: one element too wide shrinks the whole document without a word, and a scale bar
 * with it. Also texts that print cut off, and labels of drawings that touch.
 */
export async function frameFaults(page: Page): Promise<string[]> {
  const paper = await paperOf(page);
  if (paper === null) return ["names no paper"];
  const before = page.viewportSize() ?? { width: 1024, height: 900 };
  await page.emulateMedia({ media: "print" });
  const width = Math.floor(PAPERS[paper].frameWidth * PX_A_MM);
  await page.setViewportSize({ width, height: 900 });
  const asWide = (await page.evaluate("document.documentElement.scrollWidth")) as number;
  const clipped = await clipFaults(page);
  await page.emulateMedia({ media: null });
  await page.setViewportSize(before);
  return [
    ...(asWide > width + 1
      ? [`prints ${asWide} px wide in a frame of ${width} px: the sheet would shrink`]
      : []),
    ...clipped.map((fault) => `in print ${fault}`),
  ];
}

/** The page, when it prints another picture from a dark theme than by day. */
export async function darkPrintFaults(page: Page): Promise<string[]> {
  const faults: string[] = [];
  await setTheme(page, "day");
  const day = await printedPdf(page);
  for (const theme of ["dim", "red"] as const) {
    if (!(await setTheme(page, theme))) faults.push(`has no switch to the ${theme} theme`);
    else if ((await printedPdf(page)).body !== day.body)
      faults.push(`prints otherwise from the ${theme} theme`);
  }
  await setTheme(page, "day");
  return faults;
}

/** The page, when its printed picture changes without backgrounds and shadows, which printers drop. */
export async function backgroundFaults(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: "print" });
  const full = await page.screenshot({ fullPage: true });
  await setReadersText(
    page,
    `*, *::before, *::after { background: none !important; box-shadow: none !important; text-shadow: none !important }
    html { background: #fff !important }`,
  );
  const bare = await page.screenshot({ fullPage: true });
  await setReadersText(page, "");
  await page.emulateMedia({ media: null });
  const share = await differingShare(full, bare);
  return share === 0
    ? []
    : [`loses ${(100 * share).toFixed(2)} % of its printed picture without backgrounds`];
}

async function differingShare(one: Buffer, other: Buffer): Promise<number> {
  if (one.equals(other)) return 0;
  const [a, b] = await Promise.all([one, other].map((png) => sharp(png).greyscale().raw().toBuffer()));
  if (a!.length !== b!.length) return 1;
  let differing = 0;
  for (let i = 0; i < a!.length; i++) if (Math.abs(a![i]! - b![i]!) > 8) differing++;
  return differing / a!.length;
}
