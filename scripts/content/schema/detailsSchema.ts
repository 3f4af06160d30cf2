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
  /** area-wide gaps in words */
  gapSentences: z.array(z.string()),
  sites: z.array(siteDetails).nullable(),
  /** what the pages of trip days show; null when no trip is packed */
  trips: z.array(tripDetails).nullable(),
});

export type DetailsFile = z.infer<typeof detailsFile>;
export type SiteDetails = z.infer<typeof siteDetails>;
