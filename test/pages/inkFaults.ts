import sharp from "sharp";
import type { Page } from "../browser.ts";
import { inPage } from "./inPage.ts";

/** Dots of a screen picture at 300 dots an inch, for a page of 96. */
export const PRINT_SCALE = 300 / 96;
const BLUR_PX = (0.1 / 25.4) * 300;

/** Ink shares that a mark keeps through thresholds and copiers, per cent. The bands do not touch. */
const BANDS = {
  suits: [60, 100],
  marginal: [35, 60],
  avoid: [12, 28],
  "not-assessed": [1, 10],
} as const;

type Mark = keyof typeof BANDS;

/** Share of ink in a picture, per cent: as a printer sees it that blackens under 30 or 70 per cent, and after three copies. */
export interface InkShares {
  at30: number;
  at70: number;
  copied: number;
}

interface Spot {
  kind: string;
  x: number;
  y: number;
  width: number;
  height: number;
}

/**
 * Marks of the printed page that no longer tell themselves apart in black and white: ink out of its band at either threshold
 * or after three blurred copies, or printed under 2 mm; and hatches that a copier fills or loses. One mark of each kind and size is
 * looked at. The page must stand at a scale of 300 dots an inch.
 */
export async function inkFaults(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: "print" });
  const spots = await inPage<Spot[]>(page, "inkSpots", Object.keys(BANDS));
  const faults: string[] = [];
  for (const spot of spots) {
    const { clip, dots } = onDots(spot);
    const shares = await inkShares(await page.screenshot({ clip, fullPage: true }), dots);
    if (spot.kind !== "hatch" && spot.width < (2 / 25.4) * 96 - 0.1) {
      faults.push(
        `prints the mark ${spot.kind} ${((spot.width * 25.4) / 96).toFixed(1)} mm wide, at least 2`,
      );
    }
    faults.push(...shareFaults(spot.kind, shares));
  }
  await page.emulateMedia({ media: null });
  return [...new Set(faults)];
}

/**
 * The whole dots that a mark lies on, and how many dots it is large. Browsers cut a picture that ends inside a dot each in their own
 * way; the share is therefore of the mark's own size and not of the picture's.
 */
function onDots({ x, y, width, height }: Spot): { clip: Omit<Spot, "kind">; dots: number } {
  const [left, top] = [x, y].map((from) => Math.floor(from * PRINT_SCALE + ROUNDING)) as [number, number];
  const right = Math.ceil((x + width) * PRINT_SCALE - ROUNDING);
  const bottom = Math.ceil((y + height) * PRINT_SCALE - ROUNDING);
  const clip = {
    x: left / PRINT_SCALE,
    y: top / PRINT_SCALE,
    width: (right - left) / PRINT_SCALE,
    height: (bottom - top) / PRINT_SCALE,
  };
  return { clip, dots: width * height * PRINT_SCALE * PRINT_SCALE };
}

const ROUNDING = 1e-6;

/** Shares out of the band of the mark; a hatch must neither vanish nor fill. */
export function shareFaults(kind: string, shares: InkShares): string[] {
  const [least, most] = kind === "hatch" ? [8, 60] : BANDS[kind as Mark];
  return Object.entries(shares)
    .filter(([, share]) => !(share >= least && share <= most))
    .map(([when, share]) => `${kind} has ${share.toFixed(0)} % ink ${WHEN[when]}, ${least} to ${most}`);
}

const WHEN: Record<string, string> = {
  at30: "at 30 %",
  at70: "at 70 %",
  copied: "after three copies",
};

/**
 * Ink shares of a picture of 300 dots an inch, of as many dots as the mark is large; of the whole picture when it is not said. A copy is a blur of 0.1 mm
 * and a threshold at the middle.
 */
export async function inkShares(png: Buffer, dots?: number): Promise<InkShares> {
  const flat = await sharp(png).flatten({ background: "#fff" }).greyscale().png().toBuffer();
  const { width = 0, height = 0 } = await sharp(flat).metadata();
  const size = dots ?? width * height;
  const rim = 6;
  let copy = await sharp(flat)
    .extend({ top: rim, bottom: rim, left: rim, right: rim, background: "#fff" })
    .png()
    .toBuffer();
  for (let i = 0; i < 3; i++) copy = await sharp(copy).blur(BLUR_PX).threshold(128).png().toBuffer();
  const cut = await sharp(copy).extract({ left: rim, top: rim, width, height }).png().toBuffer();
  return {
    at30: await blackShare(flat, 0.3, size),
    at70: await blackShare(flat, 0.7, size),
    copied: await blackShare(cut, 0.5, size),
  };
}

async function blackShare(png: Buffer, limit: number, dots: number): Promise<number> {
  const data = await sharp(png).greyscale().toColourspace("b-w").raw().toBuffer();
  let black = 0;
  for (const value of data) if (value < limit * 255) black++;
  return (100 * black) / dots;
}
