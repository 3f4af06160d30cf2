import { z } from "zod";

/**
 * Building blocks of all content schemas. Each carries a description that says what is expected, with unit and range: it
 * is shown to authors in problems and by editors through the JSON Schema files. Nothing is coerced.
 */

export const ID_PATTERN = /^[a-z0-9]+(-[a-z0-9]+)*$/;
export const LANE_ID_PATTERN = /^[A-Z]$/;

/** A JSON number between two ends, both included, with what it means. */
export const numberBetween = (low: number, high: number, what: string) =>
  z.number().min(low).max(high).describe(`a number, ${low} to ${high}, ${what}`);

export const integerBetween = (low: number, high: number, what: string) =>
  z.int().min(low).max(high).describe(`a whole number, ${low} to ${high}, ${what}`);

export const text = (what: string) => z.string().trim().min(1).max(2000).describe(`text, ${what}`);

export const id = z
  .string()
  .regex(ID_PATTERN)
  .max(40)
  .describe(
    'an id: small letters a to z, digits and single hyphens, at most 40 characters, such as "north-bench"',
  );

export const laneId = z.string().regex(LANE_ID_PATTERN).describe('a lane letter, "A" to "Z"');

/** Degrees clockwise from true north, 0 included, 360 not. */
export const bearingDeg = z
  .number()
  .min(0)
  .lt(360)
  .describe("a number, 0 ≤ bearing < 360, degrees clockwise from true north");

export const localDate = z.iso.date().describe('a calendar date that exists, "YYYY-MM-DD"');

export const monthDay = z
  .string()
  .regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/)
  .describe('a month and day, "MM-DD"');

/** A month or a day, for dates on labels that often give only the month. */
export const monthOrDate = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?$/)
  .describe('a month or a date, "YYYY-MM" or "YYYY-MM-DD"');

export const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/)
  .describe('a clock time on 24 hours, "HH:MM", in the zone of the area');

export const instant = z.iso
  .datetime({ offset: true })
  .describe('an instant with its offset, such as "2027-11-04T18:00:00-04:00"');

export const position = z
  .strictObject({
    lat: numberBetween(-90, 90, "decimal degrees north, WGS 84"),
    lon: z.number().min(-180).lt(180).describe("a number, -180 ≤ lon < 180, decimal degrees east, WGS 84"),
  })
  .describe("a position {lat, lon}, decimal degrees, WGS 84");

/** Where a fact comes from and when a person last looked. */
export const sourced = {
  source: text("where this fact comes from"),
  checkedOn: localDate,
  checkedBy: text("who checked it").optional(),
};

/** Names of measured fields of the same object that were guessed, not measured. */
export const guessed = z.array(z.string()).describe("names of fields beside it that were guessed").optional();

/** Runs a rule between fields of an object even when other fields of it are wrong, so that all problems show at once. */
export const besideOthers = {
  when: (payload: { value: unknown }): boolean => typeof payload.value === "object" && payload.value !== null,
};

export const schemaLink = { $schema: z.string().optional() };

export const ANCHORS = [
  "sunrise",
  "sunset",
  "civilDawn",
  "civilDusk",
  "nauticalDawn",
  "nauticalDusk",
  "solarNoon",
] as const;

const limits = { notBefore: clockTime.optional(), notAfter: clockTime.optional() };
const offsetMin = integerBetween(-720, 720, "minutes after the anchor, negative before it").optional();

const clockMoment = z.strictObject({
  anchor: z.literal("clock"),
  at: clockTime,
  clock: z.enum(["standard", "daylight", "as-in-force"]).optional(),
  ...limits,
});

/** One end of a legal window (safety rules): a sun anchor with an offset, a clock time, or "none" for all 24 hours. */
export const ruleMoment = z.discriminatedUnion("anchor", [
  z.strictObject({ anchor: z.enum(ANCHORS), offsetMin, ...limits }),
  clockMoment,
  z.strictObject({ anchor: z.literal("none") }),
]);

/** A moment of the day as sessions use it. */
export const moment = z.discriminatedUnion("anchor", [
  z.strictObject({
    anchor: z.enum([...ANCHORS, "firstLight", "lastLight", "shootingStart", "shootingEnd"]),
    offsetMin,
    ...limits,
  }),
  clockMoment,
]);

export type RuleMoment = z.infer<typeof ruleMoment>;
export type Moment = z.infer<typeof moment>;
