import type { AreaContent } from "../content/areaContent.ts";
import type { PackFile, PackSite, PackTrip } from "../content/schema/packSchema.ts";
import type { Check } from "../safety/check.ts";

type Row = PackFile["notChecked"][number];

/**
 * What the program could not check, with what is missing: printed for the reader, never counted as good. First what no site or
 * day can be checked for, then site by site, then trip by trip, the days with the same gap on one row.
 */
export function notChecked(
  sites: readonly PackSite[],
  trips: readonly PackTrip[],
  area: AreaContent,
  helicopterSpot: Check | null = null,
): PackFile["notChecked"] {
  return [...neverChecked(area, helicopterSpot), ...sites.flatMap(ofSite), ...trips.flatMap(ofTrip)];
}

/** One row for the same gap at several lanes or ways of a site. */
function ofSite({ id: subject, checks }: PackSite): Row[] {
  const rows = checks
    .filter(({ result }) => result === "NOT CHECKED")
    .map(({ id: check, text }): [string, Row] => [`${check} ${text}`, { check, subject, text }]);
  return [...new Map(rows).values()];
}

/** Checks that need what the content does not hold, or what this version of the program does not compute. */
function neverChecked({ id: subject, facts }: AreaContent, helicopterSpot: Check | null): Row[] {
  const texts: Record<string, string> = {
    C16: "Rain of the last 24 hours is not known: look at each crossing before you step in.",
    ...helicopterGap(facts, helicopterSpot),
    C20: "Night low and the time of the shot are not known: decide before the shot how the meat is cooled.",
    C21: "The weight of the meat is not known: count the carries before the shot.",
    C24: "Nobody knows where other people are: agree blocks, ways and closed bearings at camp.",
    C27: "Nobody but the owner has looked at what this edition shows: look before you hand it on.",
  };
  return Object.entries(texts).map(([check, text]) => ({ check, subject, text }));
}

function helicopterGap(facts: AreaContent["facts"], spot: Check | null): Record<string, string> {
  if (facts.emergency.helicopterSpot === undefined || spot === null) {
    return { C17: "No helicopter spot is entered: look at size, slope and wires of one." };
  }
  return spot.result === "NOT CHECKED" ? { C17: spot.text } : {};
}

function ofTrip({ days }: PackTrip): Row[] {
  const rows = new Map<string, Row & { dates: string[] }>();
  for (const { localDate, checks } of days) {
    for (const { id: check, result, subject, text } of checks) {
      if (result !== "NOT CHECKED") continue;
      const key = `${check} ${subject} ${text}`;
      const row = rows.get(key) ?? { check, subject, text, dates: [] };
      if (!row.dates.includes(localDate)) row.dates.push(localDate);
      rows.set(key, row);
    }
  }
  return [...rows.values()].map(({ dates, text, ...row }) => ({
    ...row,
    text: `${dates.join(", ")}: ${text}`,
  }));
}
