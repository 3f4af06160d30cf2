import { aboutClock, instantOf } from "../../words/clockText.ts";
import { listWords, sentenceStart } from "../../words/listWords.ts";
import { windRunsText } from "../../words/windWords.ts";
import type { AreaPack } from "../sheetParts.ts";
import { openSits, type Sit, sessionSits } from "./daySits.ts";
import { expectedWind } from "./forecastText.ts";
import type { PackedTrip } from "./packedTrips.ts";
import { type PackTripDay, type PackTripSession, sessionStop } from "./sessionStops.ts";
import { packSite } from "./tripNames.ts";

const MAX_WORDS = 22;

/** Who sits where, the wind expected, back by. A STOP of a session, or of a choice, stands in the place of the sit. */
export function dayAnswer(
  area: AreaPack,
  packed: PackedTrip,
  day: PackTripDay,
): { core: string; rest: string | null } {
  const who = day.sessions.map((session) => {
    const stop = sessionStop(day, session);
    const sits = sessionSits(area, packed, day, session);
    return `${sentenceStart(session.session)}: ${stop === null ? sitsText(sits) : "STOP, nobody climbs"}.`;
  });
  const core = who.length === 0 ? "No session this day." : who.join(" ");
  const wind = windText(day);
  const back = backByText(area, packed, day);
  const full = [wind, back].filter((part) => part !== null).join(" ");
  const rest = wordCount(`${core} ${full}`) <= MAX_WORDS ? full : (back ?? "");
  return { core, rest: rest === "" ? null : rest };
}

/** Winds that undo the sits: "Not at 7 in the morning with wind from N to E, evening ...". Null when there are none. */
export function dayException(area: AreaPack, packed: PackedTrip, day: PackTripDay): string | null {
  const parts = day.sessions.flatMap((session) => {
    const open = openSits(sessionSits(area, packed, day, session));
    return [...new Set(open.map((sit) => sit.siteId))].flatMap((id) => {
      const site = packSite(area, id);
      const winds = (site?.sessionTable ?? [])
        .filter((row) => row.session === session.session && row.class === "light" && row.verdict === "avoid")
        .map((row) => row.windFrom);
      return site === undefined || winds.length === 0
        ? []
        : [`${session.session} at ${site.number}, from ${windRunsText(winds)}`];
    });
  });
  return parts.length === 0 ? null : `Not if light wind comes: ${parts.join("; ")}.`;
}

function sitsText(sits: readonly Sit[]): string {
  if (sits.length === 0) return "nobody written";
  return listWords(
    sits.map((sit) =>
      sit.stop === null ? `${sit.hunter} at ${sit.number}` : `${sit.hunter} STOP at ${sit.number}`,
    ),
    "and",
  );
}

function windText(day: PackTripDay): string | null {
  const winds = day.sessions.flatMap((session) =>
    session.forecast === null ? [] : [expectedWind(session.forecast)],
  );
  const distinct = winds.filter((wind, i) => wind !== winds[i - 1]);
  return distinct.length === 0 ? "No forecast." : `Expected wind ${distinct.join(", then ")}.`;
}

function backByText(area: AreaPack, packed: PackedTrip, day: PackTripDay): string | null {
  const outs = day.sessions.flatMap((session: PackTripSession) => {
    const open = openSits(sessionSits(area, packed, day, session)).map((sit) => sit.hunterId);
    return session.schedule.filter((row) => row.what === "out" && row.who.some((id) => open.includes(id)));
  });
  const last = outs.sort((a, b) => instantOf(a.at).getTime() - instantOf(b.at).getTime()).at(-1);
  return last === undefined
    ? null
    : `Back by ${aboutClock(instantOf(last.at), 5, "up", area.pack.area.timezone)}.`;
}

function wordCount(text: string): number {
  return text.split(/\s+/).filter((word) => /\w/.test(word)).length;
}
