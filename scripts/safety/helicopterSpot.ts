import { type Check, type CheckResult, combined, figure, sentence } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/**
 * C17: a place where a helicopter could land, by its size, its slope and the owner's word that it is open and without wires. Under the least
 * size or over the steepest slope is a STOP for the spot, not for any site. Sees no trees: without the tick NOT CHECKED. The crew decides.
 *
 * @param facts.sizeM     side of the open square; null = not entered
 * @param facts.slopeDeg  steepest slope of the ground there; null = no ground data
 * @param facts.noWires   false = there are wires or trees; null = nobody has looked
 */
export function helicopterSpot(
  facts: { subject: string; sizeM: number | null; slopeDeg: number | null; noWires: boolean | null },
  limits: Pick<SafetyLimits, "landingMinM" | "landingPreferredM" | "landingCautionDeg" | "landingStopDeg">,
): Check {
  const { subject, sizeM, slopeDeg, noWires } = facts;
  const found = [ofSize(sizeM, limits), ofSlope(slopeDeg, limits), ofWires(noWires)];
  return {
    id: "C17",
    result: combined(found.map(([result]) => result)),
    text: sentence(`${found.map(([, words]) => words).join("; ")}; the crew decides`),
    subject,
    inputs: { sizeM, slopeDeg, noWires },
  };
}

type Finding = readonly [CheckResult, string];

function ofSize(
  sizeM: number | null,
  { landingMinM, landingPreferredM }: Pick<SafetyLimits, "landingMinM" | "landingPreferredM">,
): Finding {
  if (sizeM === null) return ["NOT CHECKED", "size not entered"];
  const size = `${figure(sizeM)} m wide`;
  if (sizeM < landingMinM) return ["STOP", `${size}, at least ${figure(landingMinM)} m is needed`];
  if (sizeM < landingPreferredM) return ["CAUTION", `${size}, ${figure(landingPreferredM)} m is better`];
  return ["OK", size];
}

function ofSlope(
  slopeDeg: number | null,
  { landingCautionDeg, landingStopDeg }: Pick<SafetyLimits, "landingCautionDeg" | "landingStopDeg">,
): Finding {
  if (slopeDeg === null) return ["NOT CHECKED", "slope not known"];
  const slope = `slope ${figure(slopeDeg, 1)} degrees`;
  if (slopeDeg > landingStopDeg) return ["STOP", `${slope}, over ${figure(landingStopDeg)}`];
  if (slopeDeg > landingCautionDeg) return ["CAUTION", `${slope}, over ${figure(landingCautionDeg)}`];
  return ["OK", slope];
}

function ofWires(noWires: boolean | null): Finding {
  if (noWires === null) return ["NOT CHECKED", "nobody has looked for wires and trees"];
  return noWires ? ["OK", "seen to be open, without wires"] : ["STOP", "wires or trees there"];
}
