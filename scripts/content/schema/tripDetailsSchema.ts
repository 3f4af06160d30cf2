import { z } from "zod";

/** Part of details.json: what the pages of trip days show beyond pack.json. Rows stand in the order of pack.json. */

const instantText = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/);
const dateText = z.string().regex(/^\d{4}-\d\d-\d\d$/);
const why = z.record(z.string(), z.string().min(1));
const range = z.tuple([instantText, instantText]).nullable();
const share = z.number().min(0).max(1).nullable();
const minutes = z.number().min(0).nullable();
const verdict = z.enum(["suits", "marginal", "avoid", "not assessed"]);

/** One row of the trip's forecast in metric units; it holds until the next of its day. Null is not known. */
const hour = z.strictObject({
  at: instantText,
  wind: z.enum(["from", "calm", "variable", "not known"]),
  windFromDeg: z.number().min(0).lt(360).nullable(),
  windSpeedMps: z.number().nullable(),
  gustMps: z.number().nullable(),
  cloudShare: share,
  tempC: z.number().nullable(),
  rainMmPerH: z.number().nullable(),
  thunder: z.boolean().nullable(),
  freezingRain: z.boolean().nullable(),
  issuedAt: instantText,
});

/** A site on the day, under the day's forecast (clear sky without one); barred sites are left out. */
const siteOfDay = z.strictObject({
  site: z.string(),
  /** first and last minute the sun shines on the ground of the slope */
  sunReachesAt: instantText.nullable(),
  sunLeavesAt: instantText.nullable(),
  /** light enough to see by under its cover, an estimate */
  usableFrom: instantText.nullable(),
  usableUntil: instantText.nullable(),
  /** spans in which the air turns, on the model's 5 min steps; local notes do not move them here */
  turns: z.array(z.strictObject({ from: instantText, to: instantText, fromRange: range, toRange: range })),
  why,
});

/** One way to a ranked site: minutes [quick, slow] loaded and by lamp, and how dark both ways are. */
const walk = z.strictObject({
  walkIn: z.string(),
  /** camp or parking where it starts */
  from: z.string(),
  inMin: z.tuple([z.number(), z.number()]).nullable(),
  /** the quiet last stretch, on top of `inMin` */
  quietMin: z.number(),
  outMin: z.tuple([z.number(), z.number()]).nullable(),
  leaveAt: instantText.nullable(),
  atTreeAt: instantText,
  startDownAt: instantText,
  outAt: instantText.nullable(),
  darkInMin: minutes,
  /** minutes of night under a moon that lights the way, not in `darkInMin` */
  moonlitInMin: minutes,
  moonUpIn: z.boolean().nullable(),
  darkOutMin: minutes,
  moonlitOutMin: minutes,
  moonUpOut: z.boolean().nullable(),
  /** why minutes are null; null when they are known */
  why: z.string().min(1).nullable(),
});

const lookUpRow = z.strictObject({
  site: z.string(),
  windFrom: z.string(),
  class: z.enum(["calm", "light", "fresh"]),
  verdict,
  cleanShare: share,
  sitFrom: instantText.nullable(),
  sitUntil: instantText.nullable(),
  sitFromRange: range,
  sitUntilRange: range,
  reason: z.string().min(1),
  localNote: z.boolean(),
});

const session = z.strictObject({
  session: z.string(),
  /** the ranked sites, in the order of the ranking */
  sites: z.array(
    z.strictObject({
      site: z.string(),
      sitFromRange: range,
      sitUntilRange: range,
      /** a local note had a say in verdict or turn */
      localNote: z.boolean(),
      walks: z.array(walk),
    }),
  ),
  /** the owner's sits with the walk-in they take; null without any */
  sits: z.array(
    z.strictObject({
      hunter: z.string(),
      site: z.string(),
      walkIn: z.string().nullable(),
      /** by a check: such a sit has no schedule */
      stopped: z.boolean(),
    }),
  ),
  /** the wind table of the very day, for a session without a forecast; null with one, or without the session */
  lookUp: z.array(lookUpRow).nullable(),
});

export const tripDetails = z.strictObject({
  id: z.string(),
  days: z.array(
    z.strictObject({
      localDate: dateText,
      /** sentences to print beside the legal hours of the trip's hunt */
      notes: z.array(z.string()),
      hours: z.array(hour),
      sites: z.array(siteOfDay),
      sessions: z.array(session),
    }),
  ),
});
