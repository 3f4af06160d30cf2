import { packContext } from "../../../scripts/briefing/composePack.ts";
import { composeSite } from "../../../scripts/briefing/composeSite.ts";
import { composeTrips } from "../../../scripts/briefing/trips/composeTrips.ts";
import type { DetailsFile } from "../../../scripts/content/schema/detailsSchema.ts";
import type { PackTrip } from "../../../scripts/content/schema/packSchema.ts";
import { OPTIONS } from "../composedAreas.ts";
import { SHARED, SLOPING_SITE, type SmallArea, smallArea } from "../smallArea.ts";

export type TripDay = PackTrip["days"][number];
export type TripSession = TripDay["sessions"][number];
export type ScheduleRow = TripSession["schedule"][number];

/** A made-up rule of law: half an hour either side of the sun, for any hunt. */
export const HALF_HOUR_RULE = {
  id: "half-hour",
  jurisdiction: "made up",
  source: { citation: "made up", checkedOn: "2026-01-05", status: "confirmed" },
  valid: { from: "2025-01-01", to: "2027-12-31" },
  applies: { species: ["any"], method: ["any"], land: ["any"] },
  reading: "allowed",
  reference: { kind: "site" },
  windows: [{ start: { anchor: "sunrise", offsetMin: -30 }, end: { anchor: "sunset", offsetMin: 30 } }],
};

const SEASON = {
  species: "red deer",
  from: "2025-01-01",
  to: "2027-12-31",
  method: "rifle",
  land: "public",
  source: "made up",
  checkedOn: "2026-01-05",
};

/** Facts of an area in which everything of a trip day can be known. */
export const FACTS = {
  season: [SEASON],
  shootingLight: { law: [HALF_HOUR_RULE] },
  camps: [{ id: "hut", name: "Hut", position: { lat: -45.032, lon: 168.66 } }],
};

const CLEAR = Object.fromEntries(
  "dead deadLimbs hollow fungus canker roots lean bark twinStem nestOrWires"
    .split(" ")
    .map((tick) => [tick, "clear"]),
);

/** A site with a sound tree, a walk of 40 to 60 minutes from the hut, and an approach that a south-east wind keeps clear of. */
export const SOUND_SITE = {
  ...SLOPING_SITE,
  tree: {
    species: "beech",
    girthMm: 950,
    condition: { ...CLEAR, leanDeg: 1, checkedOn: "2026-02-01", checkedBy: "A" },
  },
  walkIns: [{ id: "path", name: "Path", from: "hut", minutes: [40, 60] }],
};

/** Somebody of whom everything is known. */
export const HUNTER = {
  id: "a",
  name: "A",
  standId: "stand-broad",
  firearmId: "rifle",
  loadKg: { body: 80, clothing: 4, harness: 1.5, pack: 3, weapon: 4, water: 1.5 },
  handed: "right",
  harness: { madeOn: "2024-01", replaceBy: "2029-01", fallen: false },
};

/** A forecast row for every hour from 00:00 to 23:00 of a day, one wind all day; what is given wins. */
export function hoursOf(
  localDate: string,
  row: Record<string, unknown> = {},
  from = 0,
): Record<string, unknown>[] {
  return Array.from({ length: 24 - from }, (_, n) => ({
    localDate,
    hour: `${String(from + n).padStart(2, "0")}:00`,
    ...{ windFrom: "SE", windSpeed: 5, gust: 8, cloudShare: 0, temp: 8, thunder: false, freezingRain: false },
    ...row,
  }));
}

export function forecast(issuedAt: string, rows: Record<string, unknown>[]): Record<string, unknown> {
  return { source: "made up", issuedAt, units: { speed: "mps", temp: "C", rain: "mm" }, rows };
}

/** Trips of a small area; `area` may replace its facts and sites. */
export function smallTrips(trips: Record<string, unknown>[], area: SmallArea = {}) {
  const loaded = smallArea({ sites: [SOUND_SITE], ...area, facts: { ...FACTS, ...area.facts }, trips });
  const context = { ...packContext(loaded, SHARED, OPTIONS), phaseDates: [] };
  return composeTrips(
    context,
    loaded.content.sites.map((site) => composeSite(site, context)),
  );
}

/** One trip of a small area. */
export function smallTrip(written: Record<string, unknown>, area: SmallArea = {}) {
  const { trips, details } = smallTrips([written], area);
  const tripDetails = details![0] as NonNullable<DetailsFile["trips"]>[number];
  const day = (localDate: string): TripDay => trips[0]!.days.find((entry) => entry.localDate === localDate)!;
  return {
    trip: trips[0]!,
    details: tripDetails,
    day,
    session: (localDate: string, id: string): TripSession =>
      day(localDate).sessions.find((entry) => entry.session === id)!,
  };
}

/** A trip of one day and one hunter with a sit in the morning and in the evening; what is given wins. */
export function oneDay(
  localDate: string,
  offset: string,
  given: Record<string, unknown> = {},
): Record<string, unknown> {
  const sit = { localDate, hunter: "a", site: "site-1", walkIn: "path" };
  return {
    from: localDate,
    to: localDate,
    hunters: [HUNTER],
    base: "hut",
    sits: [
      { ...sit, session: "morning" },
      { ...sit, session: "evening" },
    ],
    forecast: forecast(`${localDate}T00:00:00${offset}`, hoursOf(localDate)),
    ...given,
  };
}

/** The time of a row of a schedule as pack.json writes it; undefined when there is no such row. */
export function timeOf(session: TripSession, what: ScheduleRow["what"], hunter = "a"): string | undefined {
  return session.schedule.find((row) => row.what === what && row.who.includes(hunter))?.at;
}

/** Minutes of real time from one instant to another. */
export function minutesBetween(from: string | undefined, to: string | undefined): number {
  return (Date.parse(to ?? "") - Date.parse(from ?? "")) / 60_000;
}

export function checkOf(day: TripDay, id: string, subject: string, session?: string) {
  return day.checks.find(
    (check) =>
      check.id === id &&
      check.subject === subject &&
      (session === undefined || check.inputs.session === session),
  );
}
