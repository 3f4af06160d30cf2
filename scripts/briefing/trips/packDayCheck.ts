import type { PackCheck } from "../../content/schema/packSchema.ts";
import type { Check } from "../../safety/check.ts";
import { packCheck } from "../packCheck.ts";
import { rounded } from "../packNumbers.ts";

const KMH_PER_MPS = 3.6;

/** A check of a day as pack.json holds it. Beside a speed stands the same in km/h, in which the limits of the wind are written. */
export function packDayCheck(check: Check): PackCheck {
  const inputs: PackCheck["inputs"] = {};
  for (const [key, value] of Object.entries(check.inputs)) {
    const isNumber = typeof value === "number";
    inputs[key] = isNumber && !/(Mps|M|Deg|Share|Kg)$/.test(key) ? rounded(value, 1) : value;
    if (isNumber && key.endsWith("Mps")) inputs[key.replace(/Mps$/, "Kmh")] = rounded(value * KMH_PER_MPS, 1);
  }
  const { id, result, text, subject } = check;
  return packCheck({ id, result, text, subject, inputs });
}
