import sharp from "sharp";
import type { Page } from "../browser.ts";
import { luminance, pageTokens } from "./contrastFaults.ts";

const LARGEST_SHARE = 0.05;

/** The first screen of a dark page, when more than 5 per cent of it is brighter than its text: it would blind in the dark. */
export async function glareFaults(page: Page): Promise<string[]> {
  const { ink } = await pageTokens(page);
  if (ink === undefined || ink === "") return ["no token --ink"];
  const share = await brighterShare(await page.screenshot(), luminance(ink));
  return share <= LARGEST_SHARE
    ? []
    : [`${Math.round(100 * share)} % of the first screen is brighter than its text`];
}

async function brighterShare(png: Buffer, limit: number): Promise<number> {
  const { data, info } = await sharp(png)
    .removeAlpha()
    .toColourspace("srgb")
    .raw()
    .toBuffer({ resolveWithObject: true });
  let brighter = 0;
  for (let i = 0; i < data.length; i += info.channels) {
    const colour = `rgb(${data[i]}, ${data[i + 1]}, ${data[i + 2]})`;
    // one step of eight bits of rounding
    if (cachedLuminance(colour) > limit + 0.005) brighter++;
  }
  return brighter / (info.width * info.height);
}

const known = new Map<string, number>();

function cachedLuminance(colour: string): number {
  const found = known.get(colour);
  if (found !== undefined) return found;
  const value = luminance(colour);
  known.set(colour, value);
  return value;
}
