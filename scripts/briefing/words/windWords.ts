import { COMPASS_POINTS, type CompassPoint } from "../../geo/compassPoints.ts";
import { listWords } from "./listWords.ts";

/**
 * A set of the 16 winds in words, runs of neighbours joined clockwise: "SW to NW and E". Two neighbours stay two words.
 *
 * @returns "any direction" for all 16, "" for none
 * @example windRunsText(["NNW", "N", "NNE", "S"]) // "NNW to NNE and S"
 */
export function windRunsText(winds: readonly string[]): string {
  const has = COMPASS_POINTS.map((point) => winds.includes(point));
  if (has.every(Boolean)) return "any direction";
  if (!has.some(Boolean)) return "";
  const runs: CompassPoint[][] = [];
  const firstGap = has.indexOf(false); // starting in a gap keeps a run over north whole
  for (let step = 1; step <= 16; step++) {
    const i = (firstGap + step) % 16;
    if (!has[i]) continue;
    if (has[(i + 15) % 16] && runs.length > 0) runs.at(-1)?.push(COMPASS_POINTS[i]!);
    else runs.push([COMPASS_POINTS[i]!]);
  }
  // a run over north is read first, as north heads every table
  const place = (run: CompassPoint[]): number => (run.includes("N") ? 0 : COMPASS_POINTS.indexOf(run[0]!));
  runs.sort((a, b) => place(a) - place(b));
  return listWords(runs.flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run)));
}
