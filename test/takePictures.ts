import { mkdir } from "node:fs/promises";
import { fileURLToPath, pathToFileURL } from "node:url";
import sharp from "sharp";
import { launchBrowser } from "./browser.ts";

/**
 * Takes the pictures of printed pages that the README shows, from the pack in _site/ (`npm run pack` first):
 * npx tsx test/takePictures.ts
 */
const PICTURES = [
  { name: "site-card", page: "areas/turnpail-hollow/sites/upper-bench.html" },
  { name: "day-sheet", page: "areas/turnpail-hollow/trips/bow-clock-change/day-2027-11-06.html" },
];
/** The frame of an A4 sheet inside its margins, in CSS pixels, and the margin. */
const FRAME = { width: 680, height: 1009, margin: 57 };

const site = new URL("../_site/", import.meta.url);
const folder = new URL("../layouts/pictures/", import.meta.url);
await mkdir(folder, { recursive: true });
const browser = await launchBrowser();
for (const { name, page: path } of PICTURES) {
  const page = await browser.newPage({ viewport: { width: FRAME.width, height: FRAME.height } });
  await page.emulateMedia({ media: "print" });
  await page.goto(pathToFileURL(fileURLToPath(new URL(path, site))).href);
  const shot = await page.screenshot({ clip: { x: 0, y: 0, width: FRAME.width, height: FRAME.height } });
  const sheet = await framed(shot, FRAME.margin, "#fff");
  await sharp(await framed(sheet, 1, "#888"))
    .png({ palette: true, colours: 16 })
    .toFile(fileURLToPath(new URL(`${name}.png`, folder)));
  await page.close();
}
await browser.close();

async function framed(picture: Buffer, width: number, background: string): Promise<Buffer> {
  return await sharp(picture)
    .extend({ top: width, bottom: width, left: width, right: width, background })
    .png()
    .toBuffer();
}
