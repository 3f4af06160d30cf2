import type { SharedData } from "../../content/areaContent.ts";
import type { ModelRow } from "../../content/schema/sharedDataSchema.ts";
import { type AreaFrame, areaSheetBase } from "./areaFrame.ts";
import { LIKELIHOODS, LIMITS, METHOD_STEPS, RESULTS, TERMS } from "./methodText.ts";
import { type FactRow, fact, type Sheet } from "./sheetParts.ts";
import { standingLine } from "./standingLines.ts";

export interface ConstantRow {
  id: string;
  value: string;
  range: string;
  status: string;
  reason: string;
  source: string;
}

/** What does this mark mean, where are these numbers from? */
export interface MethodSheet extends Sheet {
  comesFirst: string;
  certifies: string;
  verdicts: { verdict: "suits" | "marginal" | "avoid" | "not assessed"; meaning: string }[];
  results: readonly { word: string; meaning: string }[];
  likelihoods: readonly { word: string; meaning: string }[];
  terms: readonly { term: string; meaning: string }[];
  steps: readonly { title: string; text: string }[];
  limits: readonly string[];
  made: FactRow[];
  constants: ConstantRow[];
}

export function methodSheet(frame: AreaFrame, shared: SharedData): MethodSheet {
  const { pack } = frame.area;
  const share = (id: string): string => {
    const value = shared.model.find((row) => row.id === id)?.value;
    if (typeof value !== "number") throw new RangeError(`the model has no number named ${id}`);
    return `${Math.round(value * 100)} in 100`;
  };
  return {
    ...areaSheetBase(frame, {
      permalink: `${frame.folder}method.html`,
      pageName: "Key and method",
      title: "Key and method",
      answer: {
        core: "Solid square suits, half square is marginal, cross is avoid, dash is not assessed.",
        rest: null,
      },
      exception: "A forecast is a forecast, a turn is a span, and the pack does not see the day.",
      cautions: [],
    }),
    comesFirst: standingLine(shared, "lawFirst"),
    certifies: standingLine(shared, "doesNotCertify"),
    verdicts: [
      { verdict: "suits", meaning: `Chance that scent reaches an approach: under ${share("suitsBelow")}.` },
      {
        verdict: "marginal",
        meaning: `From there to under ${share("avoidFrom")}, or the drift is too weak to name.`,
      },
      { verdict: "avoid", meaning: `${share("avoidFrom")} and more.` },
      {
        verdict: "not assessed",
        meaning: "Something is missing: an approach, a slope, or that phase does not occur.",
      },
    ],
    results: RESULTS,
    likelihoods: LIKELIHOODS,
    terms: TERMS,
    steps: METHOD_STEPS,
    limits: LIMITS,
    made: [
      fact("Made by", pack.generator),
      fact("Time zones", `IANA ${pack.tzVersion}`),
      fact("Magnetic model", pack.area.magnetic?.model ?? "none"),
      fact("Numbers", "pack.json and details.json beside the area page hold every figure."),
    ],
    constants: shared.model.map(constantRow),
  };
}

function constantRow(row: ModelRow): ConstantRow {
  const unit = row.unit === "-" || row.unit === "" ? "" : ` ${row.unit}`;
  return {
    id: row.id,
    value: `${valueText(row.value)}${unit}`,
    range: row.low === null || row.high === null ? "no range" : `${row.low} to ${row.high}`,
    status: row.status,
    reason: row.reason,
    source: row.source === undefined ? "" : `Source: ${row.source}.`,
  };
}

function valueText(value: ModelRow["value"]): string {
  if (typeof value === "number") return String(value);
  if (Array.isArray(value)) return value.join(", ");
  return Object.entries(value)
    .map(([key, v]) => `${key} ${v}`)
    .join(", ");
}
