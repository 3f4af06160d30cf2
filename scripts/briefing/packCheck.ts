import type { PackCheck } from "../content/schema/packSchema.ts";
import { packAngle, packMetres, packShare, packSpeed, rounded } from "./packNumbers.ts";

/** A check as pack.json holds it: the numbers it was judged on in the precisions of a pack, by the unit in their names. */
export function packCheck(check: PackCheck): PackCheck {
  const inputs = Object.entries(check.inputs).map(([name, value]) => [
    name,
    typeof value === "number" ? packInput(name, value) : value,
  ]);
  const { id, result, text, subject } = check;
  return { id, result, text, subject, inputs: Object.fromEntries(inputs) as PackCheck["inputs"] };
}

function packInput(name: string, value: number): number {
  if (name === "lat" || name === "lon") return rounded(value, 6);
  if (name.endsWith("Deg")) return packAngle(value);
  if (name.endsWith("Mps")) return packSpeed(value);
  if (name.endsWith("Share")) return packShare(value);
  return name.endsWith("M") ? packMetres(value) : value;
}
