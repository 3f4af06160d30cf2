import { z } from "zod";
import { FIREARM_CLASSES } from "./areaSchema.ts";
import { id, monthOrDate, numberBetween, text } from "./primitives.ts";

/** data/stands.json */
export const standsFile = z.array(
  z.strictObject({
    id,
    name: text("plain name"),
    trunkMinMm: numberBetween(50, 1000, "millimetres, from the label").nullable(),
    trunkMaxMm: numberBetween(50, 2000, "millimetres, from the label").nullable(),
    ratedLoadKg: numberBetween(30, 400, "kilograms, from the label").nullable(),
    weightKg: numberBetween(0, 60, "kilograms").nullable(),
    maxPlatformHeightM: numberBetween(0, 30, "metres, from the label").nullable(),
    replaceBy: monthOrDate.nullable().optional(),
    dropMmPerMmTaper: numberBetween(
      0,
      20,
      "millimetres the platform drops for each millimetre the trunk thins",
    ).optional(),
  }),
);

/** data/firearms.json */
export const firearmsFile = z.array(
  z.strictObject({
    id,
    name: text("plain name"),
    weaponClass: z.enum(FIREARM_CLASSES),
    dangerM: numberBetween(1, 20000, "metres a miss may hurt someone"),
    laneLimitM: numberBetween(1, 1000, "metres, the longest shot a lane may hold"),
    source: text("source of the distances"),
  }),
);

/** data/cautions.json: the texts of the safety catalogue by id. */
export const cautionsFile = z.array(
  z.strictObject({
    id: z.string().regex(/^[A-Z]{1,2}\d{1,2}$/),
    severity: z.enum(["S1", "S2", "S3", "S4"]),
    title: text("what the hazard is"),
    text: text("what to do, in plain words"),
    defersTo: text("who decides"),
    source: text('source, or "common practice, no source"').optional(),
  }),
);

/** data/emergency.json: first-aid and call texts, never a number. */
export const emergencyFile = z.strictObject({
  call: z.array(text("one line to say")),
  firstAid: z.array(
    z.strictObject({
      id,
      title: text("what happened"),
      lines: z.array(text("one step")),
      defersTo: text("who decides"),
    }),
  ),
});

/** data/model.json: every constant that is a choice of the model, with unit, range and reason. */
export const modelFile = z.array(
  z.strictObject({
    id: z.string().regex(/^[a-z][A-Za-z0-9]*$/),
    value: z.union([z.number(), z.array(z.number()), z.array(z.string()), z.record(z.string(), z.number())]),
    unit: z.string(),
    low: z.number().nullable(),
    high: z.number().nullable(),
    reason: text("why this value"),
    source: text("published source").optional(),
    status: z.enum(["published", "fitted", "choice"]),
  }),
);

/** data/wording.json: the standing sentences of pages, by key. */
export const wordingFile = z.record(z.string(), text("a sentence"));

export type Stand = z.infer<typeof standsFile>[number];
export type Firearm = z.infer<typeof firearmsFile>[number];
export type Caution = z.infer<typeof cautionsFile>[number];
export type EmergencyTexts = z.infer<typeof emergencyFile>;
export type ModelRow = z.infer<typeof modelFile>[number];
