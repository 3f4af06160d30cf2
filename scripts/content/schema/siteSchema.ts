import { z } from "zod";
import { COMPASS_POINTS } from "../../geo/compassPoints.ts";
import { photo } from "./photoSchema.ts";
import {
  bearingDeg,
  besideOthers,
  clockTime,
  guessed,
  id,
  integerBetween,
  laneId,
  localDate,
  numberBetween,
  position,
  schemaLink,
  text,
} from "./primitives.ts";

export const COVERS = ["open", "edge", "timber", "dense timber"] as const;
export const OVERLOOKS = [
  "feeding",
  "trail junction",
  "wallow",
  "crossing",
  "bedding edge",
  "other",
] as const;
export const PHASES = ["falling", "turning", "rising"] as const;
export const WIND_CLASSES = ["calm", "light", "fresh"] as const;
export const TREE_TICKS = [
  "dead",
  "deadLimbs",
  "hollow",
  "fungus",
  "canker",
  "roots",
  "lean",
  "bark",
  "twinStem",
  "nestOrWires",
] as const;

const tick = z
  .enum(["clear", "fault"])
  .nullable()
  .describe('"clear", "fault", or null when nobody has looked');

const tree = z
  .strictObject({
    species: text("species of the tree"),
    girthMm: numberBetween(100, 6000, "millimetres round the trunk, above the root flare").optional(),
    diameterMm: numberBetween(30, 2000, "millimetres through the trunk, above the root flare").optional(),
    measuredAtHeightM: numberBetween(0.1, 3, "metres above ground").default(1.3),
    girthAtPlatformMm: numberBetween(100, 6000, "millimetres round the trunk at the platform").optional(),
    condition: z.strictObject({
      dead: tick,
      deadLimbs: tick,
      hollow: tick,
      fungus: tick,
      canker: tick,
      roots: tick,
      lean: tick,
      bark: tick,
      twinStem: tick,
      nestOrWires: tick,
      leanDeg: numberBetween(0, 45, "degrees from upright").nullable().optional(),
      checkedOn: localDate.nullable(),
      checkedBy: text("who looked").nullable(),
    }),
    guessed,
  })
  .refine((t) => (t.girthMm === undefined) !== (t.diameterMm === undefined), {
    ...besideOthers,
    path: ["girthMm"],
    message: "give girthMm or diameterMm, one of the two",
  });

const approach = z
  .strictObject({
    id,
    name: text('what it is called in reasons, such as "the bench trail"').optional(),
    bearingsDeg: z
      .tuple([bearingDeg, bearingDeg])
      .describe("[from, to] in degrees, clockwise from the first to the second")
      .optional(),
    distanceM: z
      .tuple([numberBetween(0, 2000, "metres"), numberBetween(1, 2000, "metres")])
      .describe("[nearest, farthest] in metres"),
    use: numberBetween(0, 1, "share of the deer that come this way"),
    along: id.optional(),
  })
  .refine((a) => a.bearingsDeg !== undefined || a.along !== undefined, {
    ...besideOthers,
    path: ["bearingsDeg"],
    message: "give bearingsDeg, or along with a map feature",
  });

const walkIn = z
  .strictObject({
    id,
    name: text("name of the way"),
    from: id.describe("id of the camp or parking where it starts"),
    along: z
      .union([id, z.array(position).min(2)])
      .describe("id of a map feature, or a list of positions")
      .optional(),
    offTrack: numberBetween(0, 1, "share walked off the track").default(0),
    minutes: z
      .tuple([integerBetween(1, 1440, "minutes"), integerBetween(1, 1440, "minutes")])
      .describe("[least, most] minutes")
      .optional(),
  })
  .refine((w) => w.along !== undefined || w.minutes !== undefined, {
    ...besideOthers,
    path: ["along"],
    message: "give along, or minutes",
  });

const localNote = z.strictObject({
  session: id,
  phase: z.enum(PHASES).optional(),
  windFrom: z.enum([...COMPASS_POINTS, "calm"]).optional(),
  class: z.enum(WIND_CLASSES).optional(),
  verdict: z.enum(["suits", "marginal", "avoid", "not assessed"]).optional(),
  turnsAt: clockTime.optional(),
  note: text("what was seen"),
  seenBy: text("who saw it"),
  seenOn: localDate,
});

/** sites/<site>.json: one prepared place with a tree and a reason to sit there. */
export const siteFile = z.strictObject({
  ...schemaLink,
  number: integerBetween(1, 99, "the permanent number of the site"),
  name: text("name of the site"),
  block: id.optional(),
  overlooks: z.enum(OVERLOOKS),
  overlooksName: text("what it overlooks, in words").optional(),
  position,
  grid: text('grid reference as read in the field, such as "59G LL 15993 11006"').optional(),
  tree: tree.optional(),
  stand: z
    .strictObject({
      standId: id,
      labelled: z.boolean().nullable(),
      placedOn: localDate.nullable(),
      removeBy: localDate.nullable(),
    })
    .optional(),
  platformHeightM: numberBetween(0, 30, "metres above ground; 0 is a ground seat"),
  facingDeg: bearingDeg.nullable(),
  seated: z.boolean().default(true),
  heightReason: text("why the platform is higher than usual").optional(),
  cover: z.enum(COVERS),
  slope: z
    .strictObject({
      slopeDeg: numberBetween(0, 60, "degrees of steepness"),
      aspectDeg: bearingDeg.nullable(),
      reason: text("how it was measured"),
    })
    .refine((s) => s.aspectDeg !== null || s.slopeDeg < 3, {
      ...besideOthers,
      path: ["aspectDeg"],
      message: "aspectDeg is needed from 3 degrees of slope up",
    })
    .optional(),
  approaches: z.record(id, z.array(approach)).describe("approaches by session id").default({}),
  lanes: z
    .array(
      z.strictObject({
        id: laneId,
        bearingDeg,
        widthDeg: numberBetween(1, 180, "degrees wide"),
        maxRangeM: numberBetween(1, 1000, "metres"),
        coverHeightM: numberBetween(0, 20, "metres").optional(),
        seenOnGround: z.strictObject({ by: text("who looked in daylight"), on: localDate }).nullable(),
      }),
    )
    .default([]),
  walkIns: z.array(walkIn).default([]),
  rest: z.strictObject({ afterSitDays: integerBetween(0, 60, "days") }).optional(),
  localNotes: z.array(localNote).default([]),
  shareable: z.boolean().default(true),
  privateNotes: text("notes for the owner alone").optional(),
  photos: z.array(photo).default([]),
});

export type SiteFile = z.infer<typeof siteFile>;
export type LocalNote = z.infer<typeof localNote>;
export type ApproachFile = z.infer<typeof approach>;
export type WalkInFile = z.infer<typeof walkIn>;
export type Cover = (typeof COVERS)[number];
