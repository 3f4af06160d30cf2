import { COMPASS_POINTS } from "../../../geo/compassPoints.ts";
import { listWords, sentenceStart } from "../../words/listWords.ts";
import type { AreaPack } from "../sheetParts.ts";
import { type VerdictCell, windHead } from "../siteWindTable.ts";
import { sessionShort, type WindMatrix } from "../windMatrix.ts";
import { type PackTripDay, siteStopOf } from "./sessionStops.ts";
import { type TripSessionDetails, tripSessionDetails } from "./tripDetails.ts";
import { packSite } from "./tripNames.ts";

const WINDS = [...COMPASS_POINTS, "calm"] as const;

type LookUp = NonNullable<TripSessionDetails["lookUp"]>;

/**
 * The winds of the very day for its sessions without a forecast, light and fresh, sites by number; a site that a STOP takes
 * out has its word instead of verdicts. Empty when every session has a forecast.
 */
export function dayLookup(area: AreaPack, trip: string, day: PackTripDay): WindMatrix[] {
  const sessions = day.sessions.flatMap((session) => {
    const rows = tripSessionDetails(area, trip, day.localDate, session.session)?.lookUp ?? null;
    return rows === null ? [] : [{ session, rows }];
  });
  if (sessions.length === 0) return [];
  const ids = new Set(
    sessions.flatMap(({ session, rows }) => [
      ...rows.map((row) => row.site),
      ...session.stopped.map((row) => row.site),
    ]),
  );
  const sites = [...ids].flatMap((id) => packSite(area, id) ?? []).sort((a, b) => a.number - b.number);
  const isStopped = (id: string): boolean =>
    sessions.every(({ session }) => siteStopOf(area, day, session, id) !== null);
  const names = listWords(sessions.map(({ session }) => session.session));
  return (["light", "fresh"] as const).map((strength) => ({
    caption: `${sentenceStart(strength)} wind, this day, clear sky, ${names}`,
    sites: sites.map((site) => ({
      number: site.number,
      name: site.name,
      barred: isStopped(site.id) ? "STOP" : null,
    })),
    columns: sessions.map(({ session }) => ({
      short: sessionShort(session.session),
      full: sentenceStart(session.session),
      arrow: false,
    })),
    rows: WINDS.map((wind) => ({
      ...windHead(wind),
      groups: sites.map((site) => ({
        barred: isStopped(site.id) ? "STOP" : null,
        cells: sessions.map(({ session, rows }) =>
          siteStopOf(area, day, session, site.id) === null
            ? cellOf(rows, site.id, wind, strength)
            : { verdict: "not assessed" as const, localNote: false },
        ),
      })),
    })),
  }));
}

function cellOf(rows: LookUp, site: string, wind: string, strength: "light" | "fresh"): VerdictCell {
  const row = rows.find(
    (entry) =>
      entry.site === site && entry.windFrom === wind && entry.class === (wind === "calm" ? "calm" : strength),
  );
  return { verdict: row?.verdict ?? "not assessed", localNote: row?.localNote ?? false };
}
