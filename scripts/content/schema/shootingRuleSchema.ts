import { z } from "zod";
import { id, integerBetween, localDate, monthDay, position, ruleMoment, text } from "./primitives.ts";

const anyOr = (what: string) => z.array(text(what)).min(1).describe(`a list of ${what}, or ["any"]`);

/** One rule of legal shooting light, in the words of the authority that made it. Which rules apply, and how, is decided in light/. */
export const shootingRule = z.strictObject({
  id,
  jurisdiction: text("who made the rule and for which ground"),
  source: z.strictObject({
    citation: text("where the rule stands"),
    link: z.string().optional(),
    checkedOn: localDate,
    checkedBy: text("who checked it").optional(),
    status: z.enum(["confirmed", "unconfirmed", "lapsed"]),
  }),
  valid: z.strictObject({ from: localDate, to: localDate }),
  applies: z.strictObject({
    species: anyOr("species"),
    class: anyOr("sex or age classes").optional(),
    method: anyOr('weapons, such as "rifle" or "bow"'),
    land: z.array(z.enum(["public", "private", "any"])).min(1),
    zones: anyOr("management units").optional(),
    seasons: z.array(z.strictObject({ from: monthDay, to: monthDay })).optional(),
    closedWeekdays: z.array(z.enum(["mon", "tue", "wed", "thu", "fri", "sat", "sun"])).optional(),
    closedDates: z.array(localDate).optional(),
  }),
  reading: z
    .enum(["allowed", "forbidden"])
    .describe(
      '"allowed" when the windows state the open hours, "forbidden" when they state the closed night',
    ),
  reference: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("site") }),
    z.strictObject({ kind: z.literal("place"), name: text("name of the place"), ...position.shape }),
    z.strictObject({
      kind: z.literal("basePlus"),
      place: z.strictObject({ name: text("name of the base place"), ...position.shape }),
      minutes: integerBetween(-240, 240, "minutes added to the times of the base place"),
    }),
    z.strictObject({ kind: z.literal("table"), file: text("CSV file in the folder of the area") }),
  ]),
  windows: z.array(z.strictObject({ start: ruleMoment, end: ruleMoment })),
  rounding: z.enum(["safe", "table"]).default("safe"),
  exceptionsText: text("exceptions in words").optional(),
});

export type ShootingRule = z.infer<typeof shootingRule>;

export const SHOOTING_LAYERS = ["law", "landRule", "clubRule", "ownRule"] as const;
export type ShootingLayer = (typeof SHOOTING_LAYERS)[number];

export const shootingLayers = z.strictObject({
  law: z.array(shootingRule).optional(),
  landRule: z.array(shootingRule).optional(),
  clubRule: z.array(shootingRule).optional(),
  ownRule: z.array(shootingRule).optional(),
});

export type ShootingLayers = z.infer<typeof shootingLayers>;
