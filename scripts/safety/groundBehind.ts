import type { BackstopGround } from "../shooting/backstop.ts";
import type { LineOfFire } from "../shooting/linesOfFire.ts";
import { type Check, figure } from "./check.ts";

/**
 * C4: the ground behind an animal on a lane. OK only with earth close behind on every degree and range and the lane seen on the ground in
 * daylight; a degree without earth close behind is a no-shoot bearing, and the lane a CAUTION. Straight lines over the grid:
 * ricochet, trees and the height of the grass are not in it.
 *
 * @param facts.subject   id of the lane
 * @param facts.lines     its lines of fire; null = the ground is not known
 */
export function groundBehind(facts: {
  subject: string;
  lines: readonly LineOfFire[] | null;
  isSeenOnGround: boolean;
  lengthM: number | null;
  /** Why the ground is not known, as the beginning of a sentence. */
  missing: string;
}): Check {
  const { subject, lines, isSeenOnGround, lengthM, missing } = facts;
  if (lines === null || lines.length === 0 || lengthM === null) {
    const text = `${missing}: look in daylight for earth behind the lane.`;
    return { id: "C4", result: "NOT CHECKED", text, subject, inputs: { isSeenOnGround, lengthM } };
  }
  const count = (ground: BackstopGround): number =>
    lines.filter(({ worst }) => worst.ground === ground).length;
  const [earth, far, none] = [count("earth"), count("far"), count("none")];
  const inputs = { isSeenOnGround, lengthM, earthDegrees: earth, farDegrees: far, noneDegrees: none };
  const seen = isSeenOnGround ? "Seen in daylight" : "Not seen on the ground in daylight";
  const isEarth = earth === lines.length;
  const result = isEarth && isSeenOnGround ? "OK" : "CAUTION";
  return { id: "C4", result, text: `${groundWords()}. ${seen}.`, subject, inputs };

  function groundWords(): string {
    const to = `to ${figure(Math.floor(lengthM ?? 0))} m`;
    if (isEarth) return `Earth close behind on the whole lane ${to}`;
    const worst =
      none > 0 ? "no ground behind" : "ground too far behind, falling away or within the error of the grid";
    if (earth === 0) return `No backstop ${to}. Do not shoot along it: ${worst}`;
    return `No backstop ${to} on ${far + none} of ${lines?.length ?? 0} degrees. Do not shoot there: ${worst}`;
  }
}
