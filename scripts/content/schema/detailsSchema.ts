import { z } from "zod";
import { tripDetails } from "./tripDetailsSchema.ts";

/**
 * details.json, beside pack.json: what pages show beyond the shape of pack.json, so that every printed number can be read
 * by a program. Instants, bearings and null follow the rules of pack.json.
 */

const instantText = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/);
const dateText = z.string().regex(/^\d{4}-\d\d-\d\d$/);
const why = z.record(z.string(), z.string().min(1));
const range = z.tuple([instantText, instantText]);

const bearing = z.number().min(0).lt(360);
const closedSpan = z.strictObject({ fromDeg: bearing, toDeg: bearing });

/** Lanes and closed bearings; degrees counted by the ground behind each range, see `linesOfFire` of pack.json. */
const siteShooting = z.strictObject({
  /** the weapon that the card is made for; null = not known */
  weapon: z
    .strictObject({
      id: z.string(),
      weaponClass: z.string(),
      dangerM: z.number(),
      laneLimitM: z.number(),
    })
    .nullable(),
  gridErrorM: z.number().nullable(),
  lanes: z
    .array(
      z.strictObject({
        lane: z.string(),
        /** as far as it is judged; isCut when the lane itself is longer */
        lengthM: z.number(),
        isCut: z.boolean(),
        ranges: z.array(
          z.strictObject({
            rangeM: z.number(),
            earth: z.int(),
            far: z.int(),
            none: z.int(),
            /** the farthest ground behind; null when a degree has none */
            beyondM: z.number().nullable(),
            /** degrees on which ground stands before the animal */
            hidden: z.int(),
          }),
        ),
      }),
    )
    .nullable(),
  /** all reasons together, for drawing */
  closed: z.array(closedSpan).nullable(),
  /** far roads and boundaries on bearings that stay open because earth stands behind and was seen */
  leftToBackstop: z
    .array(
      closedSpan.extend({
        fromMagDeg: z.number().nullable(),
        toMagDeg: z.number().nullable(),
        distanceM: z.number().nullable(),
        featureId: z.string().nullable(),
        reason: z.string(),
        why,
      }),
    )
    .nullable(),
  /** closed only while somebody is there; the id of a walk-in is "site/walk-in" */
  whileInUse: z
    .array(
      z.strictObject({
        kind: z.enum(["site", "walk-in", "feature"]),
        id: z.string(),
        fromDeg: bearing,
        toDeg: bearing,
        distanceM: z.number(),
      }),
    )
    .nullable(),
});

const siteDetails = z.strictObject({
  id: z.string(),
  landform: z.enum(["slope", "crest", "floor", "flat"]).nullable(),
  /** how far the elevation grid can be trusted for this site's slope air */
  groundTrust: z.enum(["trusted", "coarse", "too coarse", "owner", "none"]),
  localSlopeDeg: z.number().nullable(),
  localAspectDeg: z.number().nullable(),
  /** least distance from the site to the edge of the grid, metres */
  gridReachM: z.number().nullable(),
  /** greatest upwind slope for the 16 winds from N clockwise, degrees */
  sxDeg: z.array(z.number().nullable()).length(16).nullable(),
  sun: z.array(
    z.strictObject({
      localDate: dateText,
      /** first and last minute the sun shines on the ground of the slope */
      reachesAt: instantText.nullable(),
      leavesAt: instantText.nullable(),
      usableFrom: instantText.nullable(),
      usableUntil: instantText.nullable(),
      why,
    }),
  ),
  /** turns that fewer than 14 of the 17 members of the ensemble have */
  doubtfulTurns: z.array(z.strictObject({ localDate: dateText, at: instantText })),
  sitRanges: z.array(
    z.strictObject({
      windFrom: z.string(),
      class: z.enum(["calm", "light", "fresh"]),
      session: z.string(),
      sitFromRange: range.nullable(),
      sitUntilRange: range.nullable(),
    }),
  ),
  tree: z
    .strictObject({
      diameterAtMeasureMm: z.number(),
      diameterAtPlatformMm: z.tuple([z.number(), z.number()]),
      taperMmPerM: z.tuple([z.number(), z.number()]).nullable(),
    })
    .nullable(),
  shooting: siteShooting,
  /** which features the falling and the rising air passes; null without an air path */
  airPath: z
    .strictObject({
      fallingCrosses: z.array(z.string()),
      risingCrosses: z.array(z.string()),
      /** distance along the falling way from which the ground is too flat to be sure of it */
      flatFromM: z.number().nullable(),
      /** why there is no rising way */
      risingWhy: z.string().nullable(),
    })
    .nullable(),
});

export const detailsFile = z.strictObject({
  schemaVersion: z.literal(1),
  area: z.string(),
  /** the sessions on tableDate */
  sessions: z.array(
    z.strictObject({ id: z.string(), from: instantText.nullable(), to: instantText.nullable(), why }),
  ),
  /** events of days that are printed with "about", since the sun only grazes the angle */
  aboutEvents: z.array(z.strictObject({ localDate: dateText, events: z.array(z.string()) })),
  /** shooting light notes to print beside the times, by date */
  shootingNotes: z.array(z.strictObject({ localDate: dateText, notes: z.array(z.string()) })),
  /** the check of the helicopter spot; null when none is named */
  helicopterSpot: z
    .strictObject({
      id: z.literal("C17"),
      result: z.enum(["OK", "CAUTION", "STOP", "NOT CHECKED"]),
      text: z.string().min(1),
      subject: z.string(),
      inputs: z.record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.null()])),
    })
    .nullable(),
  /** area-wide gaps in words */
  gapSentences: z.array(z.string()),
  sites: z.array(siteDetails).nullable(),
  /** what the pages of trip days show; null when no trip is packed */
  trips: z.array(tripDetails).nullable(),
});

export type DetailsFile = z.infer<typeof detailsFile>;
export type SiteDetails = z.infer<typeof siteDetails>;
