import type { PackDay } from "../../../content/schema/packSchema.ts";
import { clockText, instantOf, utcOffsetText } from "../../words/clockText.ts";
import { percentText } from "../../words/shareWords.ts";
import { clockChangeText } from "../almanacSheets.ts";
import { eventCell, missingEventReasons } from "../dayLight.ts";
import { type LegalText, legalSource, legalText } from "../legalText.ts";
import { type AreaPack, type FactRow, fact } from "../sheetParts.ts";
import type { PackTripDay } from "./sessionStops.ts";

/** The four light events as key figures. */
export function lightFigures(area: AreaPack, day: PackDay): FactRow[] {
  return [
    fact("First light", eventCell(area, day, "firstLight")),
    fact("Sunrise", eventCell(area, day, "sunrise")),
    fact("Sunset", eventCell(area, day, "sunset")),
    fact("Last light", eventCell(area, day, "lastLight")),
  ];
}

/** Offset in force, a clock change of the day, and events that do not happen. */
export function clockLine(area: AreaPack, day: PackDay): string {
  const change = clockChangeText(area, day);
  const offset = utcOffsetText(day.utcOffset);
  return [
    change === null ? `24-hour clock, ${offset}.` : `${change}. At noon ${offset}.`,
    ...missingEventReasons(day).map((reason) => `${reason.replace(/\.$/, "")}.`),
  ].join(" ");
}

/** The moon of the day in one line. */
export function moonText(area: AreaPack, day: PackDay): string {
  const { moon } = day;
  const at = (event: "rise" | "set", word: string): string => {
    const text = moon[event];
    return text === null
      ? `does not ${event}`
      : `${word} ${clockText(instantOf(text), area.pack.area.timezone)}`;
  };
  return `${moon.phaseName}, ${percentText(moon.illuminated)} lit, ${at("rise", "rises")}, ${at("set", "sets")}`;
}

/** Legal hours of a trip day with whose rule; sessions with the same window share a row. */
export function legalRows(
  area: AreaPack,
  day: PackTripDay,
): { sessions: string[]; legal: LegalText; source: string }[] {
  const rows = day.sessions.map((session) => ({
    session: session.session,
    legal: legalText(session.shootingLight, area.pack.area.timezone),
    source: legalSource(session.shootingLight, area),
  }));
  const groups: { sessions: string[]; legal: LegalText; source: string }[] = [];
  for (const { session, legal, source } of rows) {
    const same = groups.find(
      (group) => JSON.stringify([group.legal, group.source]) === JSON.stringify([legal, source]),
    );
    if (same === undefined) groups.push({ sessions: [session], legal, source });
    else same.sessions.push(session);
  }
  return groups;
}
