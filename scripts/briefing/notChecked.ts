import type { AreaContent } from "../content/areaContent.ts";
import type { PackFile, PackSite, PackTrip } from "../content/schema/packSchema.ts";

type Row = PackFile["notChecked"][number];

/**
 * What the program could not check, with what is missing: printed for the reader, never counted as good. First what no site or
 * day can be checked for, then site by site, then trip by trip, the days with the same gap on one row.
 */
export function notChecked(
  sites: readonly PackSite[],
  trips: readonly PackTrip[],
  area: AreaContent,
): PackFile["notChecked"] {
  const ofSites = sites.flatMap((site) =>
    site.checks
      .filter((check) => check.result === "NOT CHECKED")
      .map((check) => ({ check: check.id, subject: site.id, text: check.text })),
  );
  return [...neverChecked(area), ...ofSites, ...trips.flatMap(ofTrip)];
}

/** Checks that need what the content does not hold, or what this version of the program does not compute. */
function neverChecked({ id: subject, map, terrainPath, facts }: AreaContent): Row[] {
  const drawn = map === null ? "No map features were given" : "The drawn features are not measured";
  const ground =
    terrainPath === null ? "There is no terrain file" : "The ground on a line of fire is not computed";
  const spot =
    facts.emergency.helicopterSpot === undefined
      ? "No spot is entered"
      : "The slope of the spot is not computed";
  const texts: Record<string, string> = {
    C2: `${drawn}: pace the set-backs out.`,
    C3: `${drawn}: mark the closed bearings on the ground.`,
    C4: `${ground}: look in daylight for earth behind each lane.`,
    C16: "Rain of the last 24 hours is not known: look at each crossing before you step in.",
    C17: `${spot}: look at its size, slope and wires.`,
    C20: "Night low and the time of the shot are not known: decide before the shot how the meat is cooled.",
    C21: "The weight of the meat is not known: count the carries before the shot.",
    C24: "Seats and ways of several hunters are not compared: agree blocks and closed bearings at camp.",
    C27: "Nobody but the owner has looked at what this edition shows: look before you hand it on.",
    C30: `${drawn}: the sites and ways are not compared with the boundary.`,
  };
  return Object.entries(texts).map(([check, text]) => ({ check, subject, text }));
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
