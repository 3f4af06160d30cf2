import { z } from "zod";
import { COMPASS_POINTS } from "../../geo/compassPoints.ts";

/**
 * pack.json: every number of an area's pages, machine-readable. Every key is always there; null means not known, does not
 * happen, or not in this edition, and `why` of the same object then says which, in a sentence.
 */

const why = z.record(z.string(), z.string().min(1));
const instantText = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/);
const dateText = z.string().regex(/^\d{4}-\d\d-\d\d$/);
const bearing = z.number().min(0).lt(360);
const share = z.number().min(0).max(1);
const positionOut = z.strictObject({ lat: z.number().min(-90).max(90), lon: z.number().min(-180).lt(180) });
const range = z.tuple([instantText, instantText]);

export const verdict = z.enum(["suits", "marginal", "avoid", "not assessed"]);
export const phase = z.enum(["falling", "turning", "rising"]);
export const windClass = z.enum(["calm", "light", "fresh"]);
export const edition = z.enum(["owner", "party", "member", "public"]);
export const checkResult = z.enum(["OK", "CAUTION", "STOP", "NOT CHECKED"]);
const windFrom = z.enum([...COMPASS_POINTS, "calm"]);

const shootingLight = z.strictObject({
  start: instantText.nullable(),
  end: instantText.nullable(),
  startLayer: z.string().nullable(),
  endLayer: z.string().nullable(),
  ruleIds: z.array(z.string()),
  status: z.enum(["confirmed", "unconfirmed", "lapsed", "not entered"]),
  why,
});

const moon = z.strictObject({
  illuminated: share,
  phaseName: z.enum([
    "new moon",
    "waxing crescent",
    "first quarter",
    "waxing gibbous",
    "full moon",
    "waning gibbous",
    "last quarter",
    "waning crescent",
  ]),
  rise: instantText.nullable(),
  set: instantText.nullable(),
  why,
});

const day = z.strictObject({
  localDate: dateText,
  utcOffset: z.string().regex(/^[+-]\d\d:\d\d$/),
  clockChangeAt: instantText.nullable(),
  nauticalDawn: instantText.nullable(),
  firstLight: instantText.nullable(),
  sunrise: instantText.nullable(),
  solarNoon: instantText.nullable(),
  sunset: instantText.nullable(),
  lastLight: instantText.nullable(),
  nauticalDusk: instantText.nullable(),
  dayLengthMin: z.number().nullable(),
  shootingLight,
  moon,
  why,
});

const check = z.strictObject({
  id: z.string().regex(/^C\d{1,2}$/),
  result: checkResult,
  text: z.string().min(1),
  subject: z.string().min(1),
  inputs: z.record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.null()])),
});

const span = z.strictObject({
  phase,
  from: instantText,
  to: instantText,
  fromRange: range.nullable(),
  toRange: range.nullable(),
  speedMps: z.number().nullable(),
  driftToDeg: bearing.nullable(),
  why,
});

const windRow = z.strictObject({
  windFrom,
  class: windClass,
  session: z.string(),
  phase,
  driftToDeg: bearing.nullable(),
  driftSpeedMps: z.number().nullable(),
  reachShare: share.nullable(),
  verdict,
  reason: z.string().min(1),
  modelVerdict: verdict,
  localNote: z.boolean(),
  why,
});

const sessionRow = z.strictObject({
  windFrom,
  class: windClass,
  session: z.string(),
  verdict,
  cleanShare: share.nullable(),
  sitFrom: instantText.nullable(),
  sitUntil: instantText.nullable(),
  reason: z.string().min(1),
  localNote: z.boolean(),
  why,
});

const site = z.strictObject({
  id: z.string(),
  number: z.int().min(1).max(99),
  name: z.string(),
  block: z.string().nullable(),
  position: positionOut,
  grid: z.string(),
  elevationM: z.number().nullable(),
  slopeDeg: z.number().nullable(),
  aspectDeg: bearing.nullable(),
  slopeSource: z.string().nullable(),
  declinationDeg: z.number().nullable(),
  horizon: z.array(z.number()).length(360).nullable(),
  checks: z.array(check),
  phases: z.array(z.strictObject({ localDate: dateText, spans: z.array(span) })).nullable(),
  windTable: z.array(windRow),
  sessionTable: z.array(sessionRow),
  airPath: z
    .strictObject({
      falling: z.array(positionOut),
      rising: z.array(positionOut),
      crosses: z.array(z.string()),
    })
    .nullable(),
  view: z
    .strictObject({
      rings: z.array(z.strictObject({ fromM: z.number(), toM: z.number(), visibleShare: share })),
      blindFromDeg: bearing.nullable(),
      blindToDeg: bearing.nullable(),
      why,
    })
    .nullable(),
  linesOfFire: z
    .array(
      z.strictObject({
        lane: z.string(),
        bearingDeg: bearing,
        ground: z.enum(["earth", "far", "none"]),
        beyondM: z.number().nullable(),
        angleDeg: z.number(),
        seenOnGround: z.boolean(),
        why,
      }),
    )
    .nullable(),
  noShoot: z
    .array(
      z.strictObject({
        fromDeg: bearing,
        toDeg: bearing,
        fromMagDeg: bearing.nullable(),
        toMagDeg: bearing.nullable(),
        distanceM: z.number().nullable(),
        featureId: z.string().nullable(),
        reason: z.string(),
        why,
      }),
    )
    .nullable(),
  walkIns: z.array(
    z.strictObject({
      id: z.string(),
      lengthM: z.number().nullable(),
      climbM: z.number().nullable(),
      fallM: z.number().nullable(),
      minutes: z.tuple([z.number(), z.number()]).nullable(),
      minutesSource: z.string().nullable(),
      crossings: z.number().nullable(),
      why,
    }),
  ),
  activity: z
    .strictObject({
      visits: z.number(),
      from: dateText,
      to: dateText,
      lastVisit: instantText,
      sessions: z.array(z.strictObject({ session: z.string(), share, low: share, high: share })),
    })
    .nullable(),
  lastSatOn: dateText.nullable(),
  why,
});

const coverageRow = z.strictObject({
  session: z.string(),
  windFrom,
  class: windClass,
  suits: z.array(z.string()),
  gap: z.boolean(),
  blowsShare: share.nullable(),
  why,
});

const rankingRow = z.strictObject({
  site: z.string(),
  verdict,
  cleanShare: share.nullable(),
  sitFrom: instantText.nullable(),
  sitUntil: instantText.nullable(),
  walkIn: z.string().nullable(),
  leaveAt: instantText.nullable(),
  reason: z.string(),
  why,
});

/** What a schedule tells, in the order it is listed. */
export const SCHEDULE_STEPS = [
  "wake",
  "leave",
  "at tree",
  "aloft",
  "settled",
  "first light",
  "shooting start",
  "sit until",
  "shooting end",
  "start down",
  "out",
  "ask",
  "call",
] as const;

const tripSession = z.strictObject({
  session: z.string(),
  from: instantText.nullable(),
  to: instantText.nullable(),
  shootingLight,
  forecast: z
    .strictObject({
      windFromDeg: z.number().min(0).lt(360).nullable(),
      windSpeedMps: z.number().nullable(),
      gustMps: z.number().nullable(),
      cloudShare: share.nullable(),
      tempC: z.number().nullable(),
      source: z.string(),
      issuedAt: instantText,
      old: z.boolean(),
      why,
    })
    .nullable(),
  ranking: z.array(rankingRow).nullable(),
  stopped: z.array(z.strictObject({ site: z.string(), check: z.string(), reason: z.string() })),
  assignment: z.array(
    z.strictObject({ hunter: z.string(), site: z.string(), by: z.string(), reason: z.string() }),
  ),
  schedule: z.array(
    z.strictObject({
      what: z.enum(SCHEDULE_STEPS),
      at: instantText,
      about: z.boolean(),
      who: z.array(z.string()),
      where: z.string().nullable(),
    }),
  ),
  why,
});

const trip = z.strictObject({
  id: z.string(),
  from: dateText,
  to: dateText,
  days: z.array(
    z.strictObject({ localDate: dateText, checks: z.array(check), sessions: z.array(tripSession) }),
  ),
});

export const packFile = z.strictObject({
  schemaVersion: z.literal(1),
  generator: z.string(),
  builtAt: instantText,
  asOf: instantText,
  edition,
  notValidAfter: dateText,
  year: z.int(),
  tableDate: dateText,
  tzVersion: z.string(),
  why,
  area: z.strictObject({
    id: z.string(),
    name: z.string(),
    centre: positionOut,
    timezone: z.string(),
    locale: z.string(),
    units: z.enum(["metric", "us"]),
    elevationM: z.number().nullable(),
    terrain: z
      .strictObject({
        format: z.string(),
        zone: z.string(),
        cellSizeM: z.number(),
        sourceCellM: z.number(),
        rows: z.int(),
        columns: z.int(),
        filledCells: z.int(),
        voidCells: z.int(),
      })
      .nullable(),
    magnetic: z
      .strictObject({
        declinationDeg: z.number(),
        yearlyChangeDeg: z.number().nullable(),
        date: dateText,
        model: z.string(),
      })
      .nullable(),
    why,
  }),
  days: z.array(day),
  sites: z.array(site).nullable(),
  coverage: z.array(coverageRow).nullable(),
  trips: z.array(trip).nullable(),
  notChecked: z.array(z.strictObject({ check: z.string(), subject: z.string(), text: z.string() })),
});

export type PackFile = z.infer<typeof packFile>;
export type PackDay = PackFile["days"][number];
export type PackShootingLight = PackDay["shootingLight"];
export type PackSite = NonNullable<PackFile["sites"]>[number];
export type PackCheck = PackSite["checks"][number];
export type PackTrip = NonNullable<PackFile["trips"]>[number];
export type PackCoverageRow = NonNullable<PackFile["coverage"]>[number];
