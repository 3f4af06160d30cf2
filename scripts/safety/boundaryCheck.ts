import { type Check, figure } from "./check.ts";
import type { SafetyLimits } from "./safetyLimits.ts";

/** How a place or a way lies to the ground that one may be on. */
export interface BoundaryPlace {
  /** Distance to the line inside the ground; negative outside it. For a way the least of it, its entry apart. */
  insideM: number;
  /** Name of closed ground that it lies in or runs over; null = none. */
  closedGround: string | null;
}

/**
 * C30: a site or a way against the boundary. Outside, or on closed ground, is a STOP; nearer to the line than `boundaryNearM` a CAUTION.
 *
 * @param facts.place   null = no boundary, or no way, is drawn: NOT CHECKED
 */
export function boundaryCheck(
  facts: { subject: string; what: "site" | "way"; place: BoundaryPlace | null },
  limits: Pick<SafetyLimits, "boundaryNearM">,
): Check {
  const { subject, what, place } = facts;
  const nearM = limits.boundaryNearM;
  if (place === null) {
    const text = "No line is drawn to compare with the boundary: look at it on the ground.";
    return { id: "C30", result: "NOT CHECKED", text, subject, inputs: { insideM: null, nearM } };
  }
  const { insideM, closedGround } = place;
  const inputs = { insideM, nearM, closedGround };
  const row = (result: Check["result"], text: string): Check => ({
    id: "C30",
    result,
    text,
    subject,
    inputs,
  });
  if (closedGround !== null) {
    return row(
      "STOP",
      what === "site" ? `On closed ground: ${closedGround}.` : `Runs over closed ground: ${closedGround}.`,
    );
  }
  if (insideM < 0) {
    const outM = figure(Math.ceil(-insideM));
    return row(
      "STOP",
      what === "site" ? `Outside the boundary by ${outM} m.` : `Leaves the boundary again, by ${outM} m.`,
    );
  }
  const inside = `${figure(Math.floor(insideM))} m inside the boundary`;
  if (insideM < nearM)
    return row("CAUTION", what === "site" ? `Only ${inside}.` : `At one place only ${inside}.`);
  return row("OK", what === "site" ? `At least ${inside}.` : `At least ${inside} from where it enters.`);
}
