import { z } from "zod";
import { COMPASS_POINTS } from "../../geo/compassPoints.ts";
import { photo } from "./photoSchema.ts";
import {
  besideOthers,
  clockTime,
  guessed,
  id,
  instant,
  integerBetween,
  localDate,
  monthOrDate,
  numberBetween,
  schemaLink,
  text,
} from "./primitives.ts";

const kg = numberBetween(0, 250, "kilograms").nullable();

/** One row of a forecast, in trip.json or as a line of its CSV file. */
export const forecastRow = z
  .strictObject({
    localDate,
    session: id.optional(),
    hour: clockTime.optional(),
    windFrom: z
      .union([
        numberBetween(0, 360, "degrees the wind blows from"),
        z.enum([...COMPASS_POINTS, "calm", "variable"]),
      ])
      .nullable()
      .describe('degrees, one of the 16 points, "calm" or "variable": where the wind blows from'),
    windSpeed: numberBetween(0, 400, "in the unit of the forecast").nullable(),
    gust: numberBetween(0, 500, "in the unit of the forecast").nullable(),
    cloudShare: numberBetween(0, 1, "share of the sky under cloud").nullable(),
    temp: numberBetween(-80, 140, "in the unit of the forecast").nullable(),
    rain: numberBetween(0, 500, "in the unit of the forecast, an hour").nullable().optional(),
    thunder: z.boolean().nullable().optional(),
    freezingRain: z.boolean().nullable().optional(),
    issuedAt: instant.optional(),
  })
  .refine((r) => (r.session === undefined) !== (r.hour === undefined), {
    ...besideOthers,
    path: ["hour"],
    message: "give hour or session, one of the two",
  });

const forecast = z.strictObject({
  source: text("who made the forecast"),
  issuedAt: instant,
  units: z.strictObject({
    speed: z.enum(["mps", "kmh", "mph", "kn"]),
    temp: z.enum(["C", "F"]),
    rain: z.enum(["mm", "in"]),
  }),
  rows: z.array(forecastRow).default([]),
});

/** trips/<trip>.json: one outing, its people, their kit, the sits the owner chose and the forecast. */
export const tripFile = z.strictObject({
  ...schemaLink,
  name: text("name of the trip"),
  from: localDate,
  to: localDate,
  species: text("species").optional(),
  method: text("weapon").optional(),
  land: z.enum(["public", "private"]).optional(),
  hunters: z
    .array(
      z.strictObject({
        id,
        name: text("name"),
        standId: id.nullable(),
        firearmId: id.nullable(),
        loadKg: z.strictObject({ body: kg, clothing: kg, harness: kg, pack: kg, weapon: kg, water: kg }),
        handed: z.enum(["right", "left"]).nullable(),
        newcomer: z.boolean().default(false),
        harness: z.strictObject({
          madeOn: monthOrDate.nullable(),
          replaceBy: monthOrDate.nullable(),
          fallen: z.boolean().nullable(),
        }),
        contact: text("how to reach the hunter's own contact").optional(),
        medical: text("only with consent").optional(),
        guessed,
      }),
    )
    .min(1),
  base: id.optional(),
  vehicle: z
    .strictObject({ text: text("which vehicle, where"), plate: text("number plate").optional() })
    .optional(),
  allowedSites: z.array(id).optional(),
  sits: z
    .array(z.strictObject({ localDate, session: id, hunter: id, site: id, walkIn: id.optional() }))
    .default([]),
  askAfterMin: integerBetween(0, 1440, "minutes after the time out").optional(),
  callAfterMin: integerBetween(0, 2880, "minutes after the time out").optional(),
  checkIn: text("how and when to check in").optional(),
  notes: text("notes").optional(),
  forecast: forecast.optional(),
  photos: z.array(photo).default([]),
});

export type TripFile = z.infer<typeof tripFile>;
export type ForecastFile = z.infer<typeof forecast>;
export type ForecastRow = z.infer<typeof forecastRow>;
