import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { computedFolder, projectFolders } from "../publish/projectFolders.ts";
import { readPages, writeBareEleventy } from "./bareEleventy.ts";
import { type Measured, median, shown } from "./measured.ts";
import { type ProcessRun, timedProcess } from "./timedProcess.ts";

const PAIRS = 5;
const FRESH_RUNS = 3;
const RATIO_GOAL = 3;
const PEAK_GOAL_MB = 600;

/**
 * Time and processor time of a whole `npm run pack` over those of Eleventy alone writing the very same pages, run in turn so that both meet the
 * same machine, and the peak memory of the pack.
 *
 * @throws {Error} when one of them fails, or when Eleventy alone does not write the same pages
 */
export async function packAgainstEleventy(): Promise<Measured[]> {
  const folder = await mkdtemp(join(tmpdir(), "bench-"));
  try {
    const packed = join(folder, "packed");
    const bare = join(folder, "bare");
    const pack = () => timedProcess("npm", ["run", "pack", "--", "--out", packed], projectFolders.root);
    await pack();
    const pages = await readPages(packed);
    await writeBareEleventy(bare, pages, join(projectFolders.root, "node_modules"));
    const eleventy = () => timedProcess("npm", ["run", "build"], bare);
    await eleventy();
    const alone = await readPages(join(bare, "out"));
    if (JSON.stringify(alone) !== JSON.stringify(pages)) throw new Error("Eleventy alone wrote other pages");

    const anew: ProcessRun[] = [];
    for (let run = 0; run < FRESH_RUNS; run++) {
      await rm(computedFolder, { recursive: true, force: true });
      anew.push(await pack());
    }
    const packs: ProcessRun[] = [];
    const bares: ProcessRun[] = [];
    for (let pair = 0; pair < PAIRS; pair++) {
      packs.push(await pack());
      bares.push(await eleventy());
    }
    return figures(packs, anew, bares, pages.length);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function figures(
  packs: readonly ProcessRun[],
  anew: readonly ProcessRun[],
  bares: readonly ProcessRun[],
  pageCount: number,
): Measured[] {
  const ratioOf = (what: string, unit: string, of: (run: ProcessRun) => number): Measured => {
    const ratios = packs.map((pack, pair) => of(pack) / of(bares[pair] as ProcessRun));
    const [packS, bareS] = [packs, bares].map((runs) => shown(median(runs.map(of))));
    return {
      what,
      figure: median(ratios),
      unit,
      goal: RATIO_GOAL,
      how: `${pageCount} equal pages, ${PAIRS} pairs in turn: ratios ${ratios.map(shown).join(", ")}; medians ${packS} s and ${bareS} s`,
    };
  };
  return [
    ratioOf("Whole pack of unchanged areas against Eleventy alone", "times its time", ({ timeS }) => timeS),
    ratioOf(
      "Processor time of a pack of unchanged areas against Eleventy alone",
      "times its processor time",
      ({ processorS }) => processorS,
    ),
    {
      what: "Whole pack with every area computed anew against Eleventy alone",
      figure: median(anew.map(({ timeS }) => timeS)) / median(bares.map(({ timeS }) => timeS)),
      unit: "times its time",
      goal: null,
      how: `as after a change of a constant or of every area; ${FRESH_RUNS} runs, the ratio of the medians`,
    },
    {
      what: "Peak memory of a pack",
      figure: Math.max(...[...anew, ...packs].map(({ peakMb }) => peakMb)),
      unit: "MB",
      goal: PEAK_GOAL_MB,
      how: `largest process of ${PAIRS + FRESH_RUNS} runs`,
    },
  ];
}
