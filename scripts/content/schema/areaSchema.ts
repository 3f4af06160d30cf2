import { z } from "zod";
import { photo } from "./photoSchema.ts";
import {
  id,
  instant,
  integerBetween,
  localDate,
  moment,
  numberBetween,
  position,
  schemaLink,
  sourced,
  text,
} from "./primitives.ts";
import { shootingLayers } from "./shootingRuleSchema.ts";

export const LOCALES = ["en-GB", "en-US", "en-NZ", "en-AU", "en-CA", "en-IE", "en-ZA"] as const;
export const FIREARM_CLASSES = ["rifle", "slug", "shotgun", "muzzleloader", "bow", "crossbow"] as const;

const fact = z.strictObject({ text: text("the rule in words"), ...sourced });

const minutes = integerBetween(0, 600, "minutes");

/** area.json: the facts of one hunting area. */
export const areaFile = z.strictObject({
  ...schemaLink,
  name: text("name of the area"),
  summary: text("one or two sentences about the area"),
  demonstration: z
    .boolean()
    .describe("true when place, rules and contacts are invented; every page then says so")
    .optional(),
  centre: position,
  timezone: text('an IANA time zone, such as "Pacific/Auckland"'),
  locale: z.enum(LOCALES).optional(),
  units: z.enum(["metric", "us"]).default("metric"),
  paper: z.enum(["A4", "Letter", "A5"]).optional(),
  elevationM: numberBetween(
    -430,
    8850,
    "metres above sea level, needed when there is no terrain file",
  ).optional(),
  firstLightSunDeg: numberBetween(-12, -1, "sun altitude that defines first and last light").default(-6),
  season: z
    .array(
      z.strictObject({
        species: text("species"),
        from: localDate,
        to: localDate,
        method: text('weapon, such as "rifle"'),
        land: z.enum(["public", "private"]),
        ...sourced,
      }),
    )
    .default([]),
  shootingLight: shootingLayers.default({}),
  setbacks: z
    .array(
      z.strictObject({
        featureKind: text('kind of feature, such as "building"'),
        weaponClass: z.enum(FIREARM_CLASSES),
        distanceM: numberBetween(0, 10000, "metres"),
        asWritten: text("the distance as the rule writes it"),
        waiver: z.enum(["none", "verbal", "written"]),
        ...sourced,
      }),
    )
    .default([]),
  permission: z
    .array(
      z.strictObject({
        id,
        kind: text('kind of permission, such as "permit" or "landholder"'),
        block: id.optional(),
        holder: text("who gave it").optional(),
        reference: text("number of the permit or letter").optional(),
        conditions: z.array(text("one condition")).default([]),
        from: localDate,
        to: localDate,
        withdrawn: z.boolean().optional(),
        ...sourced,
      }),
    )
    .default([]),
  followUpRule: fact.optional(),
  colourRule: fact.optional(),
  standRules: fact
    .extend({
      from: localDate.optional(),
      removeBy: localDate.optional(),
      labelRequired: z.boolean().optional(),
    })
    .optional(),
  magnetic: z
    .strictObject({
      declinationDeg: numberBetween(-180, 180, "degrees, east positive"),
      date: localDate,
      source: text("source"),
    })
    .optional(),
  emergency: z
    .strictObject({
      number: text("number to call; there is no default").optional(),
      nearestHospital: text("nearest hospital").optional(),
      nearestRoadAccess: position.optional(),
      helicopterSpot: z
        .strictObject({
          feature: id,
          sizeM: numberBetween(5, 500, "metres").optional(),
          noWires: z.boolean().optional(),
        })
        .optional(),
      radio: text("radio channel").optional(),
      coverage: text("where a phone works").optional(),
      officer: z.strictObject({ name: text("name"), phone: text("phone") }).optional(),
      contacts: z
        .array(
          z.strictObject({
            name: text("name"),
            phone: text("phone").optional(),
            role: text("role").optional(),
          }),
        )
        .optional(),
    })
    .default({}),
  hazards: z
    .array(
      z.strictObject({
        name: text("the hazard"),
        where: text("where it is"),
        season: text("when it matters").optional(),
        advice: text("what to do"),
      }),
    )
    .default([]),
  camps: z
    .array(
      z.strictObject({
        id,
        name: text("name"),
        position,
        places: integerBetween(1, 200, "places").optional(),
      }),
    )
    .default([]),
  parkings: z
    .array(
      z.strictObject({
        id,
        name: text("name"),
        position,
        places: integerBetween(1, 200, "vehicles").optional(),
      }),
    )
    .default([]),
  blocks: z.array(z.strictObject({ id, name: text("name"), centre: position })).default([]),
  sessions: z
    .array(z.strictObject({ id, from: moment, to: moment }))
    .min(1)
    .max(4)
    .optional(),
  seatBeforeMin: z.record(z.string(), minutes).optional(),
  settleMin: minutes.optional(),
  setUpMin: minutes.optional(),
  wakeMin: minutes.optional(),
  headTorch: text("which lamp is carried").optional(),
  asOf: instant.optional(),
  notValidAfter: localDate.optional(),
  photos: z.array(photo).default([]),
});

export type AreaFile = z.infer<typeof areaFile>;
